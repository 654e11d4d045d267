package bootmend.boot;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fat.BootFiles;
import bootmend.oracle.Tool;
import bootmend.partition.PartitionTableReader;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reads superblocks that file system tools made and tables that partition tools made, and compares with those tools. */
class OracleRootTest {

    private static final String ID = "0d15ea5e-0bad-4cab-8ace-feedfacecafe";

    @TempDir
    Path dir;

    @ParameterizedTest
    @CsvSource({
        "mkfs.ext4 -q -b 4096 -U ID -L labroot FILE, ext4, 67108864",
        "mkfs.ext4 -q -b 1024 -U ID -L labroot FILE, ext4, 67108864",
        "mkfs.ext4 -q -O ^64bit -U ID -L labroot FILE 20000k, ext4, 20480000",
        "mkfs.ext4 -q -O ^has_journal -U ID -L labroot FILE, ext4, 67108864",
        "mkfs.ext3 -q -U ID -L labroot FILE, ext3, 67108864",
        "mkfs.ext2 -q -U ID -L labroot FILE, ext2, 67108864",
        "mkfs.f2fs -q -U ID -l labroot FILE, f2fs, 67108864",
        "mkfs.btrfs -q -m single -d single -U ID -L labroot FILE, btrfs, 134217728",
    })
    void theMarkOfAFileSystemIsRead(String command, String kind, long bytes) throws IOException {
        String program = command.substring(0, command.indexOf(' '));
        Tool.need(program);
        Path file = dir.resolve("root.img");
        Tool.run("truncate", "-s", Long.toString(kind.equals("btrfs") ? bytes : 64 << 20), file.toString());
        Tool.run(command.replace("ID", ID).replace("FILE", file.toString()).split(" ", -1));
        FileSystemMark mark = read(file);
        assertThat(mark.kind().word()).isEqualTo(kind);
        assertThat(mark.id()).contains(ID);
        assertThat(mark.label()).contains("labroot");
        assertThat(mark.bytes().getAsLong()).isEqualTo(bytes);
        assertThat(mark.hasErrors()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"12", "16", "32"})
    void theMarkOfAFatVolumeIsRead(String bits) throws IOException {
        Tool.need("mkfs.fat");
        Path file = dir.resolve("fat.img");
        Tool.run("truncate", "-s", bits.equals("12") ? "1M" : bits.equals("16") ? "8M" : "64M", file.toString());
        Tool.run("mkfs.fat", "-F", bits, "-s", "1", "-i", "5C01AB07", "-n", "LABBOOT", file.toString());
        FileSystemMark mark = read(file);
        assertThat(mark.kind()).isEqualTo(FileSystemMark.Kind.FAT);
        assertThat(mark.id()).contains("5c01-ab07");
        assertThat(mark.label()).contains("LABBOOT");
    }

    @Test
    void swapAndNothingAreTold() throws IOException {
        Tool.need("mkswap");
        Path file = dir.resolve("swap.img");
        Tool.run("truncate", "-s", "4M", file.toString());
        assertThat(read(file).kind()).isEqualTo(FileSystemMark.Kind.ZEROS);
        Tool.run("mkswap", file.toString());
        assertThat(read(file).kind()).isEqualTo(FileSystemMark.Kind.SWAP);
    }

    private static FileSystemMark read(Path file) throws IOException {
        byte[] head = Arrays.copyOf(readFirst(file, 1 << 18), 1 << 18);
        CardPartition partition = new CardPartition(2, "0x83", 0, Files.size(file), Optional.empty(), Optional.empty());
        return FileSystemMark.read(new HeadCard(head), partition).orElseThrow();
    }

    private static byte[] readFirst(Path file, int length) throws IOException {
        try (var in = Files.newInputStream(file)) {
            return in.readNBytes(length);
        }
    }

    @ParameterizedTest
    @CsvSource({"dos", "gpt"})
    void namesOfPartitionsAreThoseOfThePartitionTool(String kind) throws Exception {
        Tool.need("sfdisk");
        Path file = dir.resolve("card.img");
        Tool.run("truncate", "-s", "64M", file.toString());
        String script = "label: " + kind + "\n"
                + (kind.equals("gpt")
                        ? "start=2048, size=20480, type=EBD0A0A2-B9E5-4433-87C0-68B6B72699C7, name=\"boot\"\n"
                                + "start=22528, size=40960, type=L, name=\"lab system\"\n"
                        : "start=2048, size=20480, type=c\nstart=22528, size=40960, type=83\n");
        Files.writeString(dir.resolve("script"), script);
        Tool.run("sh", "-c", "sfdisk -q " + file + " < " + dir.resolve("script"));
        JsonNode table = new ObjectMapper()
                .readTree(Tool.run("sfdisk", "-J", file.toString()))
                .get("partitiontable");
        CardLayout layout = LayoutReader.read(new FileDisk(file), PartitionTableReader.read(new FileDisk(file)), true);
        String id = table.get("id").asText().replace("0x", "").toLowerCase(Locale.ROOT);
        assertThat(layout.diskId()).contains(id);
        assertThat(layout.partitions()).hasSize(2);
        for (int i = 0; i < 2; i++) {
            JsonNode wanted = table.get("partitions").get(i);
            CardPartition found = layout.partitions().get(i);
            assertThat(found.start()).isEqualTo(wanted.get("start").asLong() * 512);
            assertThat(found.length()).isEqualTo(wanted.get("size").asLong() * 512);
            if (kind.equals("gpt")) {
                assertThat(found.id()).contains(wanted.get("uuid").asText().toLowerCase(Locale.ROOT));
                assertThat(found.name()).contains(wanted.get("name").asText());
            } else {
                assertThat(found.id()).contains(id + "-0" + (i + 1));
            }
        }
    }

    /** A card of which only the first partition's beginning is asked for. */
    private record HeadCard(byte[] head) implements BootCard {

        @Override
        public CardLayout layout() {
            return CardLayout.unseen();
        }

        @Override
        public int bootPartition() {
            return 1;
        }

        @Override
        public String choice() {
            return "";
        }

        @Override
        public BootFiles files() {
            throw new AssertionError("no file is asked for");
        }

        @Override
        public Optional<BootFiles> files(int partition) {
            return Optional.empty();
        }

        @Override
        public Optional<byte[]> bytes(CardPartition partition, long offset, int length) {
            return offset + length > head.length
                    ? Optional.empty()
                    : Optional.of(Arrays.copyOfRange(head, (int) offset, (int) offset + length));
        }
    }

    /** An image file. */
    private record FileDisk(Path file) implements BlockDevice {

        @Override
        public long getSize() throws IOException {
            return Files.size(file);
        }

        @Override
        public void read(long offset, ByteBuffer target) throws IOException {
            try (var channel = Files.newByteChannel(file)) {
                channel.position(offset);
                while (target.hasRemaining() && channel.read(target) > 0) {
                    // Read on.
                }
            }
        }

        @Override
        public void write(long offset, ByteBuffer source) {
            throw new AssertionError("nothing is written");
        }

        @Override
        public void flush() {
            throw new AssertionError("nothing is written");
        }

        @Override
        public int getSectorSize() {
            return 512;
        }

        @Override
        public void close() {
            // Opened for each read.
        }

        @Override
        public boolean isClosed() {
            return false;
        }

        @Override
        public boolean isReadOnly() {
            return true;
        }
    }
}
