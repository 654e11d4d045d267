package bootmend.change;

import bootmend.fat.FatVolume;
import bootmend.fat.Geometry;
import java.util.HexFormat;

/**
 * What a card is known by from one change to the next: its volume's serial number and shape, not the path it is at.
 *
 * <p>Cards written from one image share it; what is on the card tells those apart.
 *
 * @param serial volume serial number, 32 bits
 * @param volumeStart first byte of the boot partition on the card
 * @param volumeLength bytes of the volume, by its boot sector
 * @param clusterCount data clusters of the volume
 */
public record CardId(long serial, long volumeStart, long volumeLength, long clusterCount) {

    /** Stands for the place of a volume that is only known by its folder. */
    private static final long FOLDER = -1;

    public static CardId of(FatVolume volume, long volumeStart) {
        Geometry geometry = volume.geometry();
        return new CardId(geometry.serial(), volumeStart, geometry.length(), geometry.clusterCount());
    }

    /**
     * A mounted folder, of which the system does not say where its volume lies.
     *
     * @param serial 0 where the system does not tell it either
     * @param bytes of the whole volume
     */
    public static CardId ofFolder(long serial, long bytes) {
        return new CardId(serial, FOLDER, bytes, 0);
    }

    /** A text that is safe as a file name. */
    String key() {
        return HexFormat.of().toHexDigits(serial, 8) + keyWithoutSerial();
    }

    String keyWithoutSerial() {
        return "-" + volumeStart + "-" + volumeLength + "-" + clusterCount;
    }
}
