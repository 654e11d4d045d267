package bootmend.change;

import bootmend.device.CachedDevice;
import bootmend.device.PartitionWindow;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fat.FileContent;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;

/** Checks that a card holds what a plan says: every sector, then every file by two readers. */
final class ReadBack {

    private final BlockDevice card;
    private final Plan plan;

    ReadBack(BlockDevice card, Plan plan) {
        this.card = card;
        this.plan = plan;
    }

    /** Place of the first sector that does not hold {@code content}, or -1. */
    static long firstDifference(BlockDevice card, Map<Long, byte[]> content) throws IOException {
        for (Map.Entry<Long, byte[]> sector : content.entrySet()) {
            ByteBuffer now = ByteBuffer.allocate(sector.getValue().length);
            card.read(sector.getKey(), now);
            if (!Arrays.equals(now.array(), sector.getValue())) {
                return sector.getKey();
            }
        }
        return -1;
    }

    /**
     * Compares everything, with the medium itself where the system allows that.
     *
     * @return what the second reader said of all files together
     * @throws IOException naming the first thing that is not as planned
     */
    SecondReader.Answer check() throws IOException {
        CachedDevice.drop(card);
        long wrong = firstDifference(card, plan.contentAfter());
        if (wrong >= 0) {
            throw new IOException("the sector at byte " + wrong + " does not read back as it was written");
        }
        return checkFiles();
    }

    /** Compares the files alone, as on a card that holds the plan only in a preview. */
    SecondReader.Answer checkFiles() throws IOException {
        boolean nothingToAsk = plan.files().stream().allMatch(change -> change.after() == null);
        SecondReader.Answer all = nothingToAsk ? SecondReader.Answer.NOT_ASKED : SecondReader.Answer.AGREES;
        for (FileChange change : plan.files()) {
            PartitionWindow window = new PartitionWindow(
                    card, plan.card().volumeStart(), plan.card().volumeLength());
            FatVolume volume = FatVolume.open(window);
            Optional<DirectoryEntry> entry = volume.find(change.path());
            if (change.after() == null) {
                if (entry.isPresent()) {
                    throw new IOException(change.path() + " is still there");
                }
                continue;
            }
            if (entry.isEmpty()) {
                throw new IOException(change.path() + " is not found");
            }
            FileContent now = volume.read(entry.get(), change.after().length + 1);
            if (!Arrays.equals(now.bytes(), change.after())) {
                throw new IOException(change.path() + " does not read back as it was written");
            }
            SecondReader.Answer answer = now.isWhole()
                    ? SecondReader.ask(window, volume, change.path(), change.after())
                    : SecondReader.Answer.NOT_ASKED;
            if (answer == SecondReader.Answer.DISAGREES) {
                throw new IOException("the second reader does not find " + change.path() + " as it was written");
            }
            all = answer == SecondReader.Answer.NOT_ASKED ? answer : all;
        }
        return all;
    }
}
