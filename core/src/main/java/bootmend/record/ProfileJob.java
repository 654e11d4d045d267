package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.card.CardSettings;
import bootmend.card.ConfigFiles;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.profile.Evidence;
import bootmend.profile.Profile;
import bootmend.profile.ProfileStore;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.RequestedBoard;
import bootmend.trial.Standing;
import bootmend.trial.Trial;
import bootmend.tuning.Board;
import bootmend.view.CautionView;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** Keeps profiles: saves one from a card, lists, shows, compares, deletes, exports and imports them. */
public final class ProfileJob {

    /** No source: a bound against hostile folders. */
    private static final int MOST_LISTED = 1000;

    private final Workplace workplace;

    public ProfileJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /**
     * A profile to be saved.
     *
     * @param board the board that the card's settings are for
     * @param trials ids of trials of these settings on such a board, as evidence
     * @param replace whether a profile of that name may be replaced
     */
    public record Save(
            String name,
            String board,
            String cooling,
            String supply,
            String notes,
            List<String> trials,
            boolean replace) {

        public Save {
            trials = List.copyOf(trials);
        }
    }

    /** Saves the tuning settings that a board runs with a card. */
    public ProfileView save(CardRequest request, Save save) throws CardException {
        Board board = board(save.board());
        Map<String, String> settings = settings(request, board);
        Map<String, String> inForce = inForce(request, board);
        if (settings.isEmpty()) {
            throw CardException.refused(
                    "the card tunes nothing on " + board.id() + ", so there is nothing to save",
                    "A card at stock needs no profile.",
                    NextStep.Plain.RESET_CARD);
        }
        List<Evidence> evidence = new ArrayList<>();
        for (String id : save.trials()) {
            evidence.add(evidence(id, board, List.of(settings, inForce)));
        }
        Profile profile =
                new Profile(save.name(), board.id(), settings, save.cooling(), save.supply(), evidence, save.notes());
        workplace.profiles().save(profile, save.replace());
        return ProfileView.of(profile);
    }

    public List<ProfileView> list() throws CardException {
        List<ProfileView> views = new ArrayList<>();
        for (String name : workplace.profiles().names()) {
            views.add(show(name));
        }
        return views;
    }

    /** Every profile that can be read, at most {@value #MOST_LISTED}, and what is wrong with other files. */
    public ProfileListing listing() throws CardException {
        List<ProfileView> profiles = new ArrayList<>();
        List<CardException> problems = new ArrayList<>();
        List<String> names = workplace.profiles().names();
        for (String name : names.subList(0, Math.min(MOST_LISTED, names.size()))) {
            try {
                profiles.add(show(name));
            } catch (CardException e) {
                problems.add(e);
            }
        }
        if (names.size() > MOST_LISTED) {
            problems.add(CardException.unreadable(
                    "there are " + names.size() + " profiles, of which the first " + MOST_LISTED + " are listed",
                    "Move those of boards that are gone to another folder."));
        }
        return new ProfileListing(profiles, problems, CautionView.ofTuning(workplace.tables()));
    }

    /**
     * The trials that a profile of a card's settings could name as evidence: of just these settings, on such a board.
     *
     * @return the newest first, at most {@value #MOST_LISTED}
     */
    public List<Trial> backing(CardRequest request, String boardId) throws CardException {
        Board board = board(boardId);
        List<Map<String, String>> forms = List.of(settings(request, board), inForce(request, board));
        List<Trial> trials = new ArrayList<>(workplace.trials().read().trials());
        Collections.reverse(trials);
        return trials.stream()
                .filter(trial -> isOf(trial, board, forms))
                .limit(MOST_LISTED)
                .toList();
    }

    public ProfileView show(String name) throws CardException {
        return ProfileView.of(workplace.profiles().load(name));
    }

    /** The keys in which two profiles differ. */
    public List<SettingDifference> compare(String left, String right) throws CardException {
        return differences(
                workplace.profiles().load(left).settings(),
                workplace.profiles().load(right).settings());
    }

    /** The keys in which a card differs from a profile, on the profile's board. */
    public List<SettingDifference> compare(String name, CardRequest card) throws CardException {
        Profile profile = workplace.profiles().load(name);
        return differences(profile.settings(), settings(card, board(profile.board())));
    }

    public void delete(String name) throws CardException {
        workplace.profiles().delete(name);
    }

    /** Copies a profile's file to {@code target}, which must not be there. */
    public void exportTo(String name, Path target) throws CardException {
        try {
            Files.copy(workplace.profiles().fileOf(name), target);
        } catch (IOException e) {
            throw CardException.refused(
                    target + " could not be written (" + e + ")",
                    "Name a file that is not there yet, in a folder you may write to.",
                    e);
        }
    }

    /** Takes a profile's file in, under the name it carries. */
    public ProfileView importFrom(Path file, boolean replace) throws CardException {
        Profile profile = ProfileStore.read(file);
        board(profile.board());
        for (String key : profile.settings().keySet()) {
            if (workplace.tables().vocabulary().findOnCard(key).isEmpty()) {
                throw CardException.unreadable(
                        key + " in " + file + " is no tuning key",
                        "Keys are written as in the config file, in lower case, such as arm_freq.");
            }
        }
        workplace.profiles().save(profile, replace);
        return ProfileView.of(profile);
    }

    private Board board(String id) throws CardException {
        return new RequestedBoard(workplace.tables())
                .facts(BoardRequest.of(id))
                .board()
                .orElseThrow();
    }

    /** Reads something from a card's config files. */
    @FunctionalInterface
    private interface Reading {
        Map<String, String> of(ConfigFiles files) throws CardException;
    }

    private Map<String, String> settings(CardRequest request, Board board) throws CardException {
        return read(request, files -> new CardSettings(workplace.tables()).of(files, board));
    }

    private Map<String, String> inForce(CardRequest request, Board board) throws CardException {
        return read(request, files -> new CardSettings(workplace.tables()).inForce(files, board));
    }

    private Map<String, String> read(CardRequest request, Reading reading) throws CardException {
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            return reading.of(ConfigFiles.read(card.volume()));
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    /** @param forms the settings as they are written, and as the board takes them; a trial has either */
    private Evidence evidence(String id, Board board, List<Map<String, String>> forms) throws CardException {
        Trial trial = workplace.trials().read().trials().stream()
                .filter(each -> each.id().equals(id))
                .findFirst()
                .orElseThrow(() -> CardException.usage("there is no trial " + id, "", NextStep.Plain.LIST_TRIALS));
        if (!isOf(trial, board, forms)) {
            throw CardException.refused(
                    "the trial " + id + " was of other settings or another board",
                    "Name a trial of what is on the card, or leave it out; the profile is then unproven.");
        }
        return new Evidence(
                id,
                trial.standing().is(Standing.Kind.HELD),
                (int) Math.floor(trial.run().minutes().orElse(0)),
                trial.run().fullLoad(),
                trial.run().mask().orElse(0) != 0);
    }

    private static boolean isOf(Trial trial, Board board, List<Map<String, String>> forms) {
        return trial.unit().board().equals(board.id()) && forms.stream().anyMatch(form -> isOf(trial, form));
    }

    private static boolean isOf(Trial trial, Map<String, String> settings) {
        return trial.settings().size() == settings.size()
                && trial.settings().entrySet().stream()
                        .allMatch(each -> Long.toString(each.getValue()).equals(settings.get(each.getKey())));
    }

    private static List<SettingDifference> differences(Map<String, String> left, Map<String, String> right) {
        TreeSet<String> keys = new TreeSet<>(left.keySet());
        keys.addAll(right.keySet());
        return keys.stream()
                .map(key -> new SettingDifference(
                        key, Optional.ofNullable(left.get(key)), Optional.ofNullable(right.get(key))))
                .filter(each -> !each.left().equals(each.right()))
                .toList();
    }
}
