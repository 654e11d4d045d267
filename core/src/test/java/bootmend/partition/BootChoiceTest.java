package bootmend.partition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Sources: "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86; which file makes a partition bootable: same page. */
class BootChoiceTest {

    private static final PartitionTable TABLE = new PartitionTable(
            PartitionTable.Kind.MBR,
            IntStream.rangeClosed(1, 4)
                    .mapToObj(n -> new Partition(n, n * 1000L, 900, 512, n == 2 ? "0x83" : "0x0C", n != 2))
                    .toList(),
            List.of());
    private static final BootVolumes.Top DATA = top("notes.txt");
    private static final BootVolumes.Top FIRMWARE = top("config.txt", "start4.elf");
    private static final BootVolumes.Top CONFIG = top("config.txt", "kernel_2712.img");

    private final Set<Integer> looked = new HashSet<>();

    @Test
    void firstWithBootFirmware() throws CardException, IOException {
        BootChoice choice = choose(Map.of(1, DATA, 3, FIRMWARE, 4, FIRMWARE));

        assertThat(choice.partition().number()).isEqualTo(3);
        assertThat(choice.reason()).isEqualTo("the first FAT partition with boot firmware");
    }

    @Test
    void firmwareComesBeforeAConfigFileAlone() throws CardException, IOException {
        assertThat(choose(Map.of(1, CONFIG, 3, FIRMWARE)).partition().number()).isEqualTo(3);
    }

    @Test
    void firstWithAConfigFileWhereNoneHasFirmware() throws CardException, IOException {
        BootChoice choice = choose(Map.of(1, DATA, 3, CONFIG));

        assertThat(choice.partition().number()).isEqualTo(3);
        assertThat(choice.reason()).contains("config file");
    }

    @Test
    void firstFatWhereNoneIsBootable() throws CardException, IOException {
        BootChoice choice = choose(Map.of(1, DATA, 3, DATA));

        assertThat(choice.partition().number()).isEqualTo(1);
        assertThat(choice.reason()).contains("none is bootable");
    }

    @Test
    void laterPartitionsAreNotReadWhereTheFirstDecides() throws CardException, IOException {
        choose(Map.of(1, FIRMWARE, 3, FIRMWARE));

        assertThat(looked).containsExactly(1);
    }

    @Test
    void autobootNamesThePartition() throws CardException, IOException {
        BootChoice choice = choose(
                Map.of(1, autoboot("[all]\nboot_partition=4\n[tryboot]\nboot_partition=3\n"), 3, FIRMWARE, 4, CONFIG));

        assertThat(choice.partition().number()).isEqualTo(4);
        assertThat(choice.reason()).contains("autoboot.txt");
    }

    @Test
    void autobootNamesAPartitionThatIsNotThere() throws CardException, IOException {
        for (int named : new int[] {2, 3, 7}) {
            BootChoice choice = choose(Map.of(1, autoboot("boot_partition=" + named), 4, FIRMWARE));

            assertThat(choice.partition().number()).isEqualTo(1);
            assertThat(choice.reason()).contains("boot firmware", "autoboot.txt names partition " + named);
        }
    }

    /** 0 means the first bootable partition. */
    @Test
    void autobootNamesNone() throws CardException, IOException {
        BootChoice choice = choose(Map.of(1, autoboot("boot_partition=0"), 4, FIRMWARE));

        assertThat(choice.reason()).isEqualTo("the first FAT partition with boot firmware");
    }

    @Test
    void autobootOnALaterPartitionIsNotLookedAt() throws CardException, IOException {
        assertThat(choose(Map.of(1, DATA, 3, autoboot("boot_partition=4"), 4, FIRMWARE))
                        .partition()
                        .number())
                .isEqualTo(3);
    }

    @Test
    void theUsersOwnChoiceComesFirst() throws CardException, IOException {
        Map<Integer, BootVolumes.Top> tops = Map.of(1, autoboot("boot_partition=3"), 3, FIRMWARE, 4, DATA);

        BootChoice choice = BootChoice.of(TABLE, volumes(tops), OptionalInt.of(4));

        assertThat(choice.partition().number()).isEqualTo(4);
        assertThat(choice.reason()).isEqualTo("you named it");
    }

    @Test
    void theUsersOwnChoiceMayBeWrong() {
        assertThatThrownBy(() -> BootChoice.of(TABLE, volumes(Map.of(1, DATA)), OptionalInt.of(9)))
                .isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.kind()).isEqualTo(CardException.Kind.USAGE);
                    assertThat(e.remedy()).contains("partitions 1 (type 0x0C), 2 (type 0x83)");
                });
        assertThatThrownBy(() -> BootChoice.of(TABLE, volumes(Map.of(1, DATA)), OptionalInt.of(2)))
                .isInstanceOfSatisfying(
                        CardException.class, e -> assertThat(e.kind()).isEqualTo(CardException.Kind.UNREADABLE));
    }

    @Test
    void noFatAtAll() {
        assertThatThrownBy(() -> choose(Map.of()))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("no FAT partition");
    }

    /** At most 512 bytes are read; only [all], [none] and [tryboot] filter; an ordinary start is not [tryboot]. */
    @Test
    void autobootFile() {
        assertThat(parse("boot_partition=2\r\ntryboot_a_b=1\r\n")).isEqualTo(new AutobootFile(OptionalInt.of(2), true));
        assertThat(parse("[none]\nboot_partition=2\n").bootPartition()).isEmpty();
        assertThat(parse("[tryboot]\nboot_partition=2\n[all]\nboot_partition=3\n")
                        .bootPartition())
                .hasValue(3);
        assertThat(parse("boot_partition=x\nboot_partition=\nboot_partition=99999999999\n")
                        .bootPartition())
                .isEmpty();
        assertThat(parse("#".repeat(511) + "\nboot_partition=2\n").bootPartition())
                .isEmpty();
        assertThat(parse("").bootPartition()).isEmpty();
    }

    private static AutobootFile parse(String text) {
        return AutobootFile.parse(text.getBytes(StandardCharsets.US_ASCII));
    }

    private BootChoice choose(Map<Integer, BootVolumes.Top> tops) throws CardException, IOException {
        return BootChoice.of(TABLE, volumes(tops), OptionalInt.empty());
    }

    private BootVolumes volumes(Map<Integer, BootVolumes.Top> tops) {
        return partition -> {
            looked.add(partition.number());
            return Optional.ofNullable(tops.get(partition.number()));
        };
    }

    private static BootVolumes.Top top(String... names) {
        return new BootVolumes.Top(Set.of(names), Optional.empty());
    }

    private static BootVolumes.Top autoboot(String text) {
        return new BootVolumes.Top(
                Set.of("autoboot.txt", "start4.elf"), Optional.of(text.getBytes(StandardCharsets.US_ASCII)));
    }
}
