package bootmend.gui.model;

import bootmend.CardException;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.Verdict;
import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.EjectJob;
import bootmend.operation.HistoryJob;
import bootmend.operation.HistoryView;
import bootmend.operation.ProposedChange;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.CheckJob;
import bootmend.view.CheckRequest;
import bootmend.view.CheckView;
import bootmend.view.DiagnoseJob;
import bootmend.view.InterruptedChange;
import bootmend.view.RecoveryView;
import bootmend.view.SheetJob;
import bootmend.view.SheetView;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** One card that is looked at: what is on it, what a check says, what was done to it, and what is to be done. */
public final class CardModel {

    private final Services services;
    private final CardRequest card;
    private final Watched<Optional<String>> board;
    private final Watched<Purpose> purpose = new Watched<>(Purpose.SHIP);
    private final Watched<Reading<SheetView>> sheet = new Watched<>(new Reading.Unasked<>());
    private final Watched<Reading<BootDiagnosis>> boot = new Watched<>(new Reading.Unasked<>());
    private final Watched<Reading<CheckView>> check = new Watched<>(new Reading.Unasked<>());
    private final Watched<Reading<HistoryView>> history = new Watched<>(new Reading.Unasked<>());
    private final Watched<Reading<ProposedChange>> health = new Watched<>(new Reading.Unasked<>());
    private final Watched<Boolean> gone = new Watched<>(false);
    private final Watched<List<String>> bootable = new Watched<>(List.of());
    private final Watched<Optional<LinePlace>> pointedAt = new Watched<>(Optional.empty());
    private final Watched<Optional<String>> ejected = new Watched<>(Optional.empty());
    private final ChangeModel change;
    private final SlipModel slip;
    private final EarlierModel earlier;
    private final List<WorkQueue.Ticket> reads = new ArrayList<>();
    private Map<LinePlace, List<Finding>> atLines = Map.of();

    /** @param board the board it is taken to be for; empty for none in particular */
    public CardModel(Services services, CardRequest card, Optional<String> board) {
        this.services = services;
        this.card = card;
        this.board = new Watched<>(board);
        this.change = new ChangeModel(services, card, this::read);
        // The first to hear of a check, so that every view finds the findings in place.
        check.watch(reading -> atLines = atLines(reading));
        this.slip = new SlipModel(services, card, check, ZoneId.systemDefault());
        this.earlier = new EarlierModel(services, card, change);
    }

    public CardRequest card() {
        return card;
    }

    /** The board whose values are shown; empty for none in particular. */
    public Watched<Optional<String>> board() {
        return board;
    }

    /** What the card is checked for. */
    public Watched<Purpose> purpose() {
        return purpose;
    }

    public Watched<Reading<SheetView>> sheet() {
        return sheet;
    }

    /** Whether it boots, link by link. */
    public Watched<Reading<BootDiagnosis>> boot() {
        return boot;
    }

    public Watched<Reading<CheckView>> check() {
        return check;
    }

    /** The changes made to it from this computer. */
    public Watched<Reading<HistoryView>> history() {
        return history;
    }

    /** What is damaged on it, and what a repair would do. */
    public Watched<Reading<ProposedChange>> health() {
        return health;
    }

    /** Whether it was taken out. */
    public Watched<Boolean> gone() {
        return gone;
    }

    /** Ids of the boards that it can be meant for, as far as was found out. */
    public Watched<List<String>> bootable() {
        return bootable;
    }

    public ChangeModel change() {
        return change;
    }

    public SlipModel slip() {
        return slip;
    }

    /** What its config file was before. */
    public EarlierModel earlier() {
        return earlier;
    }

    /** The line that the user was last taken to. */
    public Watched<Optional<LinePlace>> pointedAt() {
        return pointedAt;
    }

    /** Takes the user to a line of a file, once more even where it was the last one. */
    public void pointAt(LinePlace place) {
        pointedAt.set(Optional.empty());
        pointedAt.set(Optional.of(place));
    }

    /** A change that was interrupted and can be brought to an end on this card; everything else waits for that. */
    public Optional<RecoveryView> interrupted() {
        return waiting().own().filter(each -> each.fits() && !each.nothingWritten());
    }

    /** What is known of a change that was interrupted, as far as the card was read. */
    public InterruptedChange waiting() {
        return sheet.get().value().map(SheetView::waiting).orElseGet(InterruptedChange.None::new);
    }

    /** Reads everything that is shown of the card, anew. */
    public void read() {
        dropReads();
        earlier.forget();
        gone.set(false);
        ejected.set(Optional.empty());
        sheet.set(new Reading.Waiting<>());
        boot.set(new Reading.Waiting<>());
        check.set(new Reading.Waiting<>());
        history.set(new Reading.Waiting<>());
        health.set(new Reading.Waiting<>());
        if (bootable.get().isEmpty()) {
            read(
                    "busy.card",
                    () -> new SheetJob(services.workplace()).run(card, BoardRequest.none()),
                    this::firstRead,
                    this::unread);
        } else {
            readSheet();
        }
    }

    /** Has the system let go of the card, and tells what became of that. */
    public void eject() {
        services.queue()
                .<String>submitChange(
                        services.words().of("busy.eject"),
                        () -> new EjectJob().run(card),
                        said -> ejected.set(Optional.of(said)),
                        error -> ejected.set(Optional.of(error.getMessage())));
    }

    /** What became of the wish to let go of the card, in a sentence. */
    public Watched<Optional<String>> ejected() {
        return ejected;
    }

    /** Shows what the card comes to on another board. */
    public void setBoard(Optional<String> next) {
        if (!board.get().equals(next)) {
            board.set(next);
            if (sheet.get().value().isPresent()) {
                dropReads();
                sheet.set(new Reading.Waiting<>());
                boot.set(new Reading.Waiting<>());
                check.set(new Reading.Waiting<>());
                readSheet();
            }
        }
    }

    /** Checks the card for something else. */
    public void setPurpose(Purpose next) {
        if (!purpose.get().equals(next)) {
            purpose.set(next);
            check.set(new Reading.Waiting<>());
            readCheck();
        }
    }

    /** Nobody looks at the card any more; a change under way is finished all the same. */
    public void leave() {
        dropReads();
        earlier.forget();
    }

    /** The card was taken out of its reader, or is back in it. */
    void setGone(boolean out) {
        if (out && !gone.get()) {
            dropReads();
            change.forget();
        } else if (!out && gone.get()) {
            gone.set(false);
            // It may be another card.
            bootable.set(List.of());
            read();
        }
        gone.set(out);
    }

    /** What the last check says about one line. */
    public List<Finding> findingsAt(String file, int line) {
        return atLines.getOrDefault(new LinePlace(file, line), List.of());
    }

    /** Made once a check, because a hostile file may have as many findings as lines. */
    private static Map<LinePlace, List<Finding>> atLines(Reading<CheckView> reading) {
        return reading.value().map(CheckView::findings).orElse(List.of()).stream()
                .filter(finding -> finding.where().line().isPresent())
                .collect(Collectors.groupingBy(finding -> new LinePlace(
                        finding.where().path(), finding.where().line().getAsInt())));
    }

    /** Which boards it can be meant for is only known from a look at every board; after that the chosen one is enough. */
    private void firstRead(SheetView view) {
        bootable.set(view.show().boards().stream().map(each -> each.board()).toList());
        if (board.get().isEmpty()) {
            shown(view);
        } else {
            readSheet();
        }
    }

    private void readSheet() {
        read("busy.card", () -> new SheetJob(services.workplace()).run(card, about()), this::shown, this::unread);
    }

    private void shown(SheetView view) {
        sheet.set(new Reading.Ready<>(view));
        Optional<RecoveryView> cut = interrupted();
        if (cut.isPresent()) {
            change.interrupted(cut.get());
        } else if (waiting() instanceof InterruptedChange.Unclear unclear) {
            change.unclear(unclear);
        } else if (change.state().get() instanceof ChangeState.Idle
                && !view.show().card().isStock()) {
            change.choose(ChangeOrder.of(ChangeRequest.ToStock.PLAIN));
        }
        readBoot();
        readCheck();
        read(
                "busy.history",
                () -> new HistoryJob(services.workplace()).run(card),
                value -> history.set(new Reading.Ready<>(value)),
                error -> history.set(new Reading.Failed<>(error)));
        read(
                "busy.health",
                () -> change.preview(ChangeRequest.Repair.PLAIN),
                value -> health.set(new Reading.Ready<>(value)),
                error -> health.set(new Reading.Failed<>(error)));
    }

    private void unread(CardException error) {
        sheet.set(new Reading.Failed<>(error));
        check.set(new Reading.Failed<>(error));
        history.set(new Reading.Failed<>(error));
        readBoot();
        // A card whose partition is not found may still have damage that a look at the volume tells more of.
        read(
                "busy.health",
                () -> change.preview(ChangeRequest.Repair.PLAIN),
                value -> health.set(new Reading.Ready<>(value)),
                again -> health.set(new Reading.Failed<>(again)));
    }

    private void readBoot() {
        read(
                "busy.boot",
                () -> new DiagnoseJob(services.workplace()).run(card, about()),
                this::diagnosed,
                error -> boot.set(new Reading.Failed<>(error)));
    }

    /** The strip follows what the card needs first, unless something else was chosen there. */
    private void diagnosed(BootDiagnosis diagnosis) {
        boot.set(new Reading.Ready<>(diagnosis));
        boolean unchosen = change.state().get() instanceof ChangeState.Idle
                || change.state().get() instanceof ChangeState.Proposed proposed
                        && proposed.change().order().request().equals(ChangeRequest.ToStock.PLAIN);
        if (unchosen && !diagnosis.anyBoots()) {
            diagnosis.boards().stream()
                    .flatMap(board -> board.chain().verdict() instanceof Verdict.Stops stops
                            ? RemedyPlaces.order(stops.cause().remedy()).stream()
                            : Stream.empty())
                    .findFirst()
                    .ifPresent(change::choose);
        }
    }

    private void readCheck() {
        read(
                "busy.check",
                () -> new CheckJob(services.workplace()).run(new CheckRequest(card, purpose.get(), about())),
                value -> check.set(new Reading.Ready<>(value)),
                error -> check.set(new Reading.Failed<>(error)));
    }

    private BoardRequest about() {
        return board.get().map(BoardRequest::of).orElse(BoardRequest.none());
    }

    private <T> void read(String busy, WorkQueue.Work<T> work, Consumer<T> done, Consumer<CardException> failed) {
        reads.add(services.queue().submit(services.words().of(busy), work, done, failed));
    }

    private void dropReads() {
        reads.forEach(WorkQueue.Ticket::drop);
        reads.clear();
    }
}
