package bootmend.gui.model;

import bootmend.CardException;
import bootmend.batch.BatchJournal;
import bootmend.batch.CardBatch;
import bootmend.batch.CardNames;
import bootmend.batch.CardResult;
import bootmend.finding.Purpose;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeOutcome;
import bootmend.operation.ProposedChange;
import bootmend.page.CardOutcome;
import bootmend.record.ProfileJob;
import bootmend.record.ProfileListing;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import bootmend.view.CheckJob;
import bootmend.view.CheckRequest;
import bootmend.view.CheckView;
import bootmend.view.ShowJob;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/**
 * Several cards that are worked on together: looked at, then a change worked out for each without writing, then made
 * where it changes anything; or checked.
 *
 * <p>Several cards are in work at a time, all within one piece of work of the queue, because a card must never be open
 * twice. A failure stays with its card.
 */
public final class BatchModel {

    private static final int MOST_AT_ONCE = 64;

    private final Services services;
    private final List<Path> cards;
    private final Consumer<Path> looker;
    private final int atOnce;
    private final List<Watched<BatchRow>> rows;
    private final Watched<BatchState> state =
            new Watched<>(new BatchState.Rest(new BatchTask.Look(), BatchTally.of(List.of()), Duration.ZERO));
    private final Watched<Reading<ProfileListing>> profiles = new Watched<>(new Reading.Unasked<>());
    private final Watched<Set<String>> agreed = new Watched<>(Set.of());
    private final Watched<Reading<Path>> saved = new Watched<>(new Reading.Unasked<>());
    private final Map<Path, ProposedChange> planned = new HashMap<>();
    private final List<CardResult<CheckView>> checked = new ArrayList<>();
    private Optional<CardBatch> inWork = Optional.empty();

    /**
     * @param cards each once
     * @param looker looks at one of them alone
     */
    BatchModel(Services services, List<Path> cards, Consumer<Path> looker) {
        this(
                services,
                cards,
                looker,
                Math.min(MOST_AT_ONCE, Runtime.getRuntime().availableProcessors()));
    }

    /** @param atOnce cards in work at once */
    BatchModel(Services services, List<Path> cards, Consumer<Path> looker, int atOnce) {
        this.services = services;
        this.cards = List.copyOf(cards);
        this.looker = looker;
        this.atOnce = atOnce;
        this.rows = this.cards.stream()
                .map(card -> new Watched<>(BatchRow.of(card)))
                .toList();
    }

    public List<Path> cards() {
        return cards;
    }

    /** The folder where undo records go. */
    public Path records() {
        return services.workplace().home();
    }

    /** One a card, in the order named. */
    public List<Watched<BatchRow>> rows() {
        return rows;
    }

    public Watched<BatchState> state() {
        return state;
    }

    /** The profiles that can be put on the cards. */
    public Watched<Reading<ProfileListing>> profiles() {
        return profiles;
    }

    /** The questions that were agreed to. */
    public Watched<Set<String>> agreed() {
        return agreed;
    }

    /** The file that was saved last. */
    public Watched<Reading<Path>> saved() {
        return saved;
    }

    /** Reads every card. */
    public void read() {
        if (state.get() instanceof BatchState.Working) {
            return;
        }
        profiles.set(new Reading.Waiting<>());
        services.queue()
                .submit(
                        services.words().of("busy.profiles"),
                        () -> new ProfileJob(services.workplace()).listing(),
                        all -> profiles.set(new Reading.Ready<>(all)),
                        error -> profiles.set(new Reading.Failed<>(error)));
        ShowJob job = new ShowJob(services.workplace());
        run(
                new BatchTask.Look(),
                everyCard(),
                card -> job.run(CardRequest.of(card)),
                (row, result) -> row.after(CardOutcome.ofCard(result), 0));
    }

    /** Works out what a request would do to each card; nothing is written. */
    public void workOut(ChangeOrder order) {
        if (state.get() instanceof BatchState.Working) {
            return;
        }
        ChangeOperation operation = new ChangeOperation(services.workplace());
        run(
                new BatchTask.WorkOut(order),
                everyCard(),
                card -> {
                    CardNames.refuseToChange(card);
                    return operation.workOut(CardRequest.of(card), order).leave();
                },
                this::workedOut);
    }

    private BatchRow workedOut(BatchRow row, CardResult<ChangeOutcome> result) {
        result.view()
                .map(ChangeOutcome::change)
                .filter(change -> !change.isNothing())
                .ifPresent(change -> planned.put(row.card(), change));
        return row.after(
                CardOutcome.ofChange(result),
                result.view().map(BatchModel::sectors).orElse(0));
    }

    /** Checks each card for a purpose, for every board that it can be meant for. */
    public void check(Purpose purpose) {
        if (state.get() instanceof BatchState.Working) {
            return;
        }
        CheckJob job = new CheckJob(services.workplace());
        run(
                new BatchTask.Check(purpose),
                everyCard(),
                card -> job.run(new CheckRequest(CardRequest.of(card), purpose, BoardRequest.none())),
                (row, result) -> {
                    checked.add(result);
                    return row.after(CardOutcome.ofCheck(result), 0);
                });
    }

    /** What is to be agreed to before the change that was worked out is made, each once. */
    public List<String> questions() {
        Set<String> questions = new LinkedHashSet<>();
        cards.stream()
                .map(planned::get)
                .filter(change -> change != null)
                .forEach(change -> questions.addAll(change.questions()));
        return List.copyOf(questions);
    }

    /** Agrees to one of the questions, or takes that back. */
    public void agree(String question, boolean yes) {
        Set<String> next = new HashSet<>(agreed.get());
        if (yes) {
            next.add(question);
        } else {
            next.remove(question);
        }
        agreed.set(Set.copyOf(next));
    }

    /** Whether there is a change that was worked out, changes a card, and was agreed to where that is asked. */
    public boolean canMake() {
        return state.get() instanceof BatchState.Rest rest
                && rest.task() instanceof BatchTask.WorkOut
                && !planned.isEmpty()
                && agreed.get().containsAll(questions());
    }

    /** Makes the change on each card that it changes: undo record, writes, forces, read-back. */
    public void make() {
        if (!canMake() || !(state.get().task() instanceof BatchTask.WorkOut workedOut)) {
            return;
        }
        Map<Path, ProposedChange> shown = Map.copyOf(planned);
        List<Integer> which = everyCard().stream()
                .filter(index -> shown.containsKey(cards.get(index)))
                .toList();
        ChangeOperation operation = new ChangeOperation(services.workplace());
        run(
                new BatchTask.Make(workedOut.order()),
                which,
                card -> new MadeOnCard(operation.make(shown.get(card)).orThrow(), now(CardRequest.of(card))),
                (row, result) -> {
                    BatchRow after = row.after(
                            CardOutcome.ofChange(outcome(result)),
                            result.view().map(made -> sectors(made.outcome())).orElse(row.sectors()));
                    return result.view().map(made -> after.as(made.now())).orElse(after);
                });
    }

    /**
     * A change that was made on one card.
     *
     * @param now what the card is after it; empty where it could not be read once more
     */
    private record MadeOnCard(ChangeOutcome outcome, Optional<CardOutcome.Was> now) {}

    private static CardResult<ChangeOutcome> outcome(CardResult<MadeOnCard> result) {
        return new CardResult<>(
                result.card(), result.started(), result.view().map(MadeOnCard::outcome), result.error(), result.took());
    }

    /** The change is made and read back by then, so a card that cannot be read once more has not failed. */
    private Optional<CardOutcome.Was> now(CardRequest card) {
        try {
            return CardOutcome.ofCard(new CardResult<>(
                            card.card(),
                            true,
                            Optional.of(new ShowJob(services.workplace()).run(card)),
                            Optional.empty(),
                            Duration.ZERO))
                    .was();
        } catch (CardException e) {
            return Optional.empty();
        }
    }

    /** Lets the cards in work end and begins no other. */
    public void stop() {
        inWork.ifPresent(CardBatch::stop);
        if (state.get() instanceof BatchState.Working working) {
            state.set(new BatchState.Working(working.task(), working.done(), working.all(), true, working.since()));
        }
    }

    /** Whether a change or a check of the cards is under way, which takes long and is lost where it is stopped. */
    public boolean isInHand() {
        return isWriting()
                || state.get() instanceof BatchState.Working working && working.task() instanceof BatchTask.Check;
    }

    /** Whether cards are being changed. */
    public boolean isWriting() {
        return state.get() instanceof BatchState.Working working && working.task() instanceof BatchTask.Make;
    }

    /** Looks at one of the cards alone. */
    public void look(Path card) {
        looker.accept(card);
    }

    /** Reads one card once more, after it was looked at alone; a plan that does not fit it any more is given up. */
    void lookAgain(Path card) {
        int index = cards.indexOf(card);
        if (index < 0 || state.get() instanceof BatchState.Working) {
            return;
        }
        ShowJob job = new ShowJob(services.workplace());
        List<CardResult<CardView>> results = new ArrayList<>();
        services.queue()
                .submitFirst(
                        services.words().of("busy.card"),
                        () -> {
                            new CardBatch(1).run(List.of(card), each -> job.run(CardRequest.of(each)), results::add);
                            return results.get(0);
                        },
                        result -> {
                            CardOutcome now = CardOutcome.ofCard(result);
                            BatchRow row = rows.get(index).get();
                            if (!row.now().equals(now.was()) && state.get() instanceof BatchState.Rest rest) {
                                planned.remove(card);
                                rows.get(index).set(row.after(now, 0).as(now.was()));
                                state.set(new BatchState.Rest(rest.task(), tally(), rest.took()));
                            }
                        },
                        error -> {});
    }

    /** Saves the packing slips of the last check. */
    public void saveSlips(Path file) {
        if (state.get().task() instanceof BatchTask.Check check) {
            List<CardResult<CheckView>> all = List.copyOf(checked);
            save(() -> BatchFiles.slips(file, check.purpose(), all, new StepPlaces(services.words())));
        }
    }

    /**
     * Saves what the last task came to, a row a card.
     *
     * @param what was done, in a few words
     */
    public void saveReport(Path file, String what) {
        List<CardOutcome> outcomes = rows.stream()
                .map(row -> row.get().outcome())
                .flatMap(Optional::stream)
                .toList();
        save(() -> BatchFiles.report(file, cards, what, outcomes, new StepPlaces(services.words())));
    }

    private void save(WorkQueue.Work<Path> writing) {
        saved.set(new Reading.Waiting<>());
        // Like a change to a card it is not stopped half-way.
        services.queue()
                .submitChange(
                        services.words().of("busy.save"),
                        writing,
                        path -> saved.set(new Reading.Ready<>(path)),
                        error -> saved.set(new Reading.Failed<>(error)));
    }

    /** How a result is shown. */
    @FunctionalInterface
    private interface Shown<T> {
        BatchRow after(BatchRow row, CardResult<T> result);
    }

    private record Numbered<T>(int index, CardResult<T> result) {}

    private <T> void run(BatchTask task, List<Integer> which, CardBatch.Work<T> work, Shown<T> shown) {
        planned.clear();
        checked.clear();
        agreed.set(Set.of());
        saved.set(new Reading.Unasked<>());
        which.forEach(index -> rows.get(index).set(rows.get(index).get().inTurn()));
        long since = System.nanoTime();
        CardBatch batch = new CardBatch(atOnce);
        inWork = Optional.of(batch);
        state.set(new BatchState.Working(task, 0, which.size(), false, since));
        Arrivals<Numbered<T>> arrivals = new Arrivals<>(services.screen(), arrived -> {
            for (Numbered<T> each : arrived) {
                Watched<BatchRow> row = rows.get(each.index());
                row.set(shown.after(row.get(), each.result()));
            }
            if (state.get() instanceof BatchState.Working now) {
                state.set(new BatchState.Working(task, now.done() + arrived.size(), now.all(), now.stopping(), since));
            }
        });
        List<Path> turns = which.stream().map(cards::get).toList();
        WorkQueue.Work<Integer> everyTurn = () -> {
            int[] next = {0};
            Consumer<CardResult<T>> results = result -> arrivals.add(new Numbered<>(which.get(next[0]++), result));
            if (task instanceof BatchTask.Make) {
                journaled(task, turns, batch, work, results);
            } else {
                batch.run(turns, work, results);
            }
            return turns.size();
        };
        String words = services.words().of("busy.batch." + task.key());
        Consumer<Integer> done = all -> ended(task, arrivals, since);
        Consumer<CardException> failed = error -> {
            arrivals.hand();
            which.forEach(index -> notBegun(rows.get(index), error));
            ended(task, arrivals, since);
        };
        if (task instanceof BatchTask.Make) {
            services.queue().submitChange(words, everyTurn, done, failed);
        } else {
            services.queue().submit(words, everyTurn, done, failed);
        }
    }

    /** A batch that changes cards is noted, so that one that is cut can be told of at the next start. */
    private <T> void journaled(
            BatchTask task, List<Path> turns, CardBatch batch, CardBatch.Work<T> work, Consumer<CardResult<T>> results)
            throws CardException {
        Workplace workplace = services.workplace();
        String what = new BatchWords(services.words()).task(task);
        Optional<CardException> aside = BatchJournal.begin(workplace.home(), what, turns, workplace.instant())
                .run(batch, work, results);
        if (aside.isPresent()) {
            throw aside.get();
        }
    }

    /** The work was stopped before it came to that card. */
    private static void notBegun(Watched<BatchRow> row, CardException why) {
        if (row.get().waiting()) {
            row.set(row.get()
                    .after(
                            CardOutcome.ofCard(new CardResult<>(
                                    row.get().card(), false, Optional.empty(), Optional.of(why), Duration.ZERO)),
                            0));
        }
    }

    private void ended(BatchTask task, Arrivals<?> arrivals, long since) {
        arrivals.hand();
        inWork = Optional.empty();
        state.set(new BatchState.Rest(task, tally(), Duration.ofNanos(System.nanoTime() - since)));
    }

    private BatchTally tally() {
        return BatchTally.of(rows.stream().map(Watched::get).toList());
    }

    private List<Integer> everyCard() {
        return IntStream.range(0, cards.size()).boxed().toList();
    }

    private static int sectors(ChangeOutcome outcome) {
        return outcome.change().plan().sectorsWritten();
    }
}
