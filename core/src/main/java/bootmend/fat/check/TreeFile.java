package bootmend.fat.check;

import bootmend.fat.DirectoryEntry;
import bootmend.fat.Geometry;
import bootmend.finding.Finding;
import bootmend.finding.Place;
import java.util.List;
import java.util.Optional;

/**
 * A file or folder found in the tree, with what following its chain showed.
 *
 * @param path from the root, parts separated by {@code /}; empty for the root folder itself
 * @param standing how far its entry is to be believed
 * @param sharers paths of the files it shares clusters with
 */
record TreeFile(String path, DirectoryEntry entry, ChainCheck chain, Standing standing, List<String> sharers) {

    /** How far an entry is to be believed. */
    enum Standing {
        SOUND,
        /** Its name has characters that no file name has: perhaps it is noise. */
        BAD_NAME,
        /** It stands in a folder that is none any more by its content; that is reported, its entries are left alone. */
        IN_LOST_FOLDER
    }

    TreeFile {
        sharers = List.copyOf(sharers);
    }

    /** The same once it is known what it shares clusters with. */
    TreeFile sharingWith(List<String> others) {
        return new TreeFile(path, entry, chain, standing, others);
    }

    /** Whether it may be repaired: it is believed and shares nothing. */
    boolean isRepairable() {
        return standing == Standing.SOUND && sharers.isEmpty();
    }

    /** What is wrong with its chain and size, where anything is. */
    Optional<Finding> finding(Geometry geometry) {
        if (standing == Standing.IN_LOST_FOLDER) {
            return Optional.empty();
        }
        if (standing == Standing.BAD_NAME) {
            return found(VolumeFault.BAD_ENTRY, "its name has characters that no file name has");
        }
        if (!sharers.isEmpty()) {
            return found(VolumeFault.CROSS_LINKED, "it shares clusters with " + String.join(", ", sharers));
        }
        return switch (chain.ending()) {
            case LOOPS -> broken(VolumeFault.CHAIN_LOOPS);
            case FREE -> broken(VolumeFault.CHAIN_INTO_FREE);
            case BAD -> broken(VolumeFault.CHAIN_INTO_BAD);
            default -> chain.isComplete() ? sizeFinding(geometry) : broken(VolumeFault.CHAIN_OUTSIDE);
        };
    }

    private Optional<Finding> sizeFinding(Geometry geometry) {
        long size = entry.size();
        if (entry.folder()) {
            if (chain.length() == 0) {
                return found(VolumeFault.FOLDER_LOST, "its entry names no cluster");
            }
            return size == 0 ? Optional.empty() : found(VolumeFault.FOLDER_SIZE, "its entry gives " + size + " bytes");
        }
        long needed = geometry.clustersFor(size);
        if (needed == chain.length()) {
            return Optional.empty();
        }
        if (chain.length() == 0) {
            return found(VolumeFault.NO_CHAIN, "its entry gives " + size + " bytes but names no cluster");
        }
        if (size == 0) {
            return found(
                    VolumeFault.NO_SIZE,
                    "its entry gives 0 bytes, but its chain has " + Counted.of(chain.length(), "cluster"));
        }
        return found(
                needed > chain.length() ? VolumeFault.CHAIN_SHORT : VolumeFault.CHAIN_LONG,
                "its entry gives " + size + " bytes, which take " + Counted.of(needed, "cluster") + "; its chain has "
                        + chain.length());
    }

    private Optional<Finding> broken(VolumeFault fault) {
        if (entry.folder() && chain.length() == 0) {
            return found(
                    VolumeFault.FOLDER_LOST,
                    "its cluster chain " + chain.ending().words() + " at its start");
        }
        return found(
                fault,
                "its cluster chain " + chain.ending().words() + " after " + Counted.of(chain.length(), "cluster"));
    }

    private Optional<Finding> found(VolumeFault fault, String what) {
        return Optional.of(fault.at(entry.folder() ? Place.folder(path) : Place.file(path), what));
    }
}
