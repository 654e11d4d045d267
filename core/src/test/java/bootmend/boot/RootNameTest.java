package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.boot.RootName.CardPartitionNumber;
import bootmend.boot.RootName.FileSystemId;
import bootmend.boot.RootName.FileSystemLabel;
import bootmend.boot.RootName.Malformed;
import bootmend.boot.RootName.Memory;
import bootmend.boot.RootName.Network;
import bootmend.boot.RootName.OtherDisk;
import bootmend.boot.RootName.PartitionId;
import bootmend.boot.RootName.PartitionName;
import bootmend.boot.RootName.WholeCard;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The forms of {@code root=} as the kernel lists them: block/early-lookup.c, commit 017fb83e, comment on root device names;
 * init/do_mounts.c, commit 010e85f9.
 */
class RootNameTest {

    static Stream<Arguments> forms() {
        return Stream.of(
                Arguments.of("b302", new CardPartitionNumber(2)),
                Arguments.of("B307", new CardPartitionNumber(7)),
                Arguments.of("179:2", new CardPartitionNumber(2)),
                Arguments.of("0802", new OtherDisk("0802")),
                Arguments.of("8:2", new OtherDisk("8:2")),
                Arguments.of("259:2", new OtherDisk("259:2")),
                Arguments.of("/dev/mmcblk0p2", new CardPartitionNumber(2)),
                Arguments.of("/dev/mmcblk0p12", new CardPartitionNumber(12)),
                Arguments.of("/dev/mmcblk0", new WholeCard()),
                Arguments.of("/dev/mmcblk1p2", new OtherDisk("/dev/mmcblk1p2")),
                Arguments.of("/dev/sda2", new OtherDisk("/dev/sda2")),
                Arguments.of("/dev/nvme0n1p2", new OtherDisk("/dev/nvme0n1p2")),
                Arguments.of("/dev/nfs", new Network()),
                Arguments.of("/dev/ram0", new Memory()),
                Arguments.of("/dev/ram", new Memory()),
                Arguments.of("PARTUUID=6c586e13-02", new PartitionId("6c586e13-02", 0)),
                Arguments.of("PARTUUID=6c586e13-01/PARTNROFF=1", new PartitionId("6c586e13-01", 1)),
                Arguments.of(
                        "PARTUUID=00112233-4455-6677-8899-aabbccddeeff",
                        new PartitionId("00112233-4455-6677-8899-aabbccddeeff", 0)),
                Arguments.of("PARTLABEL=lab system", new PartitionName("lab system")),
                Arguments.of("LABEL=labroot", new FileSystemLabel("labroot")),
                Arguments.of(
                        "UUID=5c01ab07-1111-4222-8333-444455556666",
                        new FileSystemId("5c01ab07-1111-4222-8333-444455556666")),
                Arguments.of("/dev/disk/by-label/labroot", new FileSystemLabel("labroot")),
                Arguments.of("/dev/disk/by-uuid/abcd", new FileSystemId("abcd")));
    }

    @ParameterizedTest
    @MethodSource("forms")
    void everyPublishedFormIsRead(String text, RootName name) {
        assertThat(RootName.parse(text)).isEqualTo(name);
    }

    @Test
    void whatHasNoFormIsToldSo() {
        Stream.of(
                        "",
                        "PARTUUID=",
                        "PARTUUID=xyz",
                        "PARTUUID=6c586e13-02/PARTNROFF=x",
                        "mmcblk0p2",
                        "/dev/",
                        "zfs:pool",
                        "PARTUUID=" + "a".repeat(80),
                        "/dev/" + "x".repeat(40),
                        "99999:99999999",
                        "ffffffffff")
                .forEach(text -> assertThat(RootName.parse(text)).as(text).isInstanceOf(Malformed.class));
    }
}
