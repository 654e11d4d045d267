package bootmend.gui.model;

import bootmend.CardException;
import bootmend.earlier.SearchProgress;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.view.EarlierJob;
import bootmend.view.EarlierVersionView;
import bootmend.view.EarlierView;
import bootmend.view.TextComparison;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicBoolean;

/** What the card's config file was before: found at once near it, then in all of the free space; and two texts compared. */
public final class EarlierModel {

    private static final int ALL = 100;

    private final Services services;
    private final CardRequest card;
    private final ChangeModel change;
    private final Watched<Reading<EarlierView>> found = new Watched<>(new Reading.Unasked<>());
    private final Watched<OptionalInt> progress = new Watched<>(OptionalInt.empty());
    private final Watched<Optional<String>> chosen = new Watched<>(Optional.empty());
    private final Watched<Optional<String>> against = new Watched<>(Optional.empty());
    private final AtomicBoolean stop = new AtomicBoolean();
    private WorkQueue.Ticket search = () -> {};

    EarlierModel(Services services, CardRequest card, ChangeModel change) {
        this.services = services;
        this.card = card;
        this.change = change;
    }

    public Watched<Reading<EarlierView>> found() {
        return found;
    }

    /** How far a search of the free space is, in percent; empty while none is under way. */
    public Watched<OptionalInt> progress() {
        return progress;
    }

    /** The version that is looked at, by its hash. */
    public Watched<Optional<String>> chosen() {
        return chosen;
    }

    /** The version that it is compared with, by its hash; empty for the present file. */
    public Watched<Optional<String>> against() {
        return against;
    }

    /** Nothing is known of the card any more. */
    void forget() {
        stop.set(true);
        search.drop();
        progress.set(OptionalInt.empty());
        found.set(new Reading.Unasked<>());
    }

    /** Looks at what is found at once, unless that was done. */
    public void look() {
        if (found.get() instanceof Reading.Unasked) {
            found.set(new Reading.Waiting<>());
            read("busy.earlier", SearchProgress.AT_ONCE);
        }
    }

    /** Searches all of the free space; what was found at once stays in view meanwhile. */
    public void searchAll() {
        if (progress.get().isPresent()) {
            return;
        }
        stop.set(false);
        progress.set(OptionalInt.of(0));
        int[] told = {0};
        read("busy.search", (done, all) -> {
            int percent = all == 0 ? ALL : (int) (done * ALL / all);
            if (percent != told[0]) {
                told[0] = percent;
                services.screen().execute(() -> tell(percent));
            }
            return !stop.get();
        });
    }

    /** Ends the search; what was found by then is shown. */
    public void stopSearch() {
        stop.set(true);
    }

    private void tell(int percent) {
        if (progress.get().isPresent()) {
            progress.set(OptionalInt.of(percent));
        }
    }

    private void read(String busy, SearchProgress how) {
        search.drop();
        search = services.queue()
                .submit(
                        services.words().of(busy),
                        () -> new EarlierJob(services.workplace()).run(card, BoardRequest.none(), how),
                        this::show,
                        this::fail);
    }

    private void show(EarlierView view) {
        progress.set(OptionalInt.empty());
        if (version(view, chosen.get()).isEmpty()) {
            chosen.set(view.beforeNow()
                    .or(() -> view.versions().stream().findFirst())
                    .map(EarlierVersionView::sha256));
        }
        if (version(view, against.get()).isEmpty()) {
            against.set(Optional.empty());
        }
        found.set(new Reading.Ready<>(view));
    }

    private void fail(CardException error) {
        progress.set(OptionalInt.empty());
        found.set(new Reading.Failed<>(error));
    }

    public void choose(String hash) {
        chosen.set(Optional.of(hash));
    }

    /** @param hash empty for the present file */
    public void compareWith(Optional<String> hash) {
        against.set(hash);
    }

    /** The version that is looked at. */
    public Optional<EarlierVersionView> version() {
        return found.get().value().flatMap(view -> version(view, chosen.get()));
    }

    private static Optional<EarlierVersionView> version(EarlierView view, Optional<String> hash) {
        return hash.flatMap(wanted -> view.versions().stream()
                .filter(each -> each.sha256().equals(wanted))
                .findFirst());
    }

    /** The version that is looked at, on the left, beside what it is compared with. */
    public Optional<TextComparison> comparison() {
        return version().map(left -> TextComparison.of(left.lines(), other()));
    }

    private List<String> other() {
        EarlierView view = found.get().value().orElseThrow();
        return version(view, against.get())
                .map(EarlierVersionView::lines)
                .orElseGet(() -> view.now().map(EarlierView.Present::lines).orElse(List.of()));
    }

    /** Works out what putting the version back would do. */
    public void putBack(boolean whole) {
        version()
                .ifPresent(each -> change.choose(
                        ChangeOrder.of(new ChangeRequest.ToEarlier(each.sha256(), whole, Optional.empty()))));
    }
}
