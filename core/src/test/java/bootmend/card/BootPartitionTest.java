package bootmend.card;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.device.CardSource;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.GptBuilder;
import bootmend.fixtures.MbrBuilder;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import bootmend.view.ShowJob;
import bootmend.workplace.MemoryCard;
import bootmend.workplace.Workplace;
import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** The boot partition found on whole cards, through the job that shows them. */
class BootPartitionTest {

    private static final FatSpec VOLUME = FatSpec.fat16(5000).build();
    private static final long SECTORS = VOLUME.totalSectors();
    private static final long SECOND = 2048 + SECTORS;

    @Test
    void secondPartitionHoldsTheFirmware() throws CardException, IOException {
        SparseDisk disk = twoVolumes();
        write(disk, 2048, "notes.txt", "none");
        write(disk, SECOND, "start4.elf", "none");

        assertThat(show(disk, OptionalInt.empty()).partition().number()).isEqualTo(2);
        assertThat(show(disk, OptionalInt.of(1)).partition().reason()).isEqualTo("you named it");
    }

    @Test
    void autobootOnTheFirstNamesTheSecond() throws CardException, IOException {
        SparseDisk disk = twoVolumes();
        write(disk, 2048, "start4.elf", "[all]\nboot_partition=2\n");
        write(disk, SECOND, "kernel.img", "none");

        PartitionView partition = show(disk, OptionalInt.empty()).partition();

        assertThat(partition.number()).isEqualTo(2);
        assertThat(partition.firstSector()).isEqualTo(SECOND);
        assertThat(partition.reason()).contains("autoboot.txt");
    }

    /** A second FAT partition that is cut off or damaged is no reason to fail on the first. */
    @Test
    void aVolumeWhoseRootCannotBeReadIsPassedOver() throws CardException, IOException {
        SparseDisk disk = twoVolumes();
        write(disk, 2048, "config.txt", "none");
        write(disk, SECOND, "start4.elf", "none");
        SparseDisk cut = disk.cutOffAt((SECOND + 3) * 512);

        assertThat(show(cut, OptionalInt.empty()).partition().number()).isEqualTo(1);
    }

    @Test
    void partitionsOfAGuidTable() throws CardException, IOException {
        SparseDisk disk = new GptBuilder((SECOND + SECTORS + 2048) * 512, 512)
                .partition(GptBuilder.BASIC_DATA, 2048, SECTORS, "data")
                .partition(GptBuilder.EFI_SYSTEM, SECOND, SECTORS, "boot")
                .build();
        write(disk, 2048, "notes.txt", "none");
        write(disk, SECOND, "start4.elf", "none");

        PartitionView partition = show(disk, OptionalInt.empty()).partition();

        assertThat(partition.table()).isEqualTo("GPT");
        assertThat(partition.number()).isEqualTo(2);
    }

    private static SparseDisk twoVolumes() {
        return new MbrBuilder((SECOND + SECTORS) * 512, 512)
                .partition(0x0E, 2048, SECTORS)
                .partition(0x0C, SECOND, SECTORS)
                .build();
    }

    private static void write(SparseDisk disk, long sector, String name, String autoboot) throws IOException {
        FatBuilder builder = new FatBuilder(VOLUME).file(name, new byte[600]);
        if (!autoboot.equals("none")) {
            builder.file("autoboot.txt", MemoryCard.ascii(autoboot));
        }
        builder.writeTo(disk, sector * 512);
    }

    private static CardView show(SparseDisk disk, OptionalInt partition) throws CardException, IOException {
        Workplace workplace = new Workplace(
                Jimfs.newFileSystem(Configuration.unix()).getPath("/data"),
                Clock.systemUTC(),
                (path, change) -> CardSource.of(path, disk.copy()));
        return new ShowJob(workplace).run(new CardRequest(Path.of("card"), partition));
    }
}
