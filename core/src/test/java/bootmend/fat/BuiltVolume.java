package bootmend.fat;

import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;

/** A volume that the fixtures built, alone on its disk. */
public record BuiltVolume(FatSpec spec, FatLayout layout, SparseDisk disk) {

    public static BuiltVolume of(FatSpec spec, UnaryOperator<FatBuilder> content) throws IOException {
        SparseDisk disk = spec.emptyDisk();
        return new BuiltVolume(spec, content.apply(new FatBuilder(spec)).writeTo(disk, 0), disk);
    }

    FatVolume open() throws IOException {
        return FatVolume.open(disk);
    }

    /** The whole file at {@code path}, with warnings. */
    FileContent read(String path) throws IOException {
        FatVolume volume = open();
        return volume.read(volume.find(path).orElseThrow(), Integer.MAX_VALUE);
    }

    DirectoryEntry entry(String path) throws IOException {
        return open().find(path).orElseThrow();
    }

    List<String> rootNames() throws IOException {
        return open().root().entries().stream().map(DirectoryEntry::name).toList();
    }

    /** Writes a step's sectors, each after a look that it is as the step found it. */
    public void write(List<SectorChange> step) {
        for (SectorChange change : step) {
            if (!Arrays.equals(disk.toBytes(change.offset(), change.before().length), change.before())) {
                throw new AssertionError("the sector at " + change.offset() + " is not what the step says it was");
            }
            disk.patch(change.offset(), change.after());
        }
    }

    BuiltVolume copy() {
        return new BuiltVolume(spec, layout, disk.copy());
    }

    /** Bytes that differ from place to place, so that a shift or a swap shows. */
    public static byte[] noise(int length) {
        byte[] bytes = new byte[length];
        new SplittableRandom(length).nextBytes(bytes);
        return bytes;
    }

    static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
