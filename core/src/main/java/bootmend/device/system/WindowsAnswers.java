package bootmend.device.system;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What Windows's drivers answer, taken from the bytes that they fill in.
 *
 * <p>Source: the headers winioctl.h and ntddstor.h and their pages: DISK_GEOMETRY_EX, VOLUME_DISK_EXTENTS,
 * STORAGE_DEVICE_NUMBER, STORAGE_DEVICE_DESCRIPTOR, STORAGE_ACCESS_ALIGNMENT_DESCRIPTOR, STORAGE_BUS_TYPE. Values from memory.
 */
final class WindowsAnswers {

    /** {@code FILE_DEVICE_DISK}; a CD drive has 2. */
    private static final int DEVICE_IS_DISK = 7;
    /** {@code RemovableMedia} of {@code MEDIA_TYPE}. */
    private static final int MEDIA_REMOVABLE = 11;

    private static final int MOST_EXTENTS = 256;
    private static final int MOST_SECTOR = 1 << 16;

    private WindowsAnswers() {}

    /**
     * What a driver says of a disk.
     *
     * @param serial the reader's or disk's serial number, where it has one
     */
    record Drive(
            long bytes,
            int logicalSector,
            int physicalSector,
            boolean removable,
            boolean readOnly,
            String bus,
            Optional<String> serial) {}

    /** Size, sector, and whether the medium comes out. */
    record Geometry(long bytes, int sector, boolean removable) {}

    /** Model and place of a device. */
    record Descriptor(boolean removable, String bus, Optional<String> serial) {}

    /** Of {@code IOCTL_DISK_GET_DRIVE_GEOMETRY_EX}; nothing where the numbers are none a disk has. */
    static Optional<Geometry> geometry(ByteBuffer answer) {
        ByteBuffer bytes = answer.order(ByteOrder.LITTLE_ENDIAN);
        if (bytes.remaining() < 32) {
            return Optional.empty();
        }
        int sector = bytes.getInt(20);
        long size = bytes.getLong(24);
        boolean plausible =
                Integer.bitCount(sector) == 1 && sector >= DiskFacts.DEFAULT_SECTOR && sector <= MOST_SECTOR;
        return plausible && size >= 0
                ? Optional.of(new Geometry(size, sector, bytes.getInt(8) == MEDIA_REMOVABLE))
                : Optional.empty();
    }

    /** Of {@code IOCTL_VOLUME_GET_VOLUME_DISK_EXTENTS}: the numbers of the disks, each once. */
    static List<Integer> disks(ByteBuffer answer) {
        ByteBuffer bytes = answer.order(ByteOrder.LITTLE_ENDIAN);
        List<Integer> disks = new ArrayList<>();
        if (bytes.remaining() < 4) {
            return disks;
        }
        int count = Math.min(bytes.getInt(0), MOST_EXTENTS);
        for (int i = 0; i < count && 8 + (i + 1) * 24 <= bytes.limit(); i++) {
            int disk = bytes.getInt(8 + i * 24);
            if (!disks.contains(disk)) {
                disks.add(disk);
            }
        }
        return disks;
    }

    /** Of {@code IOCTL_STORAGE_GET_DEVICE_NUMBER}: whether it is a disk at all. */
    static boolean isDisk(ByteBuffer answer) {
        return answer.remaining() >= 12 && answer.order(ByteOrder.LITTLE_ENDIAN).getInt(0) == DEVICE_IS_DISK;
    }

    /** Of {@code IOCTL_STORAGE_QUERY_PROPERTY} for the device's own descriptor. */
    static Optional<Descriptor> descriptor(ByteBuffer answer) {
        ByteBuffer bytes = answer.order(ByteOrder.LITTLE_ENDIAN);
        if (bytes.remaining() < 36) {
            return Optional.empty();
        }
        return Optional.of(new Descriptor(bytes.get(10) != 0, bus(bytes.getInt(28)), text(bytes, bytes.getInt(24))));
    }

    /** Of the same for its alignment: bytes of a physical sector; 0 where it is none. */
    static int physicalSector(ByteBuffer answer) {
        ByteBuffer bytes = answer.order(ByteOrder.LITTLE_ENDIAN);
        int sector = bytes.remaining() < 28 ? 0 : bytes.getInt(20);
        return Integer.bitCount(sector) == 1 && sector >= DiskFacts.DEFAULT_SECTOR && sector <= MOST_SECTOR
                ? sector
                : 0;
    }

    private static String bus(int type) {
        return switch (type) {
            case 3, 11 -> "ata";
            case 7 -> "usb";
            case 12 -> "sd";
            case 13 -> "mmc";
            case 14, 15 -> "virtual";
            case 17 -> "nvme";
            default -> DiskFacts.UNKNOWN_BUS;
        };
    }

    /** A text that ends with 0, at a place within the answer; place 0 stands for none. */
    private static Optional<String> text(ByteBuffer bytes, int at) {
        StringBuilder text = new StringBuilder();
        try {
            for (int i = at; at > 0 && i < bytes.limit() && bytes.get(i) != 0; i++) {
                text.append(new String(new byte[] {bytes.get(i)}, StandardCharsets.ISO_8859_1));
            }
        } catch (IndexOutOfBoundsException | BufferUnderflowException e) {
            return Optional.empty();
        }
        return Optional.of(text.toString().strip()).filter(found -> found.matches("[ -~]+"));
    }
}
