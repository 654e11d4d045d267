package bootmend.fat.check;

import bootmend.fat.FatVolume;
import bootmend.fat.Geometry;
import bootmend.fat.SectorChange;
import bootmend.fat.VolumeBytes;
import bootmend.fat.VolumeEdit;
import java.io.IOException;
import java.util.List;

/** Makes each file's entry and chain agree, cutting a chain only where it is broken or longer than its file. */
final class FileRepair implements VolumeRepair {

    /** Clusters that one run frees at most, which bounds the memory and the undo record; more is left to the next run. */
    static final int MOST_FREED = 1 << 20;

    /** What the 32 bits of an entry's size hold. */
    private static final long MAX_SIZE = 0xFFFFFFFFL;

    private final int mostFreed;

    FileRepair() {
        this(MOST_FREED);
    }

    FileRepair(int mostFreed) {
        this.mostFreed = mostFreed;
    }

    @Override
    public List<SectorChange> changes(VolumeCheck check) throws IOException {
        // What an unread folder lists may share clusters with what is repaired.
        boolean known = check.isBelievable()
                && check.comparison().isSame()
                && check.tree().complete();
        return known ? new Work(check, mostFreed).changes() : List.of();
    }

    private static final class Work {

        private final Geometry geometry;
        private final Tree tree;
        private final VolumeBytes bytes;
        private final VolumeEdit edit;
        private int freeable;

        Work(VolumeCheck check, int mostFreed) throws IOException {
            this.geometry = check.geometry();
            this.freeable = mostFreed;
            this.tree = check.tree();
            this.bytes = check.bytes();
            this.edit = new VolumeEdit(FatVolume.open(check.volume()));
        }

        List<SectorChange> changes() throws IOException {
            if (!tree.root().isComplete()
                    && !tree.root().crosses()
                    && tree.root().length() > 0) {
                edit.link(List.of(tree.root().last()));
            }
            for (TreeFile file : tree.files()) {
                if (file.isRepairable() && file.finding(geometry).isPresent()) {
                    repair(file);
                }
            }
            edit.deleteSlots(tree.orphans());
            return edit.takeStep();
        }

        private void repair(TreeFile file) throws IOException {
            ChainCheck chain = file.chain();
            boolean folder = file.entry().folder();
            if (folder && chain.length() == 0) {
                return;
            }
            long needed = geometry.clustersFor(file.entry().size());
            int keep = folder || file.entry().size() == 0 ? chain.length() : (int) Math.min(chain.length(), needed);
            if (keep < chain.length() || !chain.isComplete() && keep > 0) {
                List<Long> kept = tree.clusters().clusters(chain, keep - 1, keep);
                // What is over the bound belongs to no file from then on, so the next run finds it as lost.
                List<Long> surplus =
                        tree.clusters().clusters(chain, keep, (int) Math.min(chain.length(), (long) keep + freeable));
                freeable -= surplus.size();
                edit.link(kept);
                edit.free(surplus);
            }
            edit.putChain(file.entry(), keep == 0 ? 0 : chain.first(), folder ? 0 : size(file, keep));
        }

        /**
         * The size that {@code keep} clusters can have: that of the entry where they hold it; else, where the chain is
         * whole and only the size is not to be believed, up to the last byte that is not zero; else all of them.
         */
        private long size(TreeFile file, int keep) throws IOException {
            long most = (long) keep * geometry.bytesPerCluster();
            long told = file.entry().size();
            if (told > 0 && told <= most || keep == 0) {
                return Math.min(told, most);
            }
            if (!file.chain().isComplete()) {
                return Math.min(most, MAX_SIZE);
            }
            byte[] last = bytes.read(geometry.clusterStart(file.chain().last()), geometry.bytesPerCluster());
            int used = last.length;
            while (used > 1 && last[used - 1] == 0) {
                used--;
            }
            return Math.min(most - last.length + used, MAX_SIZE);
        }
    }
}
