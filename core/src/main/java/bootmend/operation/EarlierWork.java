package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.CardEarlier;
import bootmend.card.CardSettings;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.change.FileChange;
import bootmend.change.FilePlanner;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.config.IncludeSource;
import bootmend.earlier.EarlierTuning;
import bootmend.earlier.EarlierVersion;
import bootmend.earlier.PresentFile;
import bootmend.earlier.SearchProgress;
import bootmend.profile.ProfileEdit;
import bootmend.request.BoardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.Resolver;
import bootmend.view.CardViews;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.codec.digest.DigestUtils;

/** Puts an earlier version of the config file back: its tuning lines, or all of it. */
record EarlierWork(Work work, ChangeRequest.ToEarlier request) implements WorkOut {

    /** More digits than any number of a version has; what is longer is the beginning of a hash. */
    private static final int MOST_DIGITS = 6;

    private static final int FEWEST_OF_HASH = 6;
    private static final int SHOWN_OF_HASH = 12;

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        BoardFacts facts = new RequestedBoard(tables())
                .facts(request.board().map(BoardRequest::of).orElseGet(BoardRequest::none));
        EarlierVersion version = isHash() ? byHash(card) : byNumber(card);
        return request.whole() ? whole(card, facts, version) : tuning(card, facts, version);
    }

    private String which() {
        return request.which().strip().toLowerCase(Locale.ROOT);
    }

    private boolean isHash() {
        return which().matches("[0-9a-f]{64}");
    }

    /** A whole hash names one text, wherever it is found first. */
    private EarlierVersion byHash(OpenCard card) throws CardException, IOException {
        Optional<EarlierVersion> near = new CardEarlier(work.workplace())
                .of(card, SearchProgress.AT_ONCE).newestFirst().stream()
                        .filter(version -> DigestUtils.sha256Hex(version.text()).equals(which()))
                        .findFirst();
        return near.isPresent() ? near.get() : byNumber(card);
    }

    private EarlierVersion byNumber(OpenCard card) throws CardException, IOException {
        return named(new CardEarlier(work.workplace())
                .of(card, SearchProgress.TO_THE_END)
                .newestFirst());
    }

    private EarlierVersion named(List<EarlierVersion> versions) throws CardException {
        String which = which();
        if (which.matches("[0-9]{1," + MOST_DIGITS + "}")) {
            int number = Integer.parseInt(which);
            if (number >= 1 && number <= versions.size()) {
                return versions.get(number - 1);
            }
        }
        List<EarlierVersion> fitting = which.matches("[0-9a-f]{" + FEWEST_OF_HASH + ",64}")
                ? versions.stream()
                        .filter(version -> DigestUtils.sha256Hex(version.text()).startsWith(which))
                        .toList()
                : List.of();
        if (fitting.size() == 1) {
            return fitting.get(0);
        }
        String what = fitting.size() > 1
                ? "several earlier versions have a hash that begins so"
                : "no earlier version of " + ConfigName.NAME + " is found under that name";
        throw CardException.usage(
                what,
                versions.isEmpty()
                        ? "None was found on this card."
                        : "Those that are found have the numbers 1 to " + versions.size()
                                + ", the newest first; a hash is named by its first six characters or more.",
                NextStep.Plain.LIST_EARLIER);
    }

    private static String title(EarlierVersion version, String what) {
        return what + " of an earlier version ("
                + DigestUtils.sha256Hex(version.text()).substring(0, SHOWN_OF_HASH) + ")";
    }

    private Worked whole(OpenCard card, BoardFacts facts, EarlierVersion version) throws CardException, IOException {
        if (!version.whole()) {
            throw CardException.refused(
                    "only a part of that version is left, so it cannot take the place of the file",
                    "Its tuning lines alone can be put back.",
                    NextStep.Plain.LIST_EARLIER);
        }
        Optional<PresentFile> now = new CardEarlier(work.workplace()).present(card);
        List<String> questions = new NewBlockers(work, facts.board())
                .refuse(card, Map.of(ConfigName.NAME, ConfigDocument.parse(version.text())), "put there");
        FilePlanner planner = work.planner(card);
        planner.put(new FileChange(ConfigName.NAME, now.map(PresentFile::bytes).orElse(null), version.text()));
        return Worked.of(new CardViews(work.workplace()).of(card), planner.plan(title(version, "the file")))
                .asking(questions)
                .noting(notes(version));
    }

    private Worked tuning(OpenCard card, BoardFacts facts, EarlierVersion version) throws CardException, IOException {
        ConfigFiles files = ConfigFiles.read(card.volume());
        ConfigDocument then = ConfigDocument.parse(version.text());
        Map<String, ConfigDocument> edited =
                facts.board().isPresent() ? forBoard(files, then, facts.board().get()) : forAll(files, then);
        List<String> questions = new ArrayList<>(questions(version));
        questions.addAll(new NewBlockers(work, facts.board()).refuse(card, edited, "put there"));
        FilePlanner planner = work.planner(card);
        for (ConfigFile file : files.all()) {
            file.refuseWhenNotWhole();
            planner.replace(
                    file.path(),
                    file.entry(),
                    file.bytes(),
                    edited.getOrDefault(file.path(), file.document()).toBytes());
        }
        return Worked.of(
                        new CardViews(work.workplace()).of(card, files),
                        planner.plan(title(version, "the tuning lines")))
                .asking(questions)
                .noting(notes(version));
    }

    private Map<String, ConfigDocument> forBoard(ConfigFiles files, ConfigDocument then, Board board)
            throws CardException {
        Map<String, String> settings =
                new CardSettings(tables()).of(files.main().path(), then, files.includes(), board);
        return new ProfileEdit(tables(), board, files::pathOf)
                .apply(files.main().path(), files.main().document(), files.includes(), settings);
    }

    private Map<String, ConfigDocument> forAll(ConfigFiles files, ConfigDocument then) throws CardException {
        ConfigDocument after;
        try {
            after = new EarlierTuning(tables().vocabulary()).apply(files.main().document(), then);
        } catch (IllegalArgumentException e) {
            throw notAlone(e.getMessage());
        }
        for (Board board : tables().boards().all()) {
            Map<String, String> wanted = settings(then, files, board);
            Map<String, String> comes = settings(after, files, board);
            if (!wanted.equals(comes)) {
                Map<String, String> different = new LinkedHashMap<>(wanted);
                comes.forEach((key, value) -> different.merge(key, value, (a, b) -> a.equals(b) ? null : a));
                throw notAlone("On " + board.id() + ", " + String.join(", ", different.keySet())
                        + " would not come to what it was.");
            }
        }
        return Map.of(files.main().path(), after);
    }

    private static CardException notAlone(String why) {
        return CardException.refused(
                "the tuning lines of that version cannot be put back on their own",
                why + " Put the whole file back, or name the board that the card is for.",
                NextStep.Plain.LIST_EARLIER);
    }

    /** What each tuning key comes to on a board, with what it hangs on. */
    private Map<String, String> settings(ConfigDocument document, ConfigFiles files, Board board) {
        Map<String, String> settings = new LinkedHashMap<>();
        IncludeSource includes = files.includes();
        for (Effective each : new Resolver(tables())
                .resolve(files.main().path(), document, includes, BoardFacts.of(board))
                .effective()) {
            boolean counts = tables().vocabulary()
                    .findOnCard(each.chosen().setBy())
                    .filter(EarlierTuning::isPutBack)
                    .isPresent();
            if (counts) {
                settings.put(
                        each.key(),
                        each.state().word() + " " + each.chosen().written() + " " + String.join(",", each.dependsOn()));
            }
        }
        return settings;
    }

    private static List<String> questions(EarlierVersion version) {
        return version.whole()
                ? List.of()
                : List.of("Only a part of that version is left. Tuning lines that it had outside that part are not "
                        + "known: those that stand in the file now are commented out.");
    }

    private static List<String> notes(EarlierVersion version) {
        List<String> notes = new ArrayList<>();
        if (!version.order().certain()) {
            notes.add("That this version was there before is likely, not certain: where it stands says so.");
        }
        return notes;
    }

    private TuningTables tables() {
        return work.workplace().tables();
    }
}
