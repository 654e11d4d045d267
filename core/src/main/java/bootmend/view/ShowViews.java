package bootmend.view;

import bootmend.CardException;
import bootmend.boot.BootCard;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootTables;
import bootmend.boot.Depth;
import bootmend.boot.FilesCard;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.fat.DirectoryEntry;
import bootmend.partition.AutobootFile;
import bootmend.tuning.Board;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.CautionCauses;
import bootmend.tuning.resolve.Resolution;
import bootmend.tuning.resolve.Resolver;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Makes views of open cards that also tell what the card comes to on boards. */
final class ShowViews {

    private static final String TRYBOOT = "tryboot.txt";

    private final TuningTables tables;
    private final BootTables boots;
    private final CardViews cards;

    ShowViews(Workplace workplace) {
        this.tables = workplace.tables();
        this.boots = new BootTables(tables);
        this.cards = new CardViews(workplace);
    }

    /** A config file that cannot be read is part of the view, not a failure. */
    ShowView of(OpenCard card, BoardFacts facts) throws CardException, IOException {
        Optional<String> asked = facts.board().map(Board::id);
        ConfigFiles files;
        try {
            files = ConfigFiles.read(card.volume(), startFile(card, facts));
        } catch (CardException e) {
            // A file that is there and no config file is left to a full look.
            Optional<BootDiagnosis> boot = file(card, startFile(card, facts)).isPresent()
                    ? Optional.empty()
                    : Optional.of(boot(new FilesCard(card.volume()), facts));
            return new ShowView(
                    cards.withoutConfig(card, e), asked, List.of(), true, List.of(), List.of(), boot, List.of());
        }
        CardView view = cards.of(card, files);
        BootCard names = new FilesCard(new AlreadyRead(card.volume(), files));
        BootDiagnosis boot = boot(names, facts);
        Resolver resolver = new Resolver(tables);
        Function<Board, Resolution> resolve = board -> resolver.resolve(
                files.main().path(), files.main().document(), files.includes(), facts.withBoard(board));
        if (facts.board().isPresent()) {
            Resolution resolution = resolve.apply(facts.board().get());
            return answer(onBoard(view, resolution, files), asked, List.of(answer(resolution, files, true)), true)
                    .withBoot(boot, BootDiagnosis.builds(names, facts, boots));
        }
        Set<String> meant = boots.meantFor(CardBoards.names(card, files));
        // Each resolution is let go before the next: a hostile config file may make every one of them large.
        List<Answer> all = tables.boards().all().stream()
                .map(resolve)
                .map(resolution -> answer(
                        resolution,
                        files,
                        meant.contains(resolution.facts().board().orElseThrow().id())))
                .toList();
        List<Answer> booted = all.stream().filter(Answer::bootable).toList();
        return answer(view, asked, booted.isEmpty() ? all : booted, !booted.isEmpty())
                .withBoot(boot, List.of());
    }

    /** What was read already tells it: names, sizes and settings. */
    private BootDiagnosis boot(BootCard names, BoardFacts facts) throws IOException {
        return BootDiagnosis.of(names, facts, boots, Depth.LISTING);
    }

    /** What is kept of a resolution. */
    private record Answer(BoardView view, Set<String> causes, boolean bootable) {}

    private Answer answer(Resolution resolution, ConfigFiles files, boolean bootable) {
        return new Answer(
                new BoardViews(tables, files::pathOf).of(resolution),
                new CautionCauses(tables).of(resolution),
                bootable);
    }

    private ShowView answer(CardView view, Optional<String> asked, List<Answer> answers, boolean anyBootable) {
        Set<String> keys = answers.stream()
                .flatMap(each -> each.view().effective().stream())
                .map(EffectiveView::key)
                .collect(Collectors.toSet());
        Set<String> causes =
                answers.stream().flatMap(each -> each.causes().stream()).collect(Collectors.toSet());
        return new ShowView(
                view,
                asked,
                answers.stream().map(Answer::view).toList(),
                anyBootable,
                tables.vocabulary().keys().stream()
                        .map(TuningKey::key)
                        .filter(keys::contains)
                        .toList(),
                CautionView.of(tables.cautions().calledForBy(causes)),
                Optional.empty(),
                List.of());
    }

    private CardView onBoard(CardView view, Resolution resolution, ConfigFiles files) {
        LineEffects effects = new LineEffects(resolution, files::pathOf);
        StockWords words = new StockWords(tables);
        Map<String, Optional<String>> stock = new HashMap<>();
        return view.withTuning(view.tuning().stream()
                .map(line -> line.on(
                        stock.computeIfAbsent(
                                line.key().strip().toLowerCase(Locale.ROOT), key -> words.on(resolution, key)),
                        effects.of(line)))
                .toList());
    }

    /**
     * The file that the board reads first.
     *
     * <p>Source: "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86: started with its try-once flag, the board
     * reads {@code tryboot.txt} in place of {@code config.txt}, or another partition's {@code config.txt} where
     * {@code tryboot_a_b=1} says so.
     */
    static String startFile(OpenCard card, BoardFacts facts) throws IOException {
        return facts.tryboot().orElse(false) && file(card, TRYBOOT).isPresent() && !switchesPartition(card)
                ? TRYBOOT
                : ConfigFiles.NAME;
    }

    private static boolean switchesPartition(OpenCard card) throws IOException {
        Optional<DirectoryEntry> autoboot = file(card, AutobootFile.NAME);
        return autoboot.isPresent()
                && AutobootFile.parse(card.volume()
                                .read(autoboot.get(), AutobootFile.MAX_BYTES)
                                .bytes())
                        .switchesPartition();
    }

    private static Optional<DirectoryEntry> file(OpenCard card, String name) throws IOException {
        return card.volume().root().find(name).filter(entry -> !entry.folder());
    }
}
