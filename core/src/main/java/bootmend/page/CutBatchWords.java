package bootmend.page;

import bootmend.batch.CutBatch;
import bootmend.config.VisibleText;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** What is said of a batch that was cut, on every screen alike; safe to show. */
public final class CutBatchWords {

    /** As many cards are named of each kind; the journal has them all. */
    private static final int MOST_NAMED = 20;

    private CutBatchWords() {}

    /**
     * Whole sentences: what it was, then a line for each kind of card that it has.
     *
     * @param kept where its journal is kept
     */
    public static List<String> of(CutBatch batch, Path kept) {
        List<String> words = new ArrayList<>();
        words.add("A batch did not come to its end: \"" + VisibleText.of(batch.what()) + "\" on "
                + Amount.count(batch.size(), "card") + ", begun "
                + batch.began().truncatedTo(ChronoUnit.SECONDS)
                + (folder(batch).isEmpty() ? "." : ", in " + VisibleText.of(folder(batch)) + "."));
        add(words, "Cut in the middle, to be recovered before anything else", batch.cut(), batch);
        add(words, "Not begun", batch.notBegun(), batch);
        add(words, "Failed or refused", batch.failed(), batch);
        add(words, "Done", batch.done(), batch);
        words.add("All of them stand in " + VisibleText.of(kept.toString()) + ".");
        return words;
    }

    private static void add(List<String> words, String name, List<String> cards, CutBatch batch) {
        if (cards.isEmpty()) {
            return;
        }
        String folder = folder(batch);
        String rest = cards.size() > MOST_NAMED ? " and " + (cards.size() - MOST_NAMED) + " more" : "";
        words.add(name + " (" + cards.size() + "): "
                + cards.stream()
                        .limit(MOST_NAMED)
                        .map(card -> VisibleText.of(folder.isEmpty() ? card : card.substring(folder.length())))
                        .collect(Collectors.joining(", "))
                + rest + ".");
    }

    /** What the names of all its cards begin with, to a folder's end; empty where that says nothing. */
    private static String folder(CutBatch batch) {
        List<String> all = new ArrayList<>(batch.done());
        all.addAll(batch.failed());
        all.addAll(batch.cut());
        all.addAll(batch.notBegun());
        String folder = all.isEmpty() ? "" : parent(all.get(0));
        return folder.length() > 1 && all.stream().allMatch(card -> parent(card).equals(folder)) ? folder : "";
    }

    private static String parent(String card) {
        try {
            Path path = Path.of(card);
            return path.getParent() == null
                            || !card.startsWith(
                                    path.getParent() + path.getFileSystem().getSeparator())
                    ? ""
                    : path.getParent() + path.getFileSystem().getSeparator();
        } catch (InvalidPathException e) {
            return "";
        }
    }
}
