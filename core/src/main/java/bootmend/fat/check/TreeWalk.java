package bootmend.fat.check;

import bootmend.fat.DirectoryEntry;
import bootmend.fat.DirectoryReader;
import bootmend.fat.FatTable;
import bootmend.fat.FatType;
import bootmend.fat.Geometry;
import bootmend.fat.VolumeBytes;
import bootmend.finding.Finding;
import bootmend.finding.Place;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Walks all folders of a volume by one FAT copy.
 *
 * <p>Each cluster is read as part of one folder at most, so the steps are bounded by the clusters and the slots in them;
 * entries kept are at most {@value #MAX_ENTRIES}, folders in folders at most {@value #MAX_DEPTH} deep.
 */
final class TreeWalk {

    /** A boot partition has a few hundred; this many fit into memory anywhere. */
    static final int MAX_ENTRIES = 100_000;

    static final int MAX_DEPTH = 64;

    private final VolumeBytes bytes;
    private final Geometry geometry;
    private final ClusterMap clusters;
    private final List<TreeFile> files = new ArrayList<>();
    private final Map<ChainCheck, List<Long>> orphans = new HashMap<>();
    private final List<Finding> findings = new ArrayList<>();
    private final Deque<Folder> waiting = new ArrayDeque<>();
    private boolean complete = true;
    private boolean toldTooLarge;

    /** A folder that is to be read; {@code parent} is its parent's first cluster. */
    private record Folder(String path, ChainCheck chain, long parent, int depth) {

        boolean isRoot() {
            return depth == 0;
        }
    }

    private TreeWalk(VolumeBytes bytes, Geometry geometry, int copy) {
        this.bytes = bytes;
        this.geometry = geometry;
        this.clusters = new ClusterMap(geometry, new FatTable(bytes, geometry, copy));
    }

    static Tree walk(VolumeBytes bytes, Geometry geometry, int copy) throws IOException {
        return new TreeWalk(bytes, geometry, copy).walk();
    }

    private Tree walk() throws IOException {
        ChainCheck root = clusters.claim(geometry.rootCluster());
        complete = geometry.type() != FatType.FAT32 || root.length() > 0;
        waiting.add(new Folder("", root, 0, 0));
        while (!waiting.isEmpty()) {
            read(waiting.remove());
        }
        List<TreeFile> checked = new CrossLinks(clusters, root, files).named();
        List<Long> free = new ArrayList<>();
        for (Map.Entry<ChainCheck, List<Long>> slots : orphans.entrySet()) {
            if (clusters.sharedOf(slots.getKey()).isEmpty()) {
                free.addAll(slots.getValue());
            }
        }
        return new Tree(root, checked, clusters, free, findings, complete);
    }

    private void read(Folder folder) throws IOException {
        DirectoryReader reader = new DirectoryReader(bytes, geometry);
        try {
            if (folder.isRoot() && geometry.type() != FatType.FAT32) {
                reader.read(geometry.rootStart(), geometry.rootLength());
            } else {
                readChain(reader, folder.chain());
            }
        } catch (IOException e) {
            lost(folder, "it could not be read whole (" + e.getMessage() + ")");
        }
        List<DirectoryEntry> entries = reader.result().entries();
        boolean sound = isSound(folder, reader);
        if (!reader.orphans().isEmpty()) {
            findings.add(VolumeFault.ORPHANED_LONG_NAMES.at(
                    Place.folder(folder.path()),
                    Counted.of(reader.orphans().size(), "long-name slot") + " without a file"));
            if (sound) {
                orphans.put(folder.chain(), reader.orphans());
            }
        }
        repeatedNames(folder, entries);
        for (DirectoryEntry entry : entries) {
            take(folder, entry, sound);
        }
    }

    private boolean isSound(Folder folder, DirectoryReader reader) {
        if (folder.isRoot() || folder.chain().length() == 0) {
            return true;
        }
        if (!reader.hasDots()) {
            lost(folder, "it does not begin with the entries for itself and its parent");
            return false;
        }
        if (!reader.dotsLeadTo(folder.chain().first(), folder.parent())) {
            findings.add(VolumeFault.FOLDER_DOTS.at(
                    Place.folder(folder.path()), "its entries for itself and its parent lead elsewhere"));
        }
        return true;
    }

    private void readChain(DirectoryReader reader, ChainCheck chain) throws IOException {
        int most = (int) Math.max(1, DirectoryReader.MAX_BYTES / geometry.bytesPerCluster());
        for (long cluster : clusters.clusters(chain, 0, most)) {
            if (reader.read(geometry.clusterStart(cluster), geometry.bytesPerCluster())) {
                return;
            }
        }
    }

    private void take(Folder folder, DirectoryEntry entry, boolean sound) throws IOException {
        if (files.size() >= MAX_ENTRIES) {
            tooLarge("there are more than " + MAX_ENTRIES + " files and folders");
            return;
        }
        String path = folder.isRoot() ? entry.name() : folder.path() + "/" + entry.name();
        ChainCheck chain = clusters.claim(entry.firstCluster());
        TreeFile.Standing standing = !sound
                ? TreeFile.Standing.IN_LOST_FOLDER
                : entry.hasPlausibleShortName() ? TreeFile.Standing.SOUND : TreeFile.Standing.BAD_NAME;
        files.add(new TreeFile(path, entry, chain, standing, List.of()));
        if (!entry.folder()) {
            return;
        }
        if (standing == TreeFile.Standing.BAD_NAME) {
            complete = false;
            return;
        }
        if (folder.depth() >= MAX_DEPTH) {
            tooLarge("folders stand in folders more than " + MAX_DEPTH + " deep");
            return;
        }
        // A folder of which not one cluster is its own has nothing to be read that was not read elsewhere.
        complete &= chain.length() > 0;
        waiting.add(new Folder(path, chain, folder.isRoot() ? 0 : folder.chain().first(), folder.depth() + 1));
    }

    private void repeatedNames(Folder folder, List<DirectoryEntry> entries) {
        Set<String> seen = new HashSet<>();
        Set<String> told = new HashSet<>();
        for (DirectoryEntry entry : entries) {
            String name = entry.name().toUpperCase(Locale.ROOT);
            String shortName = entry.shortName().toUpperCase(Locale.ROOT);
            boolean known = !seen.add(name);
            known |= !shortName.equals(name) && !seen.add(shortName);
            if (known && told.add(name)) {
                String path = folder.isRoot() ? entry.name() : folder.path() + "/" + entry.name();
                findings.add(VolumeFault.DUPLICATE_NAMES.at(
                        entry.folder() ? Place.folder(path) : Place.file(path), "its folder has the name twice"));
            }
        }
    }

    private void lost(Folder folder, String what) {
        complete = false;
        findings.add(VolumeFault.FOLDER_LOST.at(Place.folder(folder.path()), what));
    }

    private void tooLarge(String what) {
        complete = false;
        if (!toldTooLarge) {
            toldTooLarge = true;
            findings.add(VolumeFault.TOO_LARGE.at(Place.Region.VOLUME, what));
        }
    }
}
