package bootmend.gui.model;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.record.ProfileJob;
import bootmend.request.CardRequest;
import bootmend.trial.Trial;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** A form to save the settings of the card that is looked at as a profile. */
public final class ProfileSaving {

    private final Services services;
    private final Optional<CardModel> card;
    private final Consumer<String> saved;
    private final Watched<Reading<List<Trial>>> backing = new Watched<>(new Reading.Unasked<>());
    private final Watched<Optional<CardException>> problem = new Watched<>(Optional.empty());
    private WorkQueue.Ticket looking = () -> {};

    /** @param saved is told the profile's name when it is there */
    ProfileSaving(Services services, Optional<CardModel> card, Consumer<String> saved) {
        this.services = services;
        this.card = card;
        this.saved = saved;
    }

    /** The card whose settings are saved. */
    public Optional<CardRequest> card() {
        return card.map(CardModel::card);
    }

    /** Ids of every known board. */
    public List<String> boards() {
        return services.workplace().boards();
    }

    /** The board that the window is about, or the only one that the card can be meant for. */
    public Optional<String> likelyBoard() {
        return card.flatMap(model ->
                model.board().get().isPresent() || model.bootable().get().size() != 1
                        ? model.board().get()
                        : Optional.of(model.bootable().get().get(0)));
    }

    /** The trials on that board of just what is on the card; each can back the profile. */
    public Watched<Reading<List<Trial>>> backing() {
        return backing;
    }

    /** What kept the profile from being saved. */
    public Watched<Optional<CardException>> problem() {
        return problem;
    }

    /** Whether saving it is only possible in the place of another profile. */
    public boolean isNameTaken() {
        return problem.get()
                .filter(error -> error.isRefusedFor(NextStep.Allow.REPLACE))
                .isPresent();
    }

    /** Looks for trials that can back a profile for a board. */
    public void lookForTrials(String board) {
        looking.drop();
        if (card.isEmpty() || board.isBlank()) {
            backing.set(new Reading.Unasked<>());
            return;
        }
        backing.set(new Reading.Waiting<>());
        CardRequest request = card.get().card();
        looking = services.queue()
                .submitFirst(
                        services.words().of("busy.backing"),
                        () -> new ProfileJob(services.workplace()).backing(request, board),
                        trials -> backing.set(new Reading.Ready<>(trials)),
                        error -> backing.set(new Reading.Failed<>(error)));
    }

    public void save(ProfileJob.Save save) {
        if (card.isEmpty()) {
            return;
        }
        problem.set(Optional.empty());
        CardRequest request = card.get().card();
        services.queue()
                .submitFirst(
                        services.words().of("busy.profiles"),
                        () -> new ProfileJob(services.workplace())
                                .save(request, save)
                                .name(),
                        saved,
                        error -> problem.set(Optional.of(error)));
    }
}
