package bootmend.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.atIndex;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import bootmend.CardException;
import bootmend.StepNames;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CardSourceTest {

    @TempDir
    private Path folder;

    private final CardOpener opener = CardSource.onThisComputer();

    @Test
    void eachThingThatIsNoCardHasItsOwnWords() throws IOException {
        Path empty = Files.createFile(folder.resolve("empty.img"));

        assertRefused(folder.resolve("none.img"), false, CardException.Kind.UNREADABLE, "no such file");
        assertRefused(empty, false, CardException.Kind.UNREADABLE, "it is empty");
        assertRefused(empty, true, CardException.Kind.UNREADABLE, "it is empty");
        assertRefused(folder, false, CardException.Kind.UNREADABLE, "it is a folder");
    }

    @Test
    void missingRightsHaveTheirOwnWords() throws IOException {
        Path image = image();
        assumeFalse(System.getProperty("user.name").equals("root"), "root may read and write everything: skipped");
        assertThat(image.toFile().setWritable(false)).isTrue();
        assertRefused(image, true, CardException.Kind.REFUSED, "no right to write");
        assertThat(image.toFile().setReadable(false)).isTrue();
        assertRefused(image, false, CardException.Kind.UNREADABLE, "no right to read");
    }

    @Test
    void aCardThatIsBeingChangedIsLocked() throws CardException, IOException {
        Path image = image();
        try (CardSource first = opener.open(image, true)) {
            assertThat(first.device().isReadOnly()).isFalse();
            assertRefused(image, true, CardException.Kind.REFUSED, "another bootmend is changing it");
            try (CardSource reader = opener.open(image, false)) {
                assertThat(reader.device().isReadOnly()).isTrue();
            }
            assertRefused(image, true, CardException.Kind.REFUSED, "another bootmend is changing it");
        }
        opener.open(image, true).close();
    }

    @Test
    void anAttachedImageIsInUse() throws CardException, IOException {
        Path image = image();
        Path backing = folder.resolve("sys/class/block/loop9/loop/backing_file");
        Files.createDirectories(backing.getParent());
        Files.writeString(backing, image.toRealPath() + "\n");
        SystemDisks disks = new LinuxDisks(folder.resolve("proc"), folder.resolve("sys"));

        assertThatThrownBy(() -> CardSource.open(image, disks, FixedDisks.REFUSED, true))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("in use")
                .hasMessageContaining("loop9");
        CardSource.open(image, disks, FixedDisks.REFUSED, false).close();
    }

    @Test
    void anImageIsReadAndWrittenThrough() throws CardException, IOException {
        Path image = image();
        try (CardSource card = opener.open(image, true)) {
            assertThat(card.kind().words()).isEqualTo("image file");
            assertThat(card.device().getSize()).isEqualTo(2048);
            card.device().write(1000, ByteBuffer.wrap(new byte[] {1, 2}));
            card.device().flush();
        }
        assertThat(Files.readAllBytes(image))
                .hasSize(2048)
                .contains(1, atIndex(1000))
                .contains(2, atIndex(1001));
    }

    private Path image() throws IOException {
        return Files.write(folder.resolve("card.img"), new byte[2048]);
    }

    private void assertRefused(Path card, boolean change, CardException.Kind kind, String words) {
        assertThatThrownBy(() -> opener.open(card, change)).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).isEqualTo(kind);
            assertThat(e).hasMessageContaining(words);
            assertThat(new StepNames().remedy(e)).endsWith(".");
        });
    }
}
