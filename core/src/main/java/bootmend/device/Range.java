package bootmend.device;

/** Checks that a run of bytes lies inside a device. */
final class Range {

    private Range() {}

    /** Throws when {@code offset .. offset + length} is not inside {@code 0 .. size}; no sum here can overflow. */
    static void check(long offset, long length, long size) throws OutsideDeviceException {
        if (offset < 0 || length < 0 || offset > size || length > size - offset) {
            throw new OutsideDeviceException(offset, length, size);
        }
    }
}
