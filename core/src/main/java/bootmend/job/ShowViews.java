package bootmend.job;

import bootmend.CardException;
import bootmend.fat.DirectoryEntry;
import bootmend.partition.AutobootFile;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.BootableBoards;
import bootmend.tuning.resolve.CautionCauses;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import java.io.IOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Makes views of open cards that also tell what the card comes to on boards. */
final class ShowViews {

    private static final String TRYBOOT = "tryboot.txt";

    private final TuningTables tables;
    private final CardViews cards;

    ShowViews(Workplace workplace) {
        this.tables = workplace.tables();
        this.cards = new CardViews(workplace);
    }

    /** A config file that cannot be read is part of the view, not a failure. */
    ShowView of(OpenCard card, BoardFacts facts) throws IOException {
        Optional<String> asked = facts.board().map(Board::id);
        ConfigFiles files;
        try {
            files = ConfigFiles.read(card.volume(), startFile(card, facts));
        } catch (CardException e) {
            return new ShowView(cards.withoutConfig(card, e), asked, List.of(), true, List.of());
        }
        CardView view = cards.of(card, files);
        Resolver resolver = new Resolver(tables);
        List<Resolution> all = facts.board().map(List::of).orElseGet(() -> tables.boards().all()).stream()
                .map(board -> resolver.resolve(files.main().path(), files.main().document(), files.includes(),
                        facts.withBoard(board))).toList();
        if (asked.isPresent()) {
            return answer(onBoard(view, all.get(0), files), asked, all, true, files);
        }
        Set<String> names = names(card);
        BootableBoards bootable = new BootableBoards(tables.boardFiles());
        List<Resolution> booted = all.stream().filter(each -> bootable.missing(names, each).isEmpty()).toList();
        return answer(view, asked, booted.isEmpty() ? all : booted, !booted.isEmpty(), files);
    }

    private ShowView answer(CardView view, Optional<String> asked, List<Resolution> resolutions, boolean anyBootable,
            ConfigFiles files) {
        BoardViews views = new BoardViews(tables, files::pathOf);
        CautionCauses causes = new CautionCauses(tables);
        Set<String> found = new HashSet<>();
        resolutions.forEach(resolution -> found.addAll(causes.of(resolution)));
        return new ShowView(view, asked, resolutions.stream().map(views::of).toList(), anyBootable,
                CautionView.of(tables.cautions().calledForBy(found)));
    }

    private CardView onBoard(CardView view, Resolution resolution, ConfigFiles files) {
        LineEffects effects = new LineEffects(resolution, files::pathOf);
        StockWords words = new StockWords(tables);
        Map<String, Optional<String>> stock = new HashMap<>();
        return view.withTuning(view.tuning().stream().map(line -> line.on(
                stock.computeIfAbsent(line.key().strip().toLowerCase(Locale.ROOT), key -> words.on(resolution, key)),
                effects.of(line))).toList());
    }

    /**
     * The file that the board reads first.
     *
     * <p>Source: "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86: started with its try-once flag, the board
     * reads {@code tryboot.txt} in place of {@code config.txt}, or another partition's {@code config.txt} where
     * {@code tryboot_a_b=1} says so.
     */
    private static String startFile(OpenCard card, BoardFacts facts) throws IOException {
        return facts.tryboot().orElse(false) && file(card, TRYBOOT).isPresent() && !switchesPartition(card)
                ? TRYBOOT : ConfigFiles.NAME;
    }

    private static boolean switchesPartition(OpenCard card) throws IOException {
        Optional<DirectoryEntry> autoboot = file(card, AutobootFile.NAME);
        return autoboot.isPresent() && AutobootFile.parse(
                card.volume().read(autoboot.get(), AutobootFile.MAX_BYTES).bytes()).switchesPartition();
    }

    private static Optional<DirectoryEntry> file(OpenCard card, String name) throws IOException {
        return card.volume().root().find(name).filter(entry -> !entry.folder());
    }

    private static Set<String> names(OpenCard card) throws IOException {
        return card.volume().root().entries().stream().filter(entry -> !entry.folder()).map(DirectoryEntry::name)
                .map(name -> name.toLowerCase(Locale.ROOT)).collect(Collectors.toSet());
    }
}
