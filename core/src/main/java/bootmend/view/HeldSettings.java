package bootmend.view;

import bootmend.CardException;
import bootmend.boot.BootTables;
import bootmend.card.CardSettings;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigName;
import bootmend.config.IncludeSource;
import bootmend.fat.DirectoryEntry;
import bootmend.profile.Profile;
import bootmend.trial.Standing;
import bootmend.trial.Trial;
import bootmend.tuning.Board;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;

/** What this computer's trials and profiles say of settings, for the boards that a card can be for. */
final class HeldSettings {

    private final CardSettings settings;
    private final IncludeSource includes;
    /** By board, what is said of settings as numbers. */
    private final Map<Board, Map<Map<String, Long>, List<TriedSettings>>> trials = new LinkedHashMap<>();
    /** By board, what is said of settings as they are written. */
    private final Map<Board, Map<Map<String, String>, List<TriedSettings>>> profiles = new LinkedHashMap<>();

    private HeldSettings(CardSettings settings, IncludeSource includes) {
        this.settings = settings;
        this.includes = includes;
    }

    /** A trial or profile that cannot be read says nothing here. */
    static HeldSettings of(Workplace workplace, OpenCard card, BoardFacts facts) throws CardException, IOException {
        Optional<ConfigFiles> files = files(card);
        IncludeSource includes = files.map(ConfigFiles::includes).orElse(IncludeSource.none());
        HeldSettings held = new HeldSettings(new CardSettings(workplace.tables()), includes);
        Map<String, Board> boards = boards(workplace, card, facts, files);
        for (Trial trial : workplace.trials().read().trials()) {
            held.add(trial, boards.get(trial.unit().board()));
        }
        for (String name : workplace.profiles().names()) {
            load(workplace, name).ifPresent(profile -> held.add(profile, boards.get(profile.board())));
        }
        return held;
    }

    private static Optional<Profile> load(Workplace workplace, String name) {
        try {
            return Optional.of(workplace.profiles().load(name));
        } catch (CardException e) {
            return Optional.empty();
        }
    }

    private static Optional<ConfigFiles> files(OpenCard card) throws IOException {
        try {
            return Optional.of(ConfigFiles.read(card.volume()));
        } catch (CardException e) {
            return Optional.empty();
        }
    }

    private static Map<String, Board> boards(
            Workplace workplace, OpenCard card, BoardFacts facts, Optional<ConfigFiles> files)
            throws CardException, IOException {
        List<String> names = files.isPresent()
                ? CardBoards.names(card, files.get())
                : card.volume().root().entries().stream()
                        .map(DirectoryEntry::name)
                        .toList();
        Set<String> meant = facts.board()
                .map(board -> Set.of(board.id()))
                .orElseGet(() -> new BootTables(workplace.tables()).meantFor(names));
        return workplace.tables().boards().all().stream()
                .filter(board -> meant.isEmpty() || meant.contains(board.id()))
                .collect(Collectors.toMap(Board::id, board -> board));
    }

    private void add(Trial trial, Board board) {
        if (board != null && outcome(trial).isPresent()) {
            trials.computeIfAbsent(board, none -> new HashMap<>())
                    .computeIfAbsent(trial.settings(), none -> new ArrayList<>())
                    .add(new TriedSettings(
                            TriedSettings.Source.TRIAL,
                            trial.id(),
                            board.id(),
                            trial.unit().label(),
                            outcome(trial).get()));
        }
    }

    private static Optional<TriedSettings.Outcome> outcome(Trial trial) {
        Standing.Kind kind = trial.standing().kind();
        return switch (kind) {
            case HELD ->
                Optional.of(trial.isKnownGood() ? TriedSettings.Outcome.KNOWN_GOOD : TriedSettings.Outcome.HELD);
            case FAILED -> Optional.of(TriedSettings.Outcome.FAILED);
            case THROTTLED -> Optional.of(TriedSettings.Outcome.THROTTLED);
            case UNDECIDED -> Optional.empty();
        };
    }

    private void add(Profile profile, Board board) {
        if (board != null) {
            profiles.computeIfAbsent(board, none -> new HashMap<>())
                    .computeIfAbsent(profile.settings(), none -> new ArrayList<>())
                    .add(new TriedSettings(
                            TriedSettings.Source.PROFILE,
                            profile.name(),
                            board.id(),
                            "",
                            profile.isKnownGood() ? TriedSettings.Outcome.KNOWN_GOOD : TriedSettings.Outcome.UNPROVEN));
        }
    }

    /** Names of the known-good profiles for these boards, in order. */
    List<String> knownGoodProfiles() {
        return profiles.values().stream()
                .flatMap(kept -> kept.values().stream().flatMap(List::stream))
                .filter(TriedSettings::isGood)
                .map(TriedSettings::name)
                .sorted()
                .toList();
    }

    /** What is said of the settings that a config file comes to; a file that tunes nothing needs no trial. */
    List<TriedSettings> of(ConfigDocument document) {
        List<TriedSettings> said = new ArrayList<>();
        trials.forEach((board, tried) -> {
            Map<String, Long> inForce = numbers(settings.inForce(ConfigName.NAME, document, includes, board));
            Map<String, Long> written = numbers(written(document, board));
            if (!inForce.isEmpty()) {
                said.addAll(tried.getOrDefault(inForce, List.of()));
                if (!written.equals(inForce)) {
                    said.addAll(tried.getOrDefault(written, List.of()));
                }
            }
        });
        profiles.forEach((board, kept) -> {
            Map<String, String> written = written(document, board);
            if (!written.isEmpty()) {
                said.addAll(kept.getOrDefault(written, List.of()));
            }
        });
        return said;
    }

    /** Nothing where it hangs on what a card does not tell. */
    private Map<String, String> written(ConfigDocument document, Board board) {
        try {
            return settings.of(ConfigName.NAME, document, includes, board);
        } catch (CardException e) {
            return Map.of();
        }
    }

    private static Map<String, Long> numbers(Map<String, String> texts) {
        Map<String, Long> numbers = new LinkedHashMap<>();
        texts.forEach((key, text) -> {
            OptionalLong number = TuningNumber.parse(text);
            if (number.isPresent()) {
                numbers.put(key, number.getAsLong());
            }
        });
        return numbers;
    }
}
