package bootmend.device;

import java.io.IOException;

/** Says that a read or write lies past the end of a device, as on an image that was cut off. */
public final class OutsideDeviceException extends IOException {

    private static final long serialVersionUID = 1L;

    OutsideDeviceException(long offset, long length, long size) {
        super("bytes " + offset + " to " + (offset + length) + " lie outside the " + size + " bytes that are there");
    }
}
