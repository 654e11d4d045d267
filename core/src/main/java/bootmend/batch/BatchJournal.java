package bootmend.batch;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.device.DurableFile;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * What a batch of changes is to do and how far it came, in a file beside the undo records, so that a batch that is cut can
 * be told of at the next start.
 *
 * <p>That a card is begun is synced to this computer's disk before anything is done to it. The file is locked for as long
 * as the batch runs, and taken away at its end where every card had its turn.
 */
public final class BatchJournal {

    private final Path file;
    private final FileChannel channel;
    private final List<Path> cards;
    private final Map<Path, Integer> numbers = new HashMap<>();
    private IOException failure;

    private BatchJournal(Path file, FileChannel channel, List<Path> cards) {
        this.file = file;
        this.channel = channel;
        this.cards = List.copyOf(cards);
        for (int i = 0; i < cards.size(); i++) {
            numbers.put(cards.get(i), i);
        }
    }

    /**
     * Notes what a batch is about to do.
     *
     * @param home bootmend's data folder
     * @param what is done to each card, in a few words
     * @param cards each once
     * @throws CardException of kind REFUSED where it cannot be noted; no card may be begun then
     */
    public static BatchJournal begin(Path home, String what, List<Path> cards, Instant now) throws CardException {
        Path file = JournalText.fileIn(home, now);
        Path made = file.resolveSibling(file.getFileName() + ".new");
        FileChannel channel = null;
        try {
            Files.createDirectories(file.getParent());
            channel = FileChannel.open(made, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            lock(channel);
            write(channel, JournalText.head(what, cards, now));
            channel.force(true);
            // Under its own name only when it is whole and locked, so that no other process takes it for one left
            // behind.
            Files.move(made, file, StandardCopyOption.ATOMIC_MOVE);
            DurableFile.syncFolder(file.getParent());
            return new BatchJournal(file, channel, cards);
        } catch (IOException e) {
            CardException told = CardException.refused(
                    "the batch could not be noted in " + file.getParent() + " (" + e.getMessage() + ")",
                    "No card was begun. Make room, or take another data folder.",
                    e,
                    NextStep.Plain.SET_DATA_FOLDER);
            takeAway(channel, List.of(made, file), told);
            throw told;
        }
    }

    /** A journal that is added to at {@code file}, without a head and not locked, for tests of what goes wrong there. */
    static BatchJournal at(Path file, List<Path> cards) throws IOException {
        return new BatchJournal(file, FileChannel.open(file, StandardOpenOption.WRITE), cards);
    }

    private static void takeAway(FileChannel channel, List<Path> files, Exception why) {
        try {
            if (channel != null) {
                channel.close();
            }
            for (Path each : files) {
                Files.deleteIfExists(each);
            }
        } catch (IOException e) {
            why.addSuppressed(e);
        }
    }

    /** Where a file system has no locks, another process may take this batch for one that was cut, and says only that. */
    private static void lock(FileChannel channel) {
        try {
            FileLock held = channel.tryLock();
            if (held == null) {
                return;
            }
        } catch (IOException e) {
            return;
        }
    }

    /**
     * Does the batch, noting each card's beginning and end.
     *
     * @param results as {@link CardBatch#run} takes it
     * @return what kept an end from being noted; the cards themselves are done as their results say
     */
    public <T> Optional<CardException> run(CardBatch batch, CardBatch.Work<T> work, Consumer<CardResult<T>> results) {
        try {
            batch.run(cards, card -> noted(card, work), results);
        } finally {
            end();
        }
        return failure == null
                ? Optional.empty()
                : Optional.of(CardException.refused(
                        "the batch's journal " + file + " could not be written (" + failure.getMessage() + ")",
                        "The cards are done as listed. Make room in bootmend's data folder.",
                        failure));
    }

    private <T> T noted(Path card, CardBatch.Work<T> work) throws CardException {
        int number = numbers.get(card);
        begun(number);
        // Whatever nobody foresaw may have left something on the card.
        JournalText.Mark end = JournalText.Mark.CUT;
        try {
            T done = work.on(card);
            end = JournalText.Mark.DONE;
            return done;
        } catch (CardException e) {
            end = e.kind() == CardException.Kind.INTERRUPTED ? JournalText.Mark.CUT : JournalText.Mark.FAILED;
            throw e;
        } finally {
            ended(number, end);
        }
    }

    private synchronized void begun(int number) throws CardException {
        try {
            write(channel, JournalText.line(JournalText.Mark.BEGUN, number));
            channel.force(false);
        } catch (IOException e) {
            throw CardException.refused(
                    "the batch's journal " + file + " could not be written (" + e.getMessage() + ")",
                    "Nothing was done to this card. Make room in bootmend's data folder.",
                    e);
        }
    }

    /** Synced with the next beginning: an end that is lost in a power cut is told as a card to look at, never as done. */
    private synchronized void ended(int number, JournalText.Mark mark) {
        try {
            write(channel, JournalText.line(mark, number));
            numbers.remove(cards.get(number));
        } catch (IOException e) {
            failure = e;
        }
    }

    private synchronized void end() {
        try {
            boolean all = numbers.isEmpty();
            if (!all) {
                channel.force(false);
            }
            channel.close();
            if (all) {
                DurableFile.delete(file);
            }
        } catch (IOException e) {
            failure = failure == null ? e : failure;
        }
    }

    private static void write(FileChannel channel, String text) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8));
        while (bytes.hasRemaining()) {
            channel.write(bytes);
        }
    }
}
