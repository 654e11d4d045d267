package bootmend.boot;

import bootmend.fat.BootFiles;
import java.io.IOException;
import java.util.Optional;

/** What the boot chain asks of a card, each only when it is needed. */
public interface BootCard {

    CardLayout layout() throws IOException;

    /** Number of the partition that an ordinary start boots from; 0 where it is not seen or there is no table. */
    int bootPartition();

    /** Why that one, in a clause. */
    String choice();

    /** The files of the boot partition. */
    BootFiles files();

    /** The files of the FAT volume in another partition; empty where it holds none that can be read. */
    Optional<BootFiles> files(int partition) throws IOException;

    /** Bytes of a partition, exactly {@code length}; empty where the card does not reach so far or cannot be read. */
    Optional<byte[]> bytes(CardPartition partition, long offset, int length) throws IOException;
}
