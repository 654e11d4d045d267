package bootmend.boot;

import bootmend.fat.FileBytes;
import java.io.IOException;

/**
 * A few places of a file, looked at for zeros: what a crash leaves where a file had its size before its bytes (common
 * practice, no source).
 */
final class ZeroSpots {

    private static final int SPOTS = 8;
    private static final int SPOT = 4096;

    private ZeroSpots() {}

    /** What the file is where it is filled with zeros, wholly or in its later half; else whole by {@code check}. */
    static FileLook in(FileBytes file, String kind, String check) throws IOException {
        long size = file.size();
        if (size == 0) {
            return FileLook.cut("empty", "has no byte");
        }
        int count = (int) Math.min(SPOTS, (size + SPOT - 1) / SPOT);
        int zeroTail = 0;
        for (int i = 0; i < count; i++) {
            long at = count == 1 ? 0 : i * ((size - 1) / SPOT) / (count - 1) * SPOT;
            byte[] spot = file.read(at, SPOT);
            if (spot.length == 0) {
                return FileLook.cut(kind, "cannot be read past byte " + at);
            }
            zeroTail = isZero(spot) ? zeroTail + 1 : 0;
        }
        if (zeroTail == count) {
            return FileLook.cut("zeros", "has its size, but holds zeros wherever it was looked at");
        }
        if (count >= SPOTS / 2 && zeroTail >= count / 2) {
            return FileLook.unknown(kind, "begins well, but its later half holds zeros wherever it was looked at");
        }
        return FileLook.whole(kind, check);
    }

    private static boolean isZero(byte[] bytes) {
        for (byte each : bytes) {
            if (each != 0) {
                return false;
            }
        }
        return true;
    }
}
