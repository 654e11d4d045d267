package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.util.HexFormat;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Every number in a boot sector is checked; offsets from "FAT: General Overview", version 1.03, "Boot Sector and BPB". */
class BootSectorTest {

    @ParameterizedTest
    @CsvSource({
        "510, 00 00, signature",
        "11, 00 00, bytes a sector",
        "11, 00 20, bytes a sector",
        "11, 01 02, bytes a sector",
        "13, 00, sectors a cluster",
        "13, 03, sectors a cluster",
        "14, 00 00, no room for a FAT",
        "16, 00, no room for a FAT",
        "17, 00 00, mixes the layouts",
        "22, FF FF, fewer sectors",
        "19, 01 00, fewer sectors",
    })
    void fieldOutOfRangeIsNamed(int offset, String bytes, String words) throws IOException {
        BuiltVolume built = BuiltVolume.of(FatSpec.fat16(5000).build(), builder -> builder);
        built.disk().patch(offset, hex(bytes));

        assertThatThrownBy(built::open).isInstanceOf(BadVolumeException.class).hasMessageContaining(words);
    }

    @ParameterizedTest
    @CsvSource({"44, 00 00 00 00", "44, 01 00 00 00", "44, FF FF FF 0F", "44, FF FF FF FF"})
    void rootClusterMustBeOnTheVolume(int offset, String bytes) throws IOException {
        BuiltVolume built =
                BuiltVolume.of(FatSpec.fat32(66000).backupBootSector(0).build(), builder -> builder);
        built.disk().patch(offset, hex(bytes));

        assertThatThrownBy(built::open).isInstanceOf(BadVolumeException.class).hasMessageContaining("root folder");
    }

    @ParameterizedTest
    @CsvSource({"512", "1024", "4096"})
    void backupStandsInForADamagedBootSector(int sector) throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat32(66000).bytesPerSector(sector).build(),
                builder -> builder.file("config.txt", BuiltVolume.ascii("arm_freq=2000\n")));
        built.disk().patch(0, new byte[sector]);

        assertThat(built.read("config.txt").bytes()).isEqualTo(BuiltVolume.ascii("arm_freq=2000\n"));
        assertThat(built.open().warnings()).singleElement().asString().contains("backup in sector 6");
    }

    @Test
    void imageThatWasCutOffIsSaidToBe() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat16(5000).build(), builder -> builder.file("config.txt", BuiltVolume.ascii("a=1\n")));
        SparseDisk cut = built.disk().cutOffAt(built.layout().clusterOffset(100));

        FatVolume volume = FatVolume.open(cut);

        assertThat(volume.warnings()).singleElement().asString().contains("cut off");
        assertThat(volume.read(volume.find("config.txt").orElseThrow(), 100).bytes())
                .isEqualTo(BuiltVolume.ascii("a=1\n"));
    }

    @Test
    void fatTooShortForItsClustersBoundsThem() throws IOException {
        BuiltVolume built = BuiltVolume.of(FatSpec.fat16(5000).build(), builder -> builder);
        built.disk().patch(22, (byte) 1, (byte) 0);

        assertThat(built.open().geometry().clusterCount()).isEqualTo(512 / 2 - 2);
    }

    /** A boot sector of any bytes is refused in words or read; it is never a crash. */
    @Property(tries = 500)
    void anyBytesAreReadOrRefused(@ForAll @Size(90) byte[] start) throws IOException {
        SparseDisk disk = new SparseDisk(1 << 20, 512);
        disk.patch(0, start);
        disk.patch(11, (byte) 0, (byte) 2, (byte) 1);
        disk.patch(510, (byte) 0x55, (byte) 0xAA);
        try {
            Geometry geometry = FatVolume.open(disk).geometry();
            assertThat(geometry.dataStart()).isBetween(1L, geometry.length());
            assertThat(geometry.clusterStart(geometry.clusterEnd() - 1) + geometry.bytesPerCluster())
                    .isLessThanOrEqualTo(geometry.length());
        } catch (BadVolumeException e) {
            assertThat(e.getMessage()).isNotBlank();
        }
    }

    private static byte[] hex(String bytes) {
        return HexFormat.ofDelimiter(" ").parseHex(bytes);
    }
}
