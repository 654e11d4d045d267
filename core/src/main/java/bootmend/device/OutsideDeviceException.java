package bootmend.device;

import java.io.IOException;

/** Says that a read or write lies past the end of a device, as on an image that was cut off. */
public final class OutsideDeviceException extends IOException {

    private static final long serialVersionUID = 1L;

    public OutsideDeviceException(long offset, long length, long size) {
        super("bytes " + offset + " to " + (offset + length) + " lie outside the " + size + " bytes that are there");
    }

    /** Throws when {@code offset .. offset + length} is not inside {@code 0 .. size}; no sum here can overflow. */
    public static void unlessInside(long offset, long length, long size) throws OutsideDeviceException {
        if (offset < 0 || length < 0 || offset > size || length > size - offset) {
            throw new OutsideDeviceException(offset, length, size);
        }
    }
}
