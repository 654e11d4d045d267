package bootmend.device.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.atIndex;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import bootmend.CardException;
import bootmend.device.CardName;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

class LocalCardsTest {

    @TempDir
    private Path folder;

    private static final CardName.DeviceName DISK = new CardName.DeviceName("\\\\.\\PHYSICALDRIVE1");

    private final CardOpener opener = new LocalCards(FixedDisks.REFUSED);

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

        assertThatThrownBy(() -> new LocalCards(disks, FixedDisks.REFUSED).open(image, true))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("in use")
                .hasMessageContaining("loop9");
        new LocalCards(disks, FixedDisks.REFUSED).open(image, false).close();
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

    /** Opening a pipe would wait for its other end. */
    @Test
    @Timeout(20)
    void whatIsNamedByAccidentIsRefusedAtOnce() throws Exception {
        assumeTrue(Files.isExecutable(Path.of("/usr/bin/mkfifo")), "no mkfifo here: skipped");
        Path pipe = folder.resolve("pipe.img");
        assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor())
                .isZero();
        Path packed = folder.resolve("pipe.img.gz");
        assertThat(new ProcessBuilder("mkfifo", packed.toString()).start().waitFor())
                .isZero();
        for (boolean change : new boolean[] {false, true}) {
            assertRefused(pipe, change, CardException.Kind.UNREADABLE, "it is a named pipe");
            assertRefused(packed, change, CardException.Kind.UNREADABLE, "it is a named pipe");
            assertRefused(Path.of("/dev/zero"), change, CardException.Kind.UNREADABLE, "it is a character device");
            assertRefused(Path.of(""), change, CardException.Kind.USAGE, "the name of a card is empty");
        }
    }

    @Test
    void nothingIsMadeWhereThereIsNothing() {
        Path none = folder.resolve("none.img");

        assertRefused(none, true, CardException.Kind.UNREADABLE, "no such file");
        assertThat(none).doesNotExist();
    }

    @Test
    void anotherFileThatTookTheNameIsNoticed() throws CardException, IOException {
        Path image = image();
        Path other = Files.write(folder.resolve("other.img"), new byte[2048]);
        try (CardSource card = opener.open(image, true)) {
            assertThat(card.isStillNamed()).isTrue();
            card.device().write(0, ByteBuffer.wrap(new byte[] {1}));
            card.device().flush();
            assertThat(card.isStillNamed()).as("after it was written to").isTrue();

            Files.move(other, image, StandardCopyOption.REPLACE_EXISTING);
            assertThat(card.isStillNamed()).isFalse();

            Files.delete(image);
            assertThatThrownBy(card::isStillNamed).isInstanceOf(NoSuchFileException.class);
        }
    }

    @Test
    void oneFileUnderTwoNamesIsOneCard() throws CardException, IOException {
        Path image = image();
        Path link = Files.createSymbolicLink(folder.resolve("link.img"), image);
        try (CardSource one = opener.open(image, false);
                CardSource two = opener.open(link, false)) {
            assertThat(one.identity()).isEqualTo(two.identity());
            assertThat(one.identity().isTellingFrom(two.identity())).isTrue();
        }
        Path twin = Files.copy(image, folder.resolve("twin.img"));
        try (CardSource one = opener.open(image, false);
                CardSource two = opener.open(twin, false)) {
            assertThat(one.identity().isStill(two.identity())).isFalse();
            assertThat(one.identity().isSameCard(two.identity())).isFalse();
        }
    }

    /** A disk that gives out before anything could be synced is found out while nothing is written. */
    @Test
    void whatCannotBeSyncedIsRefusedBeforeAnythingIsWritten() throws CardException, IOException {
        Path image = image();
        List<String> events = new ArrayList<>();
        SystemDisks disks = new ScriptedDisks(() -> new ForwardingFile(ChannelFile.open(image, true)) {
            @Override
            public int write(ByteBuffer src, long position) throws IOException {
                events.add("write");
                return super.write(src, position);
            }

            @Override
            public void sync() throws IOException {
                events.add("sync");
                throw new IOException("Inappropriate ioctl for device");
            }

            @Override
            public void close() throws IOException {
                events.add("close");
                super.close();
            }
        });

        assertThatThrownBy(() -> new LocalCards(disks, FixedDisks.REFUSED).open(DISK, true))
                .isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.kind()).isEqualTo(CardException.Kind.REFUSED);
                    assertThat(e).hasMessageContaining("cannot sync it (Inappropriate ioctl");
                    assertThat(e.remedy()).contains("nothing was written");
                });
        assertThat(events).containsExactly("sync", "close");
        new LocalCards(disks, FixedDisks.REFUSED).open(DISK, false).close();
        assertThat(events).as("a look needs no sync").containsExactly("sync", "close", "close");
    }

    @Test
    void anotherMediumInThePlaceOfADiskIsNoticed() throws CardException, IOException {
        Path image = image();
        ScriptedDisks disks = new ScriptedDisks(() -> ChannelFile.open(image, true));
        try (CardSource card = new LocalCards(disks, FixedDisks.REFUSED).open(DISK, true)) {
            assertThat(card.isStillNamed()).isTrue();
            disks.sequence++;
            assertThat(card.isStillNamed()).isFalse();
        }
        disks.changesWhileOpening = true;
        assertThatThrownBy(() -> new LocalCards(disks, FixedDisks.REFUSED).open(DISK, false))
                .isInstanceOf(CardException.class)
                .hasMessageContaining("took its place while it was being opened");
    }

    @Test
    void aDiskThatTellsNoSizeIsMeasured() throws CardException, IOException {
        Path image = image();
        ScriptedDisks disks = new ScriptedDisks(() ->
                new StubbornFile(FileChannel.open(image, StandardOpenOption.READ, StandardOpenOption.WRITE), 512));
        try (CardSource card = new LocalCards(disks, FixedDisks.REFUSED).open(DISK, true)) {
            assertThat(card.bytes()).isEqualTo(2048);
            assertThat(card.kind()).isEqualTo(CardSource.Kind.BLOCK_DEVICE);
            assertThat(card.name().text()).isEqualTo(DISK.name());
        }
    }

    private Path image() throws IOException {
        return Files.write(folder.resolve("card.img"), new byte[2048]);
    }

    private void assertRefused(Path card, boolean change, CardException.Kind kind, String words) {
        assertThatThrownBy(() -> opener.open(card, change)).isInstanceOfSatisfying(CardException.class, e -> {
            assertThat(e.kind()).isEqualTo(kind);
            assertThat(e).hasMessageContaining(words);
            assertThat(e.remedy()).endsWith(".");
        });
    }
}
