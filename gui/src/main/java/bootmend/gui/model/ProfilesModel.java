package bootmend.gui.model;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.record.ProfileJob;
import bootmend.record.ProfileListing;
import bootmend.record.ProfileView;
import bootmend.record.SettingDifference;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;

/** The profiles on this computer: which one is looked at, and what is done with it. */
public final class ProfilesModel {

    private static final String PROFILE = "profile";

    private final DeskModel desk;
    private final Services services;
    private final Watched<Reading<ProfileListing>> profiles = new Watched<>(new Reading.Unasked<>());
    private final Watched<Optional<String>> chosen = new Watched<>(Optional.empty());
    private final Watched<Reading<List<SettingDifference>>> comparison = new Watched<>(new Reading.Unasked<>());
    private final Watched<Putting> putting = new Watched<>(new Putting("", false, false));
    private final Watched<Done> done = new Watched<>(Done.NOTHING);
    private Optional<CardModel> card = Optional.empty();
    private Optional<String> put = Optional.empty();
    private boolean metBlockers;

    /**
     * Whether the chosen profile can be put on the card that is looked at.
     *
     * @param whyNot a sentence; empty where it can
     * @param forAnotherBoard whether the window is about another board than the profile's
     * @param metBlockers whether it was refused for what a check found in it
     */
    public record Putting(String whyNot, boolean forAnotherBoard, boolean metBlockers) {}

    /**
     * What came of the last thing that was done with profiles.
     *
     * @param words a sentence, where it was done
     * @param error where it was not
     * @param replaceable the file that would have to take the place of a profile that is there
     */
    public record Done(Optional<String> words, Optional<CardException> error, Optional<Path> replaceable) {

        static final Done NOTHING = new Done(Optional.empty(), Optional.empty(), Optional.empty());
    }

    public ProfilesModel(DeskModel desk) {
        this.desk = desk;
        this.services = desk.services();
        List<Function<CardModel, Watched<?>>> parts = List.of(
                CardModel::board,
                CardModel::sheet,
                CardModel::gone,
                model -> model.change().state());
        new Following(desk, parts, this::cardChanged);
        profiles.watch(listing -> refresh());
        chosen.watch(name -> refresh());
    }

    /** Every profile, and what keeps others from being read. */
    public Watched<Reading<ProfileListing>> profiles() {
        return profiles;
    }

    /** The name of the one that is looked at. */
    public Watched<Optional<String>> chosen() {
        return chosen;
    }

    /** In which keys the chosen profile and the card differ. */
    public Watched<Reading<List<SettingDifference>>> comparison() {
        return comparison;
    }

    public Watched<Putting> putting() {
        return putting;
    }

    public Watched<Done> done() {
        return done;
    }

    /** The card that is looked at, where one is and was read. */
    public Optional<CardModel> readCard() {
        return desk.current().get().filter(model -> model.sheet().get().value().isPresent());
    }

    public Services services() {
        return services;
    }

    /** The one that is looked at. */
    public Optional<ProfileView> profile() {
        return profiles.get()
                .value()
                .flatMap(listing -> listing.profiles().stream()
                        .filter(each -> chosen.get().filter(each.name()::equals).isPresent())
                        .findFirst());
    }

    /** A form to save the card's settings as a profile. */
    public ProfileSaving saving() {
        done.set(Done.NOTHING);
        return new ProfileSaving(services, readCard(), this::saved);
    }

    /** Reads them all anew. */
    public void read() {
        if (!(profiles.get() instanceof Reading.Ready)) {
            profiles.set(new Reading.Waiting<>());
        }
        services.queue()
                .submit(
                        services.words().of("busy.profiles"),
                        () -> job().listing(),
                        listing -> {
                            profiles.set(new Reading.Ready<>(listing));
                            if (profile().isEmpty()) {
                                chosen.set(listing.profiles().stream()
                                        .map(ProfileView::name)
                                        .findFirst());
                            }
                        },
                        error -> profiles.set(new Reading.Failed<>(error)));
    }

    /** Looks at another one. */
    public void choose(String name) {
        if (chosen.get().filter(name::equals).isEmpty()) {
            forgetCard();
            chosen.set(Optional.of(name));
        }
    }

    /**
     * Shows what putting the chosen profile on the card would do.
     *
     * @param otherBoard whether it may go there although the window is about another board
     * @param despiteBlockers whether it may although a check finds a blocker in it
     */
    public void put(boolean otherBoard, boolean despiteBlockers) {
        if (putting.get().whyNot().isEmpty()) {
            put = chosen.get();
            profile()
                    .ifPresent(profile -> readCard()
                            .ifPresent(model ->
                                    model.change().choose(order(profile, model, otherBoard, despiteBlockers))));
        }
    }

    private static ChangeOrder order(
            ProfileView profile, CardModel model, boolean otherBoard, boolean despiteBlockers) {
        ChangeOrder order = ChangeOrder.of(
                new ChangeRequest.ToProfile(profile.name(), model.board().get()));
        order = otherBoard ? order.accepting(NextStep.Allow.OTHER_BOARD) : order;
        return despiteBlockers ? order.accepting(NextStep.Allow.BLOCKERS) : order;
    }

    /** Compares the chosen profile with the card. */
    public void compare() {
        if (profile().isEmpty() || readCard().isEmpty()) {
            return;
        }
        String name = profile().get().name();
        CardModel model = readCard().get();
        comparison.set(new Reading.Waiting<>());
        services.queue()
                .submitFirst(
                        services.words().of("busy.compare"),
                        () -> job().compare(name, model.card()),
                        differences -> compared(name, model, new Reading.Ready<>(differences)),
                        error -> compared(name, model, new Reading.Failed<>(error)));
    }

    private void compared(String name, CardModel model, Reading<List<SettingDifference>> outcome) {
        if (chosen.get().filter(name::equals).isPresent()
                && card.filter(model::equals).isPresent()) {
            comparison.set(outcome);
        }
    }

    /** Takes a profile's file in, under the name it carries. */
    public void importFrom(Path file, boolean replace) {
        run(
                "busy.profiles",
                () -> job().importFrom(file, replace).name(),
                this::saved,
                error -> done.set(new Done(
                        Optional.empty(),
                        Optional.of(error),
                        error.isRefusedFor(NextStep.Allow.REPLACE) ? Optional.of(file) : Optional.empty())));
    }

    /** Copies the chosen profile's file to one that is not there yet. */
    public void exportTo(Path file) {
        chosen.get()
                .ifPresent(name -> run(
                        "busy.profiles",
                        () -> {
                            job().exportTo(name, file);
                            return name;
                        },
                        same -> tell("profiles.exported", name, file.toString()),
                        this::failed));
    }

    /** Deletes the chosen profile; no card is touched. */
    public void delete() {
        chosen.get()
                .ifPresent(name -> run(
                        "busy.profiles",
                        () -> {
                            job().delete(name);
                            return name;
                        },
                        same -> {
                            tell("profiles.deleted", name);
                            chosen.set(Optional.empty());
                            read();
                        },
                        this::failed));
    }

    /** What is written about profiles is read anew, and the one named is looked at. */
    void saved(String name) {
        tell("profiles.saved", name);
        forgetCard();
        chosen.set(Optional.of(name));
        read();
    }

    private void failed(CardException error) {
        done.set(new Done(Optional.empty(), Optional.of(error), Optional.empty()));
    }

    private void tell(String key, Object... arguments) {
        done.set(new Done(Optional.of(services.words().of(key, arguments)), Optional.empty(), Optional.empty()));
    }

    private void run(String busy, WorkQueue.Work<String> work, Consumer<String> then, Consumer<CardException> failed) {
        done.set(Done.NOTHING);
        services.queue().submitFirst(services.words().of(busy), work, then, failed);
    }

    private ProfileJob job() {
        return new ProfileJob(services.workplace());
    }

    /** What was found out about the chosen profile on the card holds no longer. */
    private void forgetCard() {
        comparison.set(new Reading.Unasked<>());
        put = Optional.empty();
        metBlockers = false;
    }

    private void cardChanged() {
        Optional<ChangeState> state =
                desk.current().get().map(model -> model.change().state().get());
        if (!card.equals(desk.current().get())
                || state.filter(each -> each instanceof ChangeState.Done).isPresent()) {
            card = desk.current().get();
            forgetCard();
        }
        metBlockers |= put.equals(chosen.get())
                && state.filter(each -> each instanceof ChangeState.Failed failed
                                && failed.key().equals(PROFILE)
                                && failed.error().isRefusedFor(NextStep.Allow.BLOCKERS))
                        .isPresent();
        refresh();
    }

    private void refresh() {
        Optional<ProfileView> profile = profile();
        boolean other = profile.isPresent()
                && desk.current()
                        .get()
                        .flatMap(model -> model.board().get())
                        .filter(board -> !board.equals(profile.get().board()))
                        .isPresent();
        putting.set(new Putting(whyNot(profile, desk.current().get()), other, metBlockers));
    }

    private String whyNot(Optional<ProfileView> profile, Optional<CardModel> model) {
        if (profile.isEmpty()) {
            return services.words().of("profiles.whynot.none");
        }
        return WhyNot.change(model, services.words());
    }
}
