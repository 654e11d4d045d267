package bootmend.oracle;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.change.CardId;
import bootmend.change.UndoRecord;
import bootmend.change.UndoStore;
import bootmend.device.PartitionWindow;
import bootmend.fat.FatVolume;
import bootmend.fat.SectorChange;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeRequest;
import bootmend.operation.Made;
import bootmend.operation.TriedChange;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import de.waldheinz.fs.FsFile;
import de.waldheinz.fs.fat.FatFileSystem;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/** One reset of a real image file through the job, with the image before and after it. */
record RealReset(Path image, Path home, long volumeStart, SparseDisk before, SparseDisk after, Made change) {

    static RealReset of(Path image, Path home, long volumeStart) throws CardException, IOException {
        SparseDisk before = Images.load(image);
        {
            TriedChange change =
                    TriedChange.of(Workplace.ofThisComputer(home), CardRequest.of(image), ChangeRequest.ToStock.PLAIN);
            assertThat(change.isNothing()).isFalse();
            Made done = change.apply();
            return new RealReset(image, home, volumeStart, before, Images.load(image), done);
        }
    }

    /** The sectors that differ are those the plan changes, all of them and no others, and hold what it says. */
    void assertOnlyThePlansSectorsDiffer() throws CardException, IOException {
        FatVolume volume = FatVolume.open(new PartitionWindow(after, volumeStart, after.getSize() - volumeStart));
        List<UndoRecord> done = new UndoStore(home).doneFor(CardId.of(volume, volumeStart));
        assertThat(done).hasSize(1);
        TreeMap<Long, byte[]> content = new TreeMap<>();
        done.get(0).plan().steps().forEach(step -> step.changes().forEach(c -> content.put(c.offset(), c.after())));
        List<Long> planned = new ArrayList<>();
        content.forEach((offset, bytes) -> {
            for (int at = 0; at < bytes.length; at += 512) {
                byte[] wanted = Arrays.copyOfRange(bytes, at, at + 512);
                assertThat(after.toBytes(offset + at, 512)).isEqualTo(wanted);
                if (!Arrays.equals(before.toBytes(offset + at, 512), wanted)) {
                    planned.add(offset + at);
                }
            }
        });
        assertThat(after.differingSectors(before)).isEqualTo(planned).isNotEmpty();
        assertThat(done.get(0).plan().steps().stream()
                        .flatMap(step -> step.changes().stream())
                        .map(SectorChange::offset))
                .allMatch(offset -> offset > volumeStart);
    }

    byte[] readWithFat32Lib(String name) throws IOException {
        PartitionWindow window = new PartitionWindow(after, volumeStart, after.getSize() - volumeStart);
        FsFile file = FatFileSystem.read(window, true).getRoot().getEntry(name).getFile();
        ByteBuffer content = ByteBuffer.allocate(Math.toIntExact(file.getLength()));
        file.read(0, content);
        return content.array();
    }

    void undoAndCompare() throws CardException, IOException {
        {
            TriedChange change =
                    TriedChange.of(Workplace.ofThisComputer(home), CardRequest.of(image), ChangeRequest.Undo.LAST);
            assertThat(change.apply()).isInstanceOf(Made.OnCard.class);
        }
        assertThat(Images.load(image).differingSectors(before)).isEmpty();
    }
}
