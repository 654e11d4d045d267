package bootmend.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.device.PartitionWindow;
import bootmend.fixtures.Fat32LibCard;
import bootmend.fixtures.Fat32LibCards;
import bootmend.fixtures.FatKind;
import bootmend.operation.Made;
import de.waldheinz.fs.FsDirectory;
import de.waldheinz.fs.FsDirectoryEntry;
import de.waldheinz.fs.fat.FatFileSystem;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** The same on cards that fat32-lib alone made, read back by it: these run where no other tool is installed. */
class Fat32LibResetTest {

    @TempDir
    private Path folder;

    @ParameterizedTest
    @EnumSource(FatKind.class)
    void resetOfACardMadeByFat32Lib(FatKind kind) throws CardException, IOException {
        Fat32LibCard card = Fat32LibCards.card(kind);
        Path image = folder.resolve("card.img");
        card.disk().writeTo(image);
        boolean checked = Tool.isInstalled("fsck.fat");
        List<String> before = checked ? Tool.check(image) : List.of();

        RealReset reset = RealReset.of(image, folder.resolve("home"), 0);

        assertThat(reset.change()).isEqualTo(new Made.OnCard(reset.change().record(), true));
        Map<String, byte[]> expected = new TreeMap<>(card.files());
        expected.put("config.txt", stock(card.files().get("config.txt")));
        assertThat(expected.get("config.txt")).isNotEqualTo(card.files().get("config.txt"));
        PartitionWindow window =
                new PartitionWindow(reset.after(), 0, reset.after().getSize());
        Map<String, byte[]> read = new TreeMap<>();
        readAll(FatFileSystem.read(window, true).getRoot(), "", read);
        assertThat(read).usingRecursiveComparison().isEqualTo(expected);
        if (checked) {
            assertThat(Tool.check(image)).isSubsetOf(before);
        }
        reset.assertOnlyThePlansSectorsDiffer();
        reset.undoAndCompare();
    }

    /** The hurried config's four tuning lines, told by eye and by name, each with a number sign in front. */
    private static byte[] stock(byte[] config) {
        StringBuilder text = new StringBuilder();
        for (ConfigLine line : ConfigDocument.parse(config).lines()) {
            boolean tunes = line.text().matches("(arm_freq|over_voltage|force_turbo|gpu_freq)=.*");
            text.append(tunes ? "#" : "").append(line.text()).append('\n');
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void readAll(FsDirectory directory, String path, Map<String, byte[]> files) throws IOException {
        for (FsDirectoryEntry entry : directory) {
            if (entry.getName().equals(".") || entry.getName().equals("..")) {
                continue;
            }
            if (entry.isDirectory()) {
                readAll(entry.getDirectory(), path + entry.getName() + "/", files);
            } else {
                ByteBuffer content =
                        ByteBuffer.allocate(Math.toIntExact(entry.getFile().getLength()));
                if (content.hasRemaining()) {
                    entry.getFile().read(0, content);
                }
                files.put(path + entry.getName(), content.array());
            }
        }
    }
}
