package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Size;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT Directory Structure" and "FAT Long Directory Entries". */
class ShortNameTest {

    /** The source's own table of names under DIR_Name, read back. */
    @ParameterizedTest
    @CsvSource({
        "'FOO     BAR', FOO.BAR",
        "'FOO        ', FOO",
        "'PICKLE  A  ', PICKLE.A",
        "'PRETTYBGBIG', PRETTYBG.BIG",
    })
    void elevenBytesAsTheSourceShowsThem(String raw, String shown) {
        assertThat(name(raw, 0).display()).isEqualTo(shown);
    }

    /** Byte 12's lower-case flags: common practice, no source (the source reserves the byte). */
    @ParameterizedTest
    @CsvSource({"0, CONFIG.TXT", "8, config.TXT", "16, CONFIG.txt", "24, config.txt"})
    void flagsShowEachHalfInLowerCase(int flags, String shown) {
        assertThat(name("CONFIG  TXT", flags).display()).isEqualTo(shown);
    }

    @Test
    void lowerCaseFlagsAreReadFromACard() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat12(100).build(),
                builder -> builder.add(
                                "",
                                FatItem.file("config.txt", BuiltVolume.ascii("a=1\n"))
                                        .caseFlags())
                        .add("", FatItem.file("start4.ELF", new byte[600]).caseFlags()));

        assertThat(built.rootNames()).containsExactly("config.txt", "start4.ELF");
        assertThat(built.entry("CONFIG.TXT").longNameOffsets()).isEmpty();
    }

    /** DIR_Name[0]: "If DIR_Name[0] == 0x05, then the actual file name character for this byte is 0xE5." */
    @Test
    void fiveStandsForE5() throws IOException {
        byte[] slot = slot("?BC     TXT");
        slot[0] = 0x05;
        byte[] gone = slot("?BC     OLD");
        gone[0] = (byte) 0xE5;
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat12(100).build(),
                builder -> builder.add("", FatItem.raw(slot)).add("", FatItem.raw(gone)));

        assertThat(built.rootNames()).containsExactly("\u00E5BC.TXT");
    }

    /** The source's C function for the checksum, step for step. */
    @Property(tries = 300)
    void checksumIsTheSourcesFunction(@ForAll @Size(11) byte[] raw) {
        int sum = 0;
        for (byte character : raw) {
            sum = (((sum & 1) != 0 ? 0x80 : 0) + (sum >> 1) + Byte.toUnsignedInt(character)) % 256;
        }
        assertThat(new ShortName(raw, 0).checksum()).isEqualTo(sum);
    }

    private static ShortName name(String raw, int flags) {
        return new ShortName(raw.getBytes(StandardCharsets.US_ASCII), flags);
    }

    private static byte[] slot(String name) {
        byte[] slot = new byte[32];
        System.arraycopy(BuiltVolume.ascii(name), 0, slot, 0, 11);
        slot[11] = FatItem.ARCHIVE;
        return slot;
    }
}
