package bootmend.oracle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.StepNames;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import bootmend.device.ForwardingDevice;
import bootmend.device.system.AttachedDisk;
import bootmend.device.system.DiskList;
import bootmend.device.system.FixedDisks;
import bootmend.device.system.LocalCards;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.MbrBuilder;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeOutcome;
import bootmend.operation.ChangeRequest;
import bootmend.operation.Made;
import bootmend.operation.OpenRecovery;
import bootmend.operation.RecoverJob;
import bootmend.operation.TriedChange;
import bootmend.request.CardRequest;
import bootmend.view.AttachedCard;
import bootmend.view.CardsJob;
import bootmend.view.ShowJob;
import bootmend.workplace.Workplace;
import de.waldheinz.fs.BlockDevice;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Changes on a real block device: a loop device, as root on Linux. */
class LoopDeviceTest {

    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-02-03T10:11:12Z"), ZoneOffset.UTC);
    private static final long BOOT_START = 2048;
    private static final long ROOT_START = 24576;
    private static final long ROOT_SECTORS = 16384;

    @TempDir
    private Path folder;

    private Path image;

    @BeforeEach
    void prepare() throws IOException {
        LoopDevice.need();
        image = folder.resolve("card.img");
        card().writeTo(image);
    }

    @Test
    void aResetLeavesTheSameBytesAsOnTheFileAndIsTakenBack() throws CardException, IOException {
        Path copy = Files.copy(image, folder.resolve("copy.img"));
        byte[] before = Files.readAllBytes(image);
        reset(workplace("file", new LocalCards(FixedDisks.REFUSED)), copy);
        try (LoopDevice loop = LoopDevice.attach(image)) {
            Workplace workplace = workplace("loop", new LocalCards(FixedDisks.REFUSED));
            assertThat(new ShowJob(workplace).run(CardRequest.of(loop.path())).kind())
                    .isEqualTo("block device");
            reset(workplace, loop.path());
            assertThat(image).hasSameBinaryContentAs(copy);
            {
                TriedChange back = TriedChange.of(workplace, CardRequest.of(loop.path()), ChangeRequest.Undo.LAST);
                assertThat(back.apply()).isInstanceOf(Made.OnCard.class);
            }
        }
        assertThat(Files.readAllBytes(image)).isEqualTo(before);
    }

    @Test
    void aCardOfWhichAPartitionIsMountedIsRefused() throws CardException, IOException {
        try (LoopDevice loop = LoopDevice.attach(image).withPartitions()) {
            Path mounted = folder.resolve("mounted");
            Tool.run("mkfs.ext4", "-q", loop.partition(2).toString());
            loop.mount(loop.partition(2), mounted);
            byte[] before = Files.readAllBytes(image);

            assertRefused(loop.path(), loop.partition(2) + " is mounted at " + mounted, "Unmount");
            assertRefused(loop.partition(2), "is mounted at " + mounted, "Unmount");
            assertRefused(image, loop.partition(2) + " is mounted at " + mounted, "Unmount");
            assertThat(Files.readAllBytes(image)).isEqualTo(before);

            loop.unmount();
            reset(workplace("records", new LocalCards(FixedDisks.REFUSED)), loop.path());
        }
    }

    /** Mounted in another mount namespace it is not in this process's list of mounts; only the kernel knows. */
    @Test
    void aCardThatAnotherOpenerHoldsIsRefused() throws Exception {
        try (LoopDevice loop = LoopDevice.attach(image).withPartitions()) {
            Tool.run("mkfs.ext4", "-q", loop.partition(2).toString());
            Path point = Files.createDirectories(folder.resolve("elsewhere"));
            Process holder = new ProcessBuilder(
                            "unshare",
                            "--mount",
                            "sh",
                            "-c",
                            "mount " + loop.partition(2) + " " + point + " && echo held && read line; umount " + point)
                    .redirectErrorStream(true)
                    .start();
            try (BufferedReader said = holder.inputReader(StandardCharsets.UTF_8)) {
                assertThat(said.readLine()).isEqualTo("held");
                assertRefused(loop.path(), "another program holds it for itself alone", "end that program");
            } finally {
                holder.getOutputStream().close();
                assertThat(holder.waitFor()).isZero();
            }
        }
    }

    @Test
    void nothingCanMountACardWhileItIsChanged() throws CardException, IOException {
        try (LoopDevice loop = LoopDevice.attach(image).withPartitions()) {
            Tool.run("mkfs.ext4", "-q", loop.partition(2).toString());
            Path point = folder.resolve("mounted");
            Workplace workplace = workplace("records", new LocalCards(FixedDisks.REFUSED));
            ChangeOutcome outcome = new ChangeOperation(workplace)
                    .make(CardRequest.of(loop.path()), ChangeOrder.of(ChangeRequest.ToStock.PLAIN), change -> {
                        assertThatThrownBy(() -> loop.mount(loop.partition(2), point))
                                .isInstanceOf(AssertionError.class)
                                .hasMessageContaining("already mounted or mount point busy");
                        return true;
                    });
            assertThat(outcome.ifMade()).containsInstanceOf(Made.OnCard.class);
            loop.mount(loop.partition(2), point);
        }
    }

    @Test
    void aReadOnlyDeviceHasItsOwnWordsAndIsStillShown() throws CardException, IOException {
        try (LoopDevice loop = LoopDevice.attach(image, "--read-only")) {
            assertRefused(loop.path(), "this loop device was attached read-only", "attach it again for writing");
            assertThat(new ShowJob(workplace("records", new LocalCards(FixedDisks.REFUSED)))
                            .run(CardRequest.of(loop.path()))
                            .isStock())
                    .isFalse();
        }
    }

    /** Before whichever write the card vanishes, the old file or the new is whole on it, and recovery ends the change. */
    @Test
    void aCardThatVanishesInTheMiddleIsRecoveredWhenItIsBack() throws CardException, IOException {
        byte[] whole = Files.readAllBytes(image);
        int writes = writesOfAReset();
        int recovered = 0;
        for (int before = 0; before < writes; before++) {
            Files.write(image, whole);
            Path kept = folder.resolve("kept-" + before + ".img");
            Path home = folder.resolve("records-" + before);
            pullInTheMiddle(before, home, kept);
            try (LoopDevice back = LoopDevice.attach(kept)) {
                Workplace workplace = new Workplace(home, CLOCK, new LocalCards(FixedDisks.REFUSED));
                assertThat(new ShowJob(workplace)
                                .run(CardRequest.of(back.path()))
                                .tuning())
                        .hasSize(1);
                try (OpenRecovery open = new RecoverJob(workplace).begin(CardRequest.of(back.path()))) {
                    if (open.view().isPresent()) {
                        assertThat(open.undo()).isInstanceOf(Made.OnCard.class);
                        recovered++;
                    }
                }
            }
            assertThat(Files.readAllBytes(kept))
                    .as("pulled before write %d", before)
                    .isEqualTo(whole);
        }
        assertThat(recovered).isPositive();
    }

    private int writesOfAReset() throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(
                    workplace("counted", new LocalCards(FixedDisks.REFUSED)),
                    CardRequest.of(image),
                    ChangeRequest.ToStock.PLAIN);
            return change.plan().sectorsWritten();
        }
    }

    private void pullInTheMiddle(int writes, Path home, Path kept) throws CardException, IOException {
        try (LoopDevice loop = LoopDevice.attach(image)) {
            Workplace pulled = new Workplace(home, CLOCK, pulledAfter(writes, loop, kept));
            {
                TriedChange change = TriedChange.of(pulled, CardRequest.of(loop.path()), ChangeRequest.ToStock.PLAIN);
                assertThatThrownBy(change::apply).isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.kind()).isEqualTo(CardException.Kind.INTERRUPTED);
                    assertThat(new StepNames().remedy(e)).contains("<RecoverCard[");
                });
            }
        }
    }

    @Test
    void anAttachedDeviceIsListed() throws CardException, IOException {
        try (LoopDevice loop = LoopDevice.attach(image, "--read-only").withPartitions()) {
            AttachedDisk disk = DiskList.ofThisComputer().now().stream()
                    .filter(each -> each.path().equals(loop.path()))
                    .findFirst()
                    .orElseThrow();
            assertThat(disk.bytes()).isEqualTo(Files.size(image));
            assertThat(disk.model()).isEqualTo(image.toRealPath().toString());
            assertThat(disk.bus()).isEqualTo("loop");
            assertThat(disk.readOnly()).isTrue();
            assertThat(disk.system()).isEmpty();
            assertThat(disk.partitions())
                    .extracting(part -> part.device().text())
                    .containsExactly(
                            loop.partition(1).toString(), loop.partition(2).toString());
            assertThat(disk.partitions().get(1).bytes()).isEqualTo(ROOT_SECTORS * 512);

            AttachedCard card = new CardsJob(workplace("records", new LocalCards(FixedDisks.REFUSED)))
                    .run().stream()
                            .filter(each -> each.path().equals(loop.path().toString()))
                            .findFirst()
                            .orElseThrow();
            assertThat(card.boot()).isEqualTo(AttachedCard.Boot.YES);
        }
    }

    private CardOpener pulledAfter(int writes, LoopDevice loop, Path kept) {
        return (path, forChanging) -> CardSource.of(
                path,
                new Pulled(
                        new LocalCards(FixedDisks.REFUSED)
                                .open(path, forChanging)
                                .device(),
                        writes,
                        loop,
                        kept));
    }

    /** A device whose card is pulled before a write; what was forced until then stays on the card. */
    private final class Pulled extends ForwardingDevice {

        private final LoopDevice loop;
        private final Path kept;
        private int left;

        Pulled(BlockDevice device, int writes, LoopDevice loop, Path kept) {
            super(device);
            this.left = writes;
            this.loop = loop;
            this.kept = kept;
        }

        @Override
        public void write(long offset, ByteBuffer src) throws IOException {
            if (left-- == 0) {
                try {
                    Files.copy(image, kept);
                    loop.pull();
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            }
            super.write(offset, src);
        }
    }

    private Workplace workplace(String home, CardOpener opener) {
        return new Workplace(folder.resolve(home), CLOCK, opener);
    }

    private static void reset(Workplace workplace, Path card) throws CardException, IOException {
        {
            TriedChange change = TriedChange.of(workplace, CardRequest.of(card), ChangeRequest.ToStock.PLAIN);
            assertThat(change.apply()).isInstanceOf(Made.OnCard.class);
        }
    }

    private void assertRefused(Path card, String what, String remedy) throws CardException {
        Workplace workplace = workplace("records", new LocalCards(FixedDisks.REFUSED));
        assertThatThrownBy(() -> TriedChange.make(workplace, CardRequest.of(card), ChangeRequest.ToStock.PLAIN))
                .isInstanceOfSatisfying(CardException.class, e -> {
                    assertThat(e.kind()).isEqualTo(CardException.Kind.REFUSED);
                    assertThat(e.getMessage()).contains(what);
                    assertThat(new StepNames().remedy(e)).contains(remedy);
                });
    }

    /** A FAT boot partition and room for an ext4 one. */
    private static SparseDisk card() throws IOException {
        FatSpec spec = FatSpec.fat16(5000).serial(0x1AB).build();
        SparseDisk disk = new MbrBuilder((ROOT_START + ROOT_SECTORS) * 512, 512)
                .partition(0x0E, BOOT_START, spec.totalSectors())
                .partition(0x83, ROOT_START, ROOT_SECTORS)
                .build();
        new FatBuilder(spec)
                .file("start.elf", new byte[2000])
                .file("config.txt", "arm_freq=2100\n".getBytes(StandardCharsets.US_ASCII))
                .writeTo(disk, BOOT_START * 512);
        return disk;
    }
}
