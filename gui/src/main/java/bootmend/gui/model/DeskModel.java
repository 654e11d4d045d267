package bootmend.gui.model;

import bootmend.CardException;
import bootmend.job.AttachedCard;
import bootmend.job.CardNames;
import bootmend.job.CardRequest;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;

/** The whole window: which cards there are, and which one is looked at. */
public final class DeskModel {

    private final Services services;
    private final Bench.Work<List<AttachedCard>> readers;
    private final WindowSettings settings;
    private final Watched<List<CardEntry>> cards = new Watched<>(List.of());
    private final Watched<Optional<CardModel>> current = new Watched<>(Optional.empty());
    private final Watched<Optional<BatchModel>> batch = new Watched<>(Optional.empty());
    private final Watched<Optional<CardException>> problem = new Watched<>(Optional.empty());
    private final Set<Path> seenInReaders = new HashSet<>();
    private List<CardEntry> inReaders = List.of();
    private List<CardEntry> opened = List.of();
    private boolean listing;

    /** @param readers lists what is attached to this computer */
    public DeskModel(Services services, Bench.Work<List<AttachedCard>> readers, WindowSettings settings) {
        this.services = services;
        this.readers = readers;
        this.settings = settings;
        gather();
    }

    public Services services() {
        return services;
    }

    public WindowSettings settings() {
        return settings;
    }

    /** Every card that can be looked at, those in readers first; each once. */
    public Watched<List<CardEntry>> cards() {
        return cards;
    }

    /** The card that is looked at. */
    public Watched<Optional<CardModel>> current() {
        return current;
    }

    /** Several cards that are worked on together; they take the place of the one card. */
    public Watched<Optional<BatchModel>> batch() {
        return batch;
    }

    /** What kept a card from being listed or opened at all. */
    public Watched<Optional<CardException>> problem() {
        return problem;
    }

    /** Looks what is attached to this computer, unless that is going on already. */
    public void lookAtReaders() {
        if (!listing) {
            listing = true;
            services.bench().submit(services.words().of("busy.readers"), readers, this::listed, error -> {
                listing = false;
                problem.set(Optional.of(error));
            });
        }
    }

    /** Opens cards that were named or dropped: one to look at, several to work on together. */
    public void open(List<Path> paths) {
        if (paths.isEmpty()) {
            return;
        }
        expand(paths, found -> {
            offer(found);
            if (found.size() == 1) {
                look(found.get(0));
            } else if (found.size() > 1) {
                together(found);
            }
        });
    }

    /** Lists cards without opening any. */
    public void offer(List<Path> paths) {
        List<CardEntry> next = new ArrayList<>(opened);
        for (Path path : paths) {
            if (next.stream().noneMatch(entry -> entry.path().equals(path))) {
                next.add(CardEntry.file(path, CardEntry.Group.OPENED));
            }
        }
        opened = List.copyOf(next);
        gather();
    }

    /** Looks at one card; while a change is being written to another, that one stays in view. */
    public void look(Path path) {
        if (isWriting()) {
            return;
        }
        leave();
        batch.set(Optional.empty());
        CardModel model = new CardModel(services, CardRequest.of(path), settings.board());
        model.board().watch(board -> {
            settings.setBoard(board);
            settings.save();
        });
        if (inReaders.stream().noneMatch(entry -> entry.path().equals(path))) {
            offer(List.of(path));
            settings.remember(path);
            settings.save();
        }
        current.set(Optional.of(model));
        model.read();
    }

    /** Works on several cards together. */
    public void together(List<Path> paths) {
        if (isWriting()) {
            return;
        }
        leave();
        current.set(Optional.empty());
        batch.set(Optional.of(new BatchModel(services, paths)));
    }

    /** Stops whatever is being read; a change to a card is never stopped. */
    public void stop() {
        services.bench().stop(CardException.refused(services.words().of("stopped.what"),
                services.words().of("stopped.remedy")));
    }

    private boolean isWriting() {
        return current.get().filter(model -> model.change().state().get() instanceof ChangeState.Making).isPresent();
    }

    private void leave() {
        problem.set(Optional.empty());
        current.get().ifPresent(CardModel::leave);
    }

    private void expand(List<Path> paths, Consumer<List<Path>> found) {
        services.bench().submitFirst(services.words().of("busy.names"),
                () -> new CardNames(true).expand(paths.stream().map(path -> path.toAbsolutePath().toString()).toList()),
                found, error -> problem.set(Optional.of(error)));
    }

    private void listed(List<AttachedCard> attached) {
        listing = false;
        inReaders = attached.stream()
                .filter(card -> card.system().isEmpty() && (card.removable() || card.boot() == AttachedCard.Boot.YES))
                .map(CardEntry::reader).toList();
        gather();
        lookAtTheOnlyOne(attached);
        List<Path> now = attached.stream().map(card -> Path.of(card.path())).toList();
        seenInReaders.addAll(now);
        current.get().filter(model -> seenInReaders.contains(model.card().card()))
                .ifPresent(model -> model.setGone(!now.contains(model.card().card())));
    }

    /** A card that was just put in is what the user wants to see, unless another is in view. */
    private void lookAtTheOnlyOne(List<AttachedCard> attached) {
        List<Path> fresh = attached.stream().filter(card -> card.boot() == AttachedCard.Boot.YES && card.removable())
                .map(card -> Path.of(card.path())).filter(path -> !seenInReaders.contains(path)).toList();
        if (fresh.size() == 1 && current.get().isEmpty() && batch.get().isEmpty()) {
            look(fresh.get(0));
        }
    }

    private void gather() {
        List<CardEntry> all = new ArrayList<>(inReaders);
        opened.stream().filter(entry -> all.stream().noneMatch(each -> each.path().equals(entry.path())))
                .toList().forEach(all::add);
        settings.cards().stream().map(path -> CardEntry.file(path, CardEntry.Group.EARLIER))
                .filter(entry -> all.stream().noneMatch(each -> each.path().equals(entry.path())))
                .toList().forEach(all::add);
        cards.set(List.copyOf(all));
    }
}
