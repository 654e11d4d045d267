package bootmend.check;

import bootmend.fat.FileSample;
import bootmend.tuning.resolve.StockLines;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Everything a check knows of a card; made by {@link CardContents}.
 *
 * @param read what was read
 * @param boards what the config file comes to on each board that the card is for; where no board can boot from the
 *     card, on every known board
 * @param bootable whether the board was given, or some can boot from the card
 * @param needs the files that each board starts from, by board id; empty where {@code bootable} is false
 * @param samples a look into the files that {@link #wantedSamples} names, by path
 * @param texts the first bytes of the files that {@link #wantedTexts} names, by path
 * @param stockLines which tuning lines hold the stock value on those boards
 */
public record CardContent(
        CardRead read,
        List<BoardReading> boards,
        boolean bootable,
        Map<String, BoardNeeds> needs,
        Map<String, FileSample> samples,
        Map<String, FileText> texts,
        StockLines stockLines) {

    /** How many files are looked into at most. No source: a bound against hostile cards. */
    private static final int MOST_SAMPLES = 512;

    private static final Map<String, BootFile.Kind> START_SOME_BOARD = Map.of(
            "start*.elf",
            BootFile.Kind.FIRMWARE,
            "kernel*.img",
            BootFile.Kind.KERNEL,
            "bcm27*.dtb",
            BootFile.Kind.DEVICE_TREE,
            "cmdline.txt",
            BootFile.Kind.COMMAND_LINE);

    public CardContent {
        boards = List.copyOf(boards);
        needs = Map.copyOf(needs);
        samples = Map.copyOf(samples);
        texts = Map.copyOf(texts);
    }

    CardFiles files() {
        return read.files();
    }

    /** Ids of the boards that the card is for, in their usual order; empty where no board can boot from it. */
    public List<String> boardIds() {
        return bootable ? boards.stream().map(BoardReading::id).toList() : List.of();
    }

    /** The paths of the files that should be looked into, each once. */
    public Set<String> wantedSamples() {
        return bootFiles().keySet().stream()
                .map(CardFiles.Entry::path)
                .limit(MOST_SAMPLES)
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** The same with a look into files. */
    public CardContent withSamples(Map<String, FileSample> looks) {
        return new CardContent(read, boards, bootable, needs, looks, texts, stockLines);
    }

    /** The paths of the small files whose text is asked for, each once. */
    public Set<String> wantedTexts() {
        return LeftFiles.load().wanted(files());
    }

    /** The same with the texts of files. */
    public CardContent withTexts(Map<String, FileText> read) {
        return new CardContent(this.read, boards, bootable, needs, samples, read, stockLines);
    }

    /** The boot files that are there, with what each is needed for; where no board boots, whatever looks like one. */
    Map<CardFiles.Entry, List<Use>> bootFiles() {
        Map<CardFiles.Entry, List<Use>> found = new LinkedHashMap<>();
        needs.forEach((board, wanted) -> wanted.files()
                .forEach(file -> file.on(files())
                        .forEach(entry -> found.computeIfAbsent(entry, none -> new ArrayList<>())
                                .add(new Use(file, Set.of(board))))));
        if (!bootable) {
            START_SOME_BOARD.forEach((pattern, kind) -> files().matching(pattern)
                    .forEach(entry ->
                            found.put(entry, List.of(new Use(BootFile.usual(kind, List.of(pattern)), Set.of())))));
        }
        return found;
    }

    /** What a file on the card is needed for, and by which boards; none where that is not known. */
    record Use(BootFile file, Set<String> boards) {}
}
