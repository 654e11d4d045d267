package bootmend.device.system;

import java.io.Closeable;
import java.io.IOException;

/** A disk that is held for a change until it is closed. */
interface DiskHold extends Closeable {

    /** Holds nothing, as for an image file, which is locked by itself. */
    DiskHold NONE = new DiskHold() {
        @Override
        public void dropCache() {
            // There is no medium behind an image file that could differ from what the system keeps of it.
        }

        @Override
        public void close() {
            // Nothing is held.
        }
    };

    /** Has the system forget what it keeps of the disk in memory, as far as it does that on request. */
    void dropCache() throws IOException;
}
