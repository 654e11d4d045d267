package bootmend.device.packed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.ReportedIOException;
import bootmend.StepNames;
import bootmend.device.OutsideDeviceException;
import bootmend.device.system.FixedDisks;
import bootmend.device.system.LocalCards;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.tukaani.xz.LZMA2Options;
import org.tukaani.xz.XZOutputStream;

/** Packed images made by Java's own packers; {@code PackedToolsTest} has those of the real programs. */
class PackedDeviceTest {

    private static final int MIB = 1 << 20;

    @TempDir
    private Path folder;

    @Test
    void anyReadGivesTheImagesBytes() throws CardException, IOException {
        byte[] image = image(3 * MIB + 1000);
        for (Path file : new Path[] {gzip(image), zip("lab.img", image), xz(image)}) {
            try (PackedDeviceHolder packed = open(file)) {
                Random random = new Random(7);
                for (int i = 0; i < 300; i++) {
                    int offset = random.nextInt(image.length);
                    int length = random.nextInt(Math.min(200_000, image.length - offset));
                    assertThat(packed.read(offset, length))
                            .as("%s at %d", file.getFileName(), offset)
                            .isEqualTo(Arrays.copyOfRange(image, offset, offset + length));
                }
            }
        }
    }

    @Test
    void onlyWhatIsAskedForIsUnpacked() throws CardException, IOException {
        byte[] image = image(8 * MIB);
        try (PackedDeviceHolder packed = open(gzip(image))) {
            packed.read(0, 512);
            packed.read(MIB, 512);
            assertThat(packed.device.unpacked()).isLessThanOrEqualTo(MIB + (1 << 16));
            packed.read(512, 512);
            assertThat(packed.device.unpacked()).isLessThanOrEqualTo(MIB + (1 << 16));
        }
    }

    @Test
    void anXzFileOfBlocksIsUnpackedFromTheBlockThatIsNeeded() throws CardException, IOException {
        byte[] image = image(8 * MIB);
        try (PackedDeviceHolder packed = open(xz(image))) {
            assertThat(packed.read(7 * MIB, 512)).isEqualTo(Arrays.copyOfRange(image, 7 * MIB, 7 * MIB + 512));
            assertThat(packed.device.unpacked()).isLessThanOrEqualTo(2 * MIB);
        }
    }

    @Test
    void theSizeIsWhatTheFileSaysOrLargeUntilTheEndWasMet() throws CardException, IOException {
        byte[] image = image(MIB + 512);
        try (PackedDeviceHolder packed = open(gzip(image))) {
            assertThat(packed.device.getSize()).isEqualTo(PackedDevice.UNKNOWN_SIZE);
            assertThatThrownBy(() -> packed.read(MIB, 1024)).isInstanceOf(OutsideDeviceException.class);
            assertThat(packed.device.getSize()).isEqualTo(image.length);
            assertThat(packed.read(MIB, 512)).isEqualTo(Arrays.copyOfRange(image, MIB, MIB + 512));
            assertThatThrownBy(() -> packed.read(2 * MIB, 1)).isInstanceOf(OutsideDeviceException.class);
        }
        try (PackedDeviceHolder packed = open(xz(image))) {
            assertThat(packed.device.getSize()).isEqualTo(image.length);
        }
    }

    @Test
    void aLookAtTheEndOfWhoKnowsWhereUnpacksNothing() throws CardException, IOException {
        try (PackedDeviceHolder packed = open(gzip(image(MIB)))) {
            assertThatThrownBy(() -> packed.read(PackedDevice.UNKNOWN_SIZE - 512, 512))
                    .isInstanceOf(OutsideDeviceException.class);
            assertThat(packed.device.unpacked()).isZero();
        }
    }

    @Test
    void whatUnpacksWithoutEndIsGivenUp() throws CardException, IOException {
        Path file = folder.resolve("bomb.img.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            for (int i = 0; i < 64; i++) {
                out.write(new byte[MIB]);
            }
        }
        try (PackedDevice packed = PackedDevice.open(file, PackedFormat.GZIP, 16 * MIB)) {
            assertThatThrownBy(() -> packed.read(60L * MIB, ByteBuffer.allocate(512)))
                    .isInstanceOf(ReportedIOException.class)
                    .hasMessageContaining("over 16 MiB would have to be unpacked");
            assertThat(packed.unpacked()).isLessThanOrEqualTo(16 * MIB);
        }
    }

    @Test
    void goingBackAgainAndAgainIsBoundedToo() throws CardException, IOException {
        byte[] image = image(40 * MIB);
        try (PackedDevice packed = PackedDevice.open(gzip(image), PackedFormat.GZIP, 200L * MIB)) {
            assertThatThrownBy(() -> {
                        for (int i = 0; i < 100; i++) {
                            // Each round reads more than is kept, so that the next must begin again.
                            for (int at = 0; at < image.length; at += 1 << 16) {
                                packed.read(at, ByteBuffer.allocate(512));
                            }
                        }
                    })
                    .isInstanceOf(ReportedIOException.class)
                    .hasMessageContaining("would have to be unpacked");
        }
    }

    @Test
    void whatIsCutOffDamagedOrNotPackedIsSaidWithWhatToDo() throws IOException {
        byte[] image = image(MIB);
        for (Path file : new Path[] {gzip(image), xz(image), zip("lab.img", image)}) {
            byte[] whole = Files.readAllBytes(file);
            byte[] bent = whole.clone();
            // A zip file's checksum is of the whole image, which is never read whole: there, its list is what is bent.
            int middle = file.toString().endsWith(".zip") ? whole.length - 60 : whole.length / 2;
            Arrays.fill(bent, middle, middle + 60, (byte) 0x5A);
            for (byte[] bad : new byte[][] {
                Arrays.copyOf(whole, whole.length / 2), bent, "no archive".getBytes(StandardCharsets.US_ASCII), {}
            }) {
                Files.write(file, bad);
                assertThatThrownBy(() -> {
                            try (PackedDeviceHolder packed = open(file)) {
                                packed.read(0, MIB);
                                // A checksum is met only at the end.
                                packed.read(MIB, 1);
                            }
                        })
                        .as("%s of %d bytes", file.getFileName(), bad.length)
                        .extracting(e -> e instanceof ReportedIOException reported ? reported.report() : e)
                        .isInstanceOf(CardException.class)
                        .matches(e -> ((CardException) e).kind() == CardException.Kind.UNREADABLE)
                        .matches(e -> new StepNames().remedy((CardException) e).contains("npack"));
            }
        }
    }

    @Test
    void damagedFilesOfAnyKindNeverEndInAnythingButAnError() throws IOException {
        byte[] image = image(200_000);
        Random random = new Random(11);
        for (Path file : new Path[] {gzip(image), xz(image), zip("lab.img", image)}) {
            byte[] whole = Files.readAllBytes(file);
            for (int i = 0; i < 150; i++) {
                byte[] bad = whole.clone();
                for (int j = 0; j < 3; j++) {
                    int near = random.nextBoolean() ? random.nextInt(64) : bad.length - 1 - random.nextInt(128);
                    bad[near] = (byte) random.nextInt();
                }
                Files.write(file, bad);
                try (PackedDeviceHolder packed = open(file)) {
                    packed.read(0, 100_000);
                    packed.read(190_000, 10_000);
                } catch (CardException | ReportedIOException | OutsideDeviceException e) {
                    assertThat(e.getMessage()).isNotBlank();
                }
            }
        }
    }

    @Test
    void aZipFileMustHoldOneImage() throws CardException, IOException {
        byte[] image = image(MIB);
        Path two = folder.resolve("two.zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(two))) {
            for (String name : new String[] {"read-me.txt", "a.img"}) {
                out.putNextEntry(new ZipEntry(name));
                out.write(image);
            }
        }
        try (PackedDeviceHolder packed = open(two)) {
            assertThat(packed.read(0, 512)).isEqualTo(Arrays.copyOf(image, 512));
        }
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(two))) {
            out.putNextEntry(new ZipEntry("a.img"));
            out.putNextEntry(new ZipEntry("b.img"));
        }
        assertThatThrownBy(() -> open(two)).hasMessageContaining("2 files that could be the image");
    }

    @Test
    void aZipFileWithAHugeListIsNotReadWhole() throws IOException {
        Path many = folder.resolve("many.zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(many))) {
            out.setMethod(ZipOutputStream.DEFLATED);
            for (int i = 0; i < 40_000; i++) {
                out.putNextEntry(new ZipEntry("x".repeat(100) + i));
            }
        }
        assertThatThrownBy(() -> open(many)).isInstanceOf(CardException.class).hasMessageContaining("list of files");
    }

    @Test
    void aPackedImageIsRefusedForChanging() throws IOException {
        Path file = gzip(image(MIB));
        byte[] before = Files.readAllBytes(file);

        assertThatThrownBy(() -> new LocalCards(FixedDisks.REFUSED).open(file, true))
                .isInstanceOf(CardException.class)
                .matches(e -> ((CardException) e).kind() == CardException.Kind.REFUSED)
                .matches(e -> ((CardException) e)
                        .steps()
                        .contains(new NextStep.UnpackImage(NextStep.UnpackImage.Packing.GZIP, "lab.img.gz")));
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    private record PackedDeviceHolder(PackedDevice device) implements AutoCloseable {

        byte[] read(long offset, int length) throws IOException {
            ByteBuffer bytes = ByteBuffer.allocate(length);
            device.read(offset, bytes);
            return bytes.array();
        }

        @Override
        public void close() throws IOException {
            device.close();
        }
    }

    private static PackedDeviceHolder open(Path file) throws CardException, IOException {
        return new PackedDeviceHolder(
                PackedDevice.open(file, PackedFormat.of(file).orElseThrow()));
    }

    /** Half noise, half zeros, in runs that do not end where pages do. */
    private static byte[] image(int length) {
        byte[] image = new byte[length];
        Random random = new Random(3);
        byte[] noise = new byte[70_001];
        for (int at = 0; at < length; at += 2 * noise.length) {
            random.nextBytes(noise);
            System.arraycopy(noise, 0, image, at, Math.min(noise.length, length - at));
        }
        return image;
    }

    private Path gzip(byte[] image) throws IOException {
        Path file = folder.resolve("lab.img.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
            out.write(image);
        }
        return file;
    }

    /** In blocks of a mebibyte. */
    private Path xz(byte[] image) throws IOException {
        Path file = folder.resolve("lab.img.xz");
        try (XZOutputStream out = new XZOutputStream(Files.newOutputStream(file), new LZMA2Options(0))) {
            for (int at = 0; at < image.length; at += MIB) {
                out.write(image, at, Math.min(MIB, image.length - at));
                out.endBlock();
            }
        }
        return file;
    }

    private Path zip(String name, byte[] image) throws IOException {
        Path file = folder.resolve("lab.zip");
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
            out.putNextEntry(new ZipEntry(name));
            out.write(image);
        }
        return file;
    }
}
