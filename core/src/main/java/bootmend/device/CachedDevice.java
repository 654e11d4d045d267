package bootmend.device;

import de.waldheinz.fs.BlockDevice;
import java.io.IOException;

/** A device of which the system keeps a part in memory. */
public interface CachedDevice {

    /** Has later reads come from the medium, as far as the system allows; what was written must be forced before. */
    void dropCache() throws IOException;

    /** The same for any device; one without a cache has nothing to drop. */
    static void drop(BlockDevice device) throws IOException {
        if (device instanceof CachedDevice cached) {
            cached.dropCache();
        }
    }
}
