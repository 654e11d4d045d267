package bootmend.fat;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.FsInfoState;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Edits touch the bits they must and no others; the fixtures' own table writer says what is expected. */
class VolumeEditTest {

    static Stream<FatSpec> specs() {
        return Stream.of(
                        FatSpec.fat12(4000),
                        FatSpec.fat12(4000).fatCount(1),
                        FatSpec.fat12(4000).bytesPerSector(1024),
                        FatSpec.fat16(5000).fatCount(3),
                        FatSpec.fat32(66000),
                        FatSpec.fat32(66000).fatCount(1).bytesPerSector(4096))
                .map(FatSpec.Builder::build);
    }

    /** Clusters 341 and 682 have FAT12 entries that lie in two sectors (512 * 2/3 = 341.3); neighbours hold other chains. */
    @ParameterizedTest
    @MethodSource("specs")
    void linksAndFreesAsAnotherWriterDoes(FatSpec spec) throws IOException {
        BuiltVolume built = withNeighbours(spec);
        BuiltVolume expected = built.copy();
        expected.layout().setFatEntries(expected.disk(), 341, 683);
        expected.layout().setFatEntries(expected.disk(), 683, 0x0FFFFFFF);
        expected.layout().setFatEntries(expected.disk(), 682, 0);
        expected.layout().setFatEntries(expected.disk(), 1023, 0);

        VolumeEdit edit = new VolumeEdit(built.open());
        edit.link(List.of(341L, 683L));
        edit.free(List.of(682L, 1023L));
        List<SectorChange> step = edit.takeStep();
        built.write(step);

        assertThat(built.disk().differingSectors(expected.disk())).isEmpty();
        assertThat(step).allSatisfy(change -> assertThat(change.kind()).isEqualTo(SectorKind.FAT));
        assertThat(edit.takeStep()).isEmpty();
    }

    @Test
    void straddlingEntryIsRead() throws IOException {
        BuiltVolume built = withNeighbours(FatSpec.fat12(4000).build());

        FatTable table = built.open().table();

        assertThat(table.entry(340)).isEqualTo(new FatEntry.Next(342));
        assertThat(table.entry(341)).isEqualTo(new FatEntry.Free());
        assertThat(table.entry(682)).isEqualTo(new FatEntry.Next(1023));
        assertThat(table.entry(1023)).isEqualTo(new FatEntry.End());
    }

    /** "the high 4 bits of a FAT32 FAT entry are reserved" and to be preserved: "FAT: General Overview", 1.03, "FAT Data Structure". */
    @Test
    void upperFourBitsOfFat32AreKept() throws IOException {
        BuiltVolume built = withNeighbours(FatSpec.fat32(66000).upperBits(0xA).build());

        VolumeEdit edit = new VolumeEdit(built.open());
        assertThat(edit.takeFree(2, 339)).isPresent();
        edit.link(List.of(341L));
        edit.free(List.of(682L));
        built.write(edit.takeStep());

        for (int copy = 0; copy < 2; copy++) {
            assertThat(entry(built, copy, 341)).isEqualTo(0xAFFFFFFF);
            assertThat(entry(built, copy, 682)).isEqualTo(0xA0000000);
        }
    }

    @Test
    void onlyTheActiveCopyIsWrittenWhereMirroringIsOff() throws IOException {
        BuiltVolume built =
                withNeighbours(FatSpec.fat32(66000).fatCount(3).activeFat(1).build());
        long from = built.layout().fatOffset(1);

        VolumeEdit edit = new VolumeEdit(built.open());
        edit.link(List.of(341L, 5000L));
        edit.free(List.of(682L));

        assertThat(edit.takeStep())
                .isNotEmpty()
                .allSatisfy(change -> assertThat(change.offset())
                        .isBetween(from, built.layout().fatOffset(2) - 1));
    }

    @Test
    void eachStepBuildsOnTheOneBefore() throws IOException {
        BuiltVolume built = withNeighbours(FatSpec.fat12(4000).build());
        VolumeEdit edit = new VolumeEdit(built.open());
        edit.link(List.of(341L));
        List<SectorChange> first = edit.takeStep();
        edit.free(List.of(341L));
        List<SectorChange> second = edit.takeStep();
        BuiltVolume before = built.copy();

        built.write(first);
        built.write(second);

        assertThat(built.disk().differingSectors(before.disk())).isEmpty();
        assertThat(second).hasSameSizeAs(first);
    }

    @Test
    void entryKeepsEverythingButClusterSizeAndTime() throws IOException {
        BuiltVolume built = withNeighbours(FatSpec.fat16(5000).build());
        long at = built.layout().entryOffset("CONFIG.TXT");
        // Bytes 20 and 21 are no part of a cluster number here; what other systems keep in them stays.
        built.disk().patch(at + 20, (byte) 0x5A, (byte) 0xA5);
        byte[] expected = built.disk().toBytes(at, 32);
        ByteBuffer.wrap(expected)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putShort(22, (short) 0xBF7D)
                .putShort(24, (short) 0xFF9F)
                .putShort(26, (short) 0x1234)
                .putInt(28, 777);
        BuiltVolume before = built.copy();

        VolumeEdit edit = new VolumeEdit(built.open());
        edit.putEntry(built.entry("config.txt"), 0x1234, 777, LocalDateTime.of(2107, 12, 31, 23, 59, 59));
        built.write(edit.takeStep());

        assertThat(built.disk().toBytes(at, 32)).isEqualTo(expected);
        assertThat(built.disk().differingSectors(before.disk())).hasSize(1);
    }

    /** Midnight 1 January 1980 to 23:59:58 on 31 December 2107: "FAT: General Overview", 1.03, "Date and Time Formats". */
    @ParameterizedTest
    @CsvSource({"1980-01-01T00:00:00, 0021, 0000", "2107-12-31T23:59:58, FF9F, BF7D", "1975-03-04T10:00:00, 0064, 5000"
    })
    void timesAreWithinTheFormatsRange(LocalDateTime moment, String date, String time) {
        assertThat(FatTime.date(moment)).isEqualTo((short) Integer.parseInt(date, 16));
        assertThat(FatTime.time(moment)).isEqualTo((short) Integer.parseInt(time, 16));
    }

    @Test
    void freeMeansFreeInEveryCopyAndNotBad() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat16(5000).build(),
                builder -> builder.markBad(1002).fillUpTo(0).keepFree(1000, 1001, 1003, 1005));
        built.layout().setFatEntry(built.disk(), 1, 1001, 0xFFFF);
        built.layout().setFatEntry(built.disk(), 0, 1003, 0xFFFF);

        VolumeEdit edit = new VolumeEdit(built.open());

        assertThat(edit.takeFree(3, 2)).isEmpty();
        assertThat(edit.takeFree(2, 2)).contains(List.of(1000L, 1005L));
        assertThat(edit.takeFree(1, 2))
                .as("what was taken is not free a second time")
                .isEmpty();
    }

    @Test
    void sideBySideWhereThereIsRoom() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat12(4000).build(), builder -> builder.fillUpTo(0).keepFree(30, 32, 500, 501, 502));

        assertThat(new VolumeEdit(built.open()).takeFree(3, 2)).contains(List.of(500L, 501L, 502L));
        assertThat(new VolumeEdit(built.open()).takeFree(4, 2)).contains(List.of(30L, 32L, 500L, 501L));
        assertThat(new VolumeEdit(built.open()).takeFree(2, 501))
                .as("round past the end")
                .contains(List.of(500L, 501L));
        assertThat(new VolumeEdit(built.open()).takeFree(0, 2)).contains(List.of());
    }

    @Test
    void nothingIsPutBehindTheEndOfACutImage() throws IOException {
        BuiltVolume built = BuiltVolume.of(
                FatSpec.fat16(5000).build(),
                builder -> builder.keepFree(3000, 4000).fillUpTo(0));
        FatVolume cut = FatVolume.open(built.disk().cutOffAt(built.layout().clusterOffset(4000)));

        assertThat(new VolumeEdit(cut).takeFree(1, 3500)).contains(List.of(3000L));
        assertThat(new VolumeEdit(cut).takeFree(2, 2)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"VALID, -3, 777", "UNKNOWN, -1, -1", "ABSENT, 0, 0"})
    void fsInfoIsBroughtUpToDateOnlyWhereItWasValid(FsInfoState state, int freed, int hint) throws IOException {
        BuiltVolume built = withNeighbours(FatSpec.fat32(66000).fsInfo(state).build());
        int before = word(built, 512 + 488);

        VolumeEdit edit = new VolumeEdit(built.open());
        edit.adjustFsInfo(-3, 777);
        Set<Long> written = edit.takeStep().stream()
                .peek(change -> built.write(List.of(change)))
                .map(SectorChange::offset)
                .collect(Collectors.toSet());

        assertThat(written).isEqualTo(state == FsInfoState.VALID ? Set.of(512L) : Set.of());
        assertThat(word(built, 512 + 488)).isEqualTo(state == FsInfoState.VALID ? before + freed : freed);
        assertThat(word(built, 512 + 492)).isEqualTo(hint);
    }

    @Test
    void dataEndsInZerosAndLeavesTheRestOfTheClusterAlone() throws IOException {
        BuiltVolume built =
                BuiltVolume.of(FatSpec.fat16(5000).sectorsPerCluster(4).build(), builder -> builder);
        long at = built.layout().clusterOffset(50);
        built.disk().patch(at, BuiltVolume.noise(2048));
        byte[] content = BuiltVolume.noise(700);

        VolumeEdit edit = new VolumeEdit(built.open());
        edit.putData(List.of(50L), content);
        built.write(edit.takeStep());

        assertThat(built.disk().toBytes(at, 700)).isEqualTo(content);
        assertThat(built.disk().toBytes(at + 700, 324)).containsOnly(0);
        assertThat(built.disk().toBytes(at + 1024, 1024))
                .isEqualTo(Arrays.copyOfRange(BuiltVolume.noise(2048), 1024, 2048));
    }

    private static BuiltVolume withNeighbours(FatSpec spec) throws IOException {
        byte[] two = BuiltVolume.noise(2 * spec.clusterBytes());
        return BuiltVolume.of(
                spec,
                builder -> builder.add("", FatItem.file("LEFT.BIN", two).at(340, 342))
                        .add("", FatItem.file("CONFIG.TXT", two).at(682, 1023))
                        .add("", FatItem.file("RIGHT.BIN", two).at(681, 1024))
                        .keepFree(341, 683));
    }

    private static int entry(BuiltVolume built, int copy, int cluster) {
        return word(built, built.layout().fatEntryOffset(copy, cluster));
    }

    private static int word(BuiltVolume built, long offset) {
        return ByteBuffer.wrap(built.disk().toBytes(offset, 4))
                .order(ByteOrder.LITTLE_ENDIAN)
                .getInt();
    }
}
