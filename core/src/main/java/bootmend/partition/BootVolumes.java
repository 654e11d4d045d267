package bootmend.partition;

import java.io.IOException;
import java.util.Optional;
import java.util.Set;

/** Looks into partitions for the choice of the boot partition, so that this package need not know FAT. */
public interface BootVolumes {

    /**
     * What lies at the top of a partition.
     *
     * @param names the root folder's file names in lower case
     * @param autoboot the content of {@code autoboot.txt}, where there is one
     */
    record Top(Set<String> names, Optional<byte[]> autoboot) {}

    /** The top of the FAT volume in {@code partition}, or nothing where it holds none that can be read. */
    Optional<Top> top(Partition partition) throws IOException;
}
