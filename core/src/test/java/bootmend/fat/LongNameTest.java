package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Source: "FAT: General Overview of On-Disk Format", version 1.03, "FAT Long Directory Entries". */
class LongNameTest {

    private static final FatSpec SMALL = FatSpec.fat12(600).build();

    /** A slot holds 13 characters; a name that fills its slots has no ending zero; 255 characters are the most. */
    @ParameterizedTest
    @ValueSource(ints = {9, 12, 13, 14, 26, 27, 39, 254, 255})
    void namesOfEveryLengthAcrossSlots(int length) throws IOException {
        String name = "n".repeat(length - 4) + ".txt";
        BuiltVolume built = BuiltVolume.of(SMALL, builder -> builder.file(name, BuiltVolume.ascii("x")));

        DirectoryEntry entry = built.entry(name);

        assertThat(entry.name()).isEqualTo(name);
        assertThat(entry.longNameOffsets()).hasSize((length + 12) / 13);
        assertThat(built.open().root().warnings()).isEmpty();
    }

    @Test
    void nameOutsideAscii() throws IOException {
        BuiltVolume built = BuiltVolume.of(SMALL, builder -> builder.file("Prüfung \u4e2d\u6587.txt", new byte[0]));

        assertThat(built.rootNames()).containsExactly("Prüfung \u4e2d\u6587.txt");
    }

    /** Two slots and the entry with a cluster's end between them. */
    @ParameterizedTest
    @ValueSource(ints = {12, 13, 14})
    void nameAcrossTheEndOfACluster(int before) throws IOException {
        BuiltVolume built = BuiltVolume.of(SMALL, builder -> {
            builder.stride(2).directory("SUB");
            for (int i = 0; i < before; i++) {
                builder.file("SUB/F" + i, new byte[1]);
            }
            return builder.file("SUB/wheel-encoder-gpio.dtbo", BuiltVolume.ascii("tree"));
        });

        assertThat(built.read("sub/wheel-encoder-gpio.dtbo").bytes()).isEqualTo(BuiltVolume.ascii("tree"));
        assertThat(built.entry("sub/wheel-encoder-gpio.dtbo").offset())
                .isEqualTo(built.layout().entryOffset("SUB/wheel-encoder-gpio.dtbo"));
    }

    @Test
    void orphansNameNoFileAndAreCounted() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                SMALL,
                builder -> builder.add("", FatItem.orphan("config.txt written by no one"))
                        .file("CMDLINE.TXT", new byte[3])
                        .file("a long name.txt", new byte[3])
                        .add("", FatItem.orphan("at the end")));

        assertThat(built.rootNames()).containsExactly("CMDLINE.TXT", "a long name.txt");
        assertThat(built.open().root().warnings()).singleElement().asString().startsWith("4 long-name slots");
    }

    @Test
    void deletedEntriesAreNotThere() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                SMALL,
                builder -> builder.add(
                                "",
                                FatItem.file("config.txt", BuiltVolume.ascii("old=1"))
                                        .deleted())
                        .add("", FatItem.file("Config.txt", BuiltVolume.ascii("new=1"))));

        assertThat(built.rootNames()).containsExactly("Config.txt");
        assertThat(built.read("config.txt").bytes()).isEqualTo(BuiltVolume.ascii("new=1"));
        assertThat(built.open().root().warnings()).isEmpty();
    }

    /** The checksum ties slots to their entry: an entry renamed by a system without long names drops them. */
    @Test
    void slotsWhoseChecksumIsAnothersAreDropped() throws IOException {
        BuiltVolume built = BuiltVolume.of(SMALL, builder -> builder.file("configuration.txt", new byte[5]));
        built.disk().patch(built.layout().entryOffset("configuration.txt"), BuiltVolume.ascii("CONFIG  TXT"));

        assertThat(built.rootNames()).containsExactly("CONFIG.TXT");
        assertThat(built.open().root().warnings()).singleElement().asString().startsWith("2 long-name slots");
    }

    @Test
    void slotsOutOfOrderAreDropped() throws IOException {
        BuiltVolume built =
                BuiltVolume.of(SMALL, builder -> builder.file("a name of three slots in all.txt", new byte[5]));
        long first = built.entry("a name of three slots in all.txt")
                .longNameOffsets()
                .get(1);
        built.disk().patch(first, (byte) 1);

        assertThat(built.rootNames()).containsExactly("ANAMEO~1.TXT");
    }

    @Test
    void foundByEitherNameInAnyCase() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                SMALL,
                builder -> builder.add(
                        "", FatItem.file("Config File.txt", new byte[0]).alias("CONFIG~7.TXT")));

        assertThat(built.entry("CONFIG FILE.TXT")).isEqualTo(built.entry("config~7.txt"));
    }

    @Test
    void labelIsNoFile() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat16(5000).rootLabel("LAB BOOT 3").bootLabel("OTHER").build(),
                builder -> builder.file("A.TXT", new byte[0]));

        assertThat(built.rootNames()).containsExactly("A.TXT");
        assertThat(built.open().root().label()).contains("LAB BOOT 3");
        assertThat(built.open().geometry().label()).isEqualTo("OTHER");
    }
}
