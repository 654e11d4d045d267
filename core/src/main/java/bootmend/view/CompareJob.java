package bootmend.view;

import bootmend.CardException;
import bootmend.boot.BootTables;
import bootmend.card.ConfigFile;
import bootmend.card.ConfigFiles;
import bootmend.card.JobErrors;
import bootmend.card.LoneConfig;
import bootmend.card.OpenCard;
import bootmend.profile.Profile;
import bootmend.request.BoardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.Board;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Holds two cards, profiles or config files against each other, and writes nothing. */
public final class CompareJob {

    private final Workplace workplace;

    public CompareJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** What is done with a side while its card is open. */
    @FunctionalInterface
    private interface Use<T> {
        T of(ComparedConfig side) throws CardException, IOException;
    }

    /**
     * What differs.
     *
     * @param board the board to compare for; empty for every board that both can be meant for
     * @throws CardException where one of them cannot be read; its message begins with the name
     */
    public CompareView run(CompareSource left, CompareSource right, Optional<String> board) throws CardException {
        Optional<Board> asked = board.isPresent()
                ? new RequestedBoard(workplace.tables())
                        .facts(BoardRequest.of(board.get()))
                        .board()
                : Optional.empty();
        try {
            return with(left, a -> with(right, b -> compare(a, b, asked)));
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private CompareView compare(ComparedConfig left, ComparedConfig right, Optional<Board> asked) throws IOException {
        ConfigComparison comparison = new ConfigComparison(workplace.tables(), left, right);
        List<CompareView.OfFile> files = List.of();
        if (left.listing().isPresent() && right.listing().isPresent()) {
            Set<String> config = Stream.of(left, right)
                    .flatMap(side -> side.files().all().stream())
                    .map(ConfigFile::path)
                    .collect(Collectors.toSet());
            files = left.listing().get().differences(right.listing().get(), config);
        }
        List<String> notes = new ArrayList<>(left.warnings());
        notes.addAll(right.warnings());
        return new CompareView(
                left.name(),
                right.name(),
                comparison.isSameToTheByte(),
                comparison.on(asked.map(List::of).orElseGet(() -> boards(left, right))),
                files,
                notes);
    }

    /** Those that both can be meant for; where there are none, those of either; where nothing tells, all. */
    private List<Board> boards(ComparedConfig left, ComparedConfig right) {
        Set<String> both = new HashSet<>(left.boards().isEmpty() ? right.boards() : left.boards());
        if (!left.boards().isEmpty() && !right.boards().isEmpty()) {
            both.retainAll(right.boards());
        }
        Set<String> wanted = both;
        if (both.isEmpty()) {
            wanted = Stream.of(left, right)
                    .flatMap(side -> side.boards().stream())
                    .collect(Collectors.toSet());
        }
        Set<String> chosen = wanted;
        return workplace.tables().boards().all().stream()
                .filter(board -> chosen.isEmpty() || chosen.contains(board.id()))
                .toList();
    }

    private <T> T with(CompareSource source, Use<T> use) throws CardException, IOException {
        if (source instanceof CompareSource.OfProfile profile) {
            return use.of(profile(profile.name()));
        }
        CompareSource.OfCard card = (CompareSource.OfCard) source;
        try (OpenCard open = open(card)) {
            return use.of(side(open));
        }
    }

    private OpenCard open(CompareSource.OfCard card) throws CardException {
        try {
            return OpenCard.open(workplace.opener(), card.request(), false);
        } catch (CardException e) {
            throw e.about(card.request().card().toString());
        }
    }

    private ComparedConfig side(OpenCard card) throws CardException, IOException {
        try {
            return card(card);
        } catch (CardException e) {
            throw e.about(card.named());
        }
    }

    private ComparedConfig card(OpenCard card) throws CardException, IOException {
        ConfigFiles files = ConfigFiles.read(card.volume());
        return new ComparedConfig(
                card.named(),
                files,
                new BootTables(workplace.tables()).meantFor(CardBoards.names(card, files)),
                false,
                card.hasBootPartition() ? Optional.of(CompareFiles.of(card.volume())) : Optional.empty());
    }

    private ComparedConfig profile(String name) throws CardException, IOException {
        Profile profile = workplace.profiles().load(name);
        String lines = profile.settings().entrySet().stream()
                .map(each -> each.getKey() + "=" + each.getValue() + "\n")
                .collect(Collectors.joining());
        return new ComparedConfig(
                name,
                LoneConfig.files(lines.getBytes(StandardCharsets.UTF_8)),
                Set.of(profile.board()),
                true,
                Optional.empty());
    }
}
