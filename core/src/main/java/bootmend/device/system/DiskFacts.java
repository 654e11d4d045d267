package bootmend.device.system;

/**
 * What a system knows of one disk, or one part of a disk.
 *
 * @param bytes its size; 0 where the system does not say
 * @param logicalSector bytes of the sectors that tables on it count in
 * @param physicalSector bytes that the medium writes at once, at least {@code logicalSector}
 * @param removable whether the medium is one to take out, such as a card in a reader
 * @param readOnly whether the system takes it for write-protected
 * @param bus how it is attached, in one lower-case word such as {@code usb}, {@code sd} or {@code loop}
 */
record DiskFacts(long bytes, int logicalSector, int physicalSector, boolean removable, boolean readOnly, String bus) {

    static final int DEFAULT_SECTOR = 512;
    static final String UNKNOWN_BUS = "unknown";
    static final String LOOP = "loop";

    DiskFacts {
        physicalSector = Math.max(logicalSector, physicalSector);
    }

    /** Whether it stands for an image file rather than for hardware. */
    boolean isLoop() {
        return bus.equals(LOOP);
    }
}
