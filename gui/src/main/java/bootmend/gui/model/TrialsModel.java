package bootmend.gui.model;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.TryOnceStart;
import bootmend.record.TrialAddJob;
import bootmend.record.TrialAdded;
import bootmend.record.TrialAdviseJob;
import bootmend.record.TrialEditJob;
import bootmend.record.TrialListJob;
import bootmend.record.TrialListing;
import bootmend.record.TrialReport;
import bootmend.record.TrialSide;
import bootmend.request.CardRequest;
import bootmend.trial.Setting;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The trials on this computer: which board is looked at, what its trials come to, and what to try next. */
public final class TrialsModel {

    private static final String STAGE = "stage";

    private final DeskModel desk;
    private final Services services;
    private final Watched<Reading<TrialListing>> listing = new Watched<>(new Reading.Unasked<>());
    private final Watched<Optional<String>> label = new Watched<>(Optional.empty());
    private final Watched<Reading<BoardTrials>> board = new Watched<>(new Reading.Unasked<>());
    private final Watched<Staging> staging = new Watched<>(new Staging("", false, false));
    private final Watched<Reading<TrialAdded>> adding = new Watched<>(new Reading.Unasked<>());
    private final Watched<Optional<TrialSide>> beside = new Watched<>(Optional.empty());
    private Optional<CardModel> card = Optional.empty();
    private List<String> deleted = List.of();
    private boolean metBlockers;
    private WorkQueue.Ticket advising = () -> {};

    /**
     * What can be staged on the card that is looked at.
     *
     * @param whyNot why nothing can, as a sentence; empty where something can
     * @param staged whether settings are staged on it now
     * @param metBlockers whether staging was refused for what a check found in the settings
     */
    public record Staging(String whyNot, boolean staged, boolean metBlockers) {}

    public TrialsModel(DeskModel desk) {
        this.desk = desk;
        this.services = desk.services();
        List<Function<CardModel, Watched<?>>> parts = List.of(
                CardModel::sheet, CardModel::gone, model -> model.change().state());
        new Following(desk, parts, this::cardChanged);
        board.watch(reading -> cardChanged());
    }

    public Services services() {
        return services;
    }

    /** Every trial, and what keeps others from being read. */
    public Watched<Reading<TrialListing>> listing() {
        return listing;
    }

    /** The label of the board that is looked at. */
    public Watched<Optional<String>> label() {
        return label;
    }

    /** What its trials come to. */
    public Watched<Reading<BoardTrials>> board() {
        return board;
    }

    public Watched<Staging> staging() {
        return staging;
    }

    /** What came of the trial that was added last. */
    public Watched<Reading<TrialAdded>> adding() {
        return adding;
    }

    /** Ids of every known board. */
    public List<String> boards() {
        return services.workplace().boards();
    }

    /** The label of every board that was tried, in order. */
    public List<String> labels() {
        return List.copyOf(counts().keySet());
    }

    /** What is drawn beside the board that is looked at. */
    public Watched<Optional<TrialSide>> beside() {
        return beside;
    }

    /** What could be drawn beside it: its own coolings, where there were several, and the other boards. */
    public List<TrialSide> sides() {
        List<TrialSide> sides = new ArrayList<>();
        List<String> coolings = trials().stream()
                .map(each -> each.trial().surroundings().cooling())
                .distinct()
                .sorted()
                .toList();
        if (coolings.size() > 1) {
            coolings.forEach(cooling -> sides.add(new TrialSide(label.get().orElseThrow(), Optional.of(cooling))));
        }
        labels().stream()
                .filter(other -> label.get().filter(other::equals).isEmpty())
                .map(TrialSide::of)
                .forEach(sides::add);
        return sides;
    }

    /** Draws another one beside, or none. */
    public void compare(Optional<TrialSide> side) {
        if (!beside.get().equals(side)) {
            beside.set(side);
            label.get().ifPresent(this::advise);
        }
    }

    /** Puts a trial aside; {@link #putBack} undoes it. */
    public void delete(TrialListing.Listed trial) {
        String id = trial.trial().id();
        services.queue()
                .submitFirst(
                        services.words().of("busy.deleting"),
                        () -> {
                            new TrialEditJob(services.workplace()).delete(List.of(id));
                            return id;
                        },
                        done -> {
                            deleted = List.of(done);
                            read();
                        },
                        error -> listing.set(new Reading.Failed<>(error)));
    }

    /** Whether a trial was deleted here that can be put back. */
    public boolean canPutBack() {
        return !deleted.isEmpty();
    }

    /** Puts back the trial that was deleted last. */
    public void putBack() {
        List<String> ids = deleted;
        services.queue()
                .submitFirst(
                        services.words().of("busy.deleting"),
                        () -> {
                            new TrialEditJob(services.workplace()).restore(ids);
                            return ids;
                        },
                        done -> {
                            deleted = List.of();
                            read();
                        },
                        error -> listing.set(new Reading.Failed<>(error)));
    }

    /** The trials of the board that is looked at, the newest first. */
    public List<TrialListing.Listed> trials() {
        return listing.get().value().map(TrialListing::trials).orElse(List.of()).stream()
                .filter(each ->
                        label.get().filter(each.trial().unit().label()::equals).isPresent())
                .sorted(Comparator.comparing(
                                (TrialListing.Listed each) -> each.trial().when())
                        .reversed())
                .toList();
    }

    /** The kind of board that earlier trials of a label name. */
    public Optional<String> boardOf(String ofLabel) {
        return listing.get()
                .value()
                .flatMap(all -> all.trials().stream()
                        .filter(each -> each.trial().unit().label().equals(ofLabel.strip()))
                        .map(each -> each.trial().unit().board())
                        .findFirst());
    }

    private Map<String, Long> counts() {
        return listing.get().value().map(TrialListing::trials).orElse(List.of()).stream()
                .collect(Collectors.groupingBy(
                        each -> each.trial().unit().label(), TreeMap::new, Collectors.counting()));
    }

    /** Reads them all anew. */
    public void read() {
        if (!(listing.get() instanceof Reading.Ready)) {
            listing.set(new Reading.Waiting<>());
        }
        services.queue()
                .submit(
                        services.words().of("busy.trials"),
                        () -> new TrialListJob(services.workplace()).run(Optional.empty()),
                        this::listed,
                        error -> listing.set(new Reading.Failed<>(error)));
    }

    private void listed(TrialListing all) {
        listing.set(new Reading.Ready<>(all));
        if (label.get().filter(counts()::containsKey).isEmpty()) {
            label.set(counts().entrySet().stream()
                    .max(Map.Entry.comparingByValue())
                    .map(Map.Entry::getKey));
        }
        label.get().ifPresentOrElse(this::advise, () -> board.set(new Reading.Unasked<>()));
    }

    /** Looks at another board. */
    public void choose(String next) {
        if (label.get().filter(next::equals).isEmpty()) {
            metBlockers = false;
            beside.set(Optional.empty());
            label.set(Optional.of(next));
            board.set(new Reading.Waiting<>());
            advise(next);
        }
    }

    private void advise(String of) {
        advising.drop();
        Optional<TrialSide> other = beside.get();
        advising = services.queue()
                .submitFirst(
                        services.words().of("busy.advice"),
                        () -> advice(of, other),
                        value -> board.set(new Reading.Ready<>(value)),
                        error -> board.set(new Reading.Failed<>(error)));
    }

    private BoardTrials advice(String of, Optional<TrialSide> other) throws CardException {
        TrialAdviseJob job = new TrialAdviseJob(services.workplace());
        TrialReport report = job.run(of, OptionalDouble.empty());
        return other.isEmpty()
                ? BoardTrials.of(report)
                : BoardTrials.compared(report, job.run(other.get(), OptionalDouble.empty()), other.get());
    }

    /** The setting that is suggested, if one is. */
    public Optional<Setting> suggested() {
        return board.get().value().flatMap(value -> value.report().advice().setting());
    }

    /** Shows what staging the suggested setting on the card would do. */
    public void stage(boolean despiteBlockers) {
        if (!staging.get().whyNot().isEmpty() || suggested().isEmpty()) {
            return;
        }
        Setting setting = suggested().get();
        String kind = board.get().value().orElseThrow().report().unit().board();
        ChangeOrder order = ChangeOrder.of(new ChangeRequest.Stage(kind, setting.lines()));
        choose(despiteBlockers ? order.accepting(NextStep.Allow.BLOCKERS) : order);
    }

    /** Shows what making the staged settings the config file's would do. */
    public void keepStaged() {
        choose(ChangeOrder.of(new ChangeRequest.Adopt()));
    }

    /** Shows what taking the staged settings away would do. */
    public void takeStagedAway() {
        choose(ChangeOrder.of(new ChangeRequest.Unstage()));
    }

    private void choose(ChangeOrder order) {
        desk.current()
                .get()
                .filter(model ->
                        WhyNot.change(Optional.of(model), services.words()).isEmpty())
                .ifPresent(model -> model.change().choose(order));
    }

    /** The command that restarts a board with its try-once flag. */
    public String restartCommand() {
        return TryOnceStart.command();
    }

    /** The card that is looked at, where it was read. */
    public Optional<CardRequest> readCard() {
        return desk.current()
                .get()
                .filter(model -> model.sheet().get().value().isPresent())
                .map(CardModel::card);
    }

    /** Keeps a trial; what is wrong with it is told as a failure of {@link #adding}. */
    public void add(TrialDraft draft) {
        try {
            var request = draft.request(readCard(), services.words());
            adding.set(new Reading.Waiting<>());
            services.queue()
                    .submitFirst(
                            services.words().of("busy.adding"),
                            () -> new TrialAddJob(services.workplace()).run(request),
                            this::added,
                            error -> adding.set(new Reading.Failed<>(error)));
        } catch (CardException e) {
            adding.set(new Reading.Failed<>(e));
        }
    }

    /** A new form says nothing of the last one. */
    public void beginAdding() {
        adding.set(new Reading.Unasked<>());
    }

    private void added(TrialAdded trial) {
        adding.set(new Reading.Ready<>(trial));
        label.set(Optional.of(trial.trial().unit().label()));
        read();
    }

    private void cardChanged() {
        Optional<CardModel> now = desk.current().get();
        Optional<ChangeState> state = now.map(model -> model.change().state().get());
        if (!card.equals(now)
                || state.filter(each -> each instanceof ChangeState.Done).isPresent()) {
            metBlockers = false;
            card = now;
        }
        metBlockers |= state.filter(each -> each instanceof ChangeState.Failed failed
                        && failed.key().equals(STAGE)
                        && failed.error().isRefusedFor(NextStep.Allow.BLOCKERS))
                .isPresent();
        boolean staged = now.flatMap(model -> model.sheet().get().value())
                .filter(sheet -> sheet.staged())
                .isPresent();
        staging.set(new Staging(WhyNot.change(now, services.words()), staged, metBlockers));
    }
}
