package bootmend.gui.model;

import bootmend.CardException;
import bootmend.batch.CardNames;
import bootmend.batch.CutBatch;
import bootmend.batch.CutBatches;
import bootmend.batch.NamedCards;
import bootmend.request.CardRequest;
import bootmend.view.AttachedCard;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** The whole window: which cards there are, and which one is looked at. */
public final class DeskModel {

    private final Services services;
    private final WorkQueue.Work<List<AttachedCard>> readers;
    private final WindowSettings settings;
    private final Watched<List<CardEntry>> cards = new Watched<>(List.of());
    private final Watched<Optional<CardModel>> current = new Watched<>(Optional.empty());
    private final Watched<Optional<BatchModel>> batch = new Watched<>(Optional.empty());
    private final Watched<Optional<CardException>> problem = new Watched<>(Optional.empty());
    private final Watched<Optional<String>> leftOut = new Watched<>(Optional.empty());
    private final Watched<List<CutBatch>> cutBatches = new Watched<>(List.of());
    private final Map<Path, AttachedCard> seenInReaders = new HashMap<>();
    private List<CardEntry> inReaders = List.of();
    private final List<CardEntry> earlier;
    private List<CardEntry> opened = List.of();
    private Optional<BatchModel> beside = Optional.empty();
    private boolean listing;
    private boolean listAgain;

    /** @param readers lists what is attached to this computer */
    public DeskModel(Services services, WorkQueue.Work<List<AttachedCard>> readers, WindowSettings settings) {
        this.services = services;
        this.readers = readers;
        this.settings = settings;
        // In the order of the start: a list that changes its order under the keyboard cannot be walked through.
        this.earlier = settings.cards().stream()
                .map(path -> CardEntry.file(path, CardEntry.Group.EARLIER))
                .toList();
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

    /** What the folder that was opened last holds besides cards, in a sentence. */
    public Watched<Optional<String>> leftOut() {
        return leftOut;
    }

    /** Batches of changes that were cut and that nobody was told of yet. */
    public Watched<List<CutBatch>> cutBatches() {
        return cutBatches;
    }

    /** Where a batch's journal is kept once it was told. */
    public Path kept(CutBatch batch) {
        return new CutBatches(services.workplace().home()).kept(batch);
    }

    /** Looks for batches that were cut; to be done once, before this window begins one of its own. */
    public void lookForCutBatches() {
        CutBatches batches = new CutBatches(services.workplace().home());
        services.queue()
                .submitFirst(services.words().of("busy.batches"), batches::untold, cutBatches::set, error -> {});
    }

    /** Whoever is at the window was told of it. */
    public void told(CutBatch batch) {
        cutBatches.set(
                cutBatches.get().stream().filter(other -> !other.equals(batch)).toList());
        CutBatches batches = new CutBatches(services.workplace().home());
        services.queue()
                .submitFirst(
                        services.words().of("busy.batches"),
                        () -> {
                            try {
                                batches.told(batch);
                                return batch;
                            } catch (IOException e) {
                                throw CardException.refused(
                                        services.words().of("cutbatch.kept", batch.journal(), e.getMessage()),
                                        services.words().of("cutbatch.kept.remedy"),
                                        e);
                            }
                        },
                        done -> {},
                        error -> problem.set(Optional.of(error)));
    }

    /** Looks what is attached to this computer; while that is going on, once more after it. */
    public void lookAtReaders() {
        if (listing) {
            // What is under way may have looked already before whatever the user now wants to see.
            listAgain = true;
            return;
        }
        listing = true;
        services.queue().submit(services.words().of("busy.readers"), readers, this::listed, error -> {
            problem.set(Optional.of(error));
            listingEnded();
        });
    }

    private void listingEnded() {
        listing = false;
        if (listAgain) {
            listAgain = false;
            lookAtReaders();
        }
    }

    /** Opens cards that were named or dropped: one to look at, several to work on together. */
    public void open(List<Path> paths) {
        if (paths.isEmpty()) {
            return;
        }
        expand(paths, named -> {
            List<Path> found = named.cards();
            offer(found);
            if (found.size() == 1) {
                look(found.get(0));
            } else if (found.size() > 1) {
                together(found);
            }
            leftOut.set(named.note());
        });
    }

    /** Lists cards without opening any. */
    public void offer(List<Path> paths) {
        List<CardEntry> next = new ArrayList<>(opened);
        Set<Path> known = paths(opened);
        for (Path path : paths) {
            if (known.add(path)) {
                next.add(CardEntry.file(path, CardEntry.Group.OPENED));
            }
        }
        opened = List.copyOf(next);
        gather();
    }

    /** What is in view is in the list; what is there already stays where it is. */
    private void offerUnlisted(Path path) {
        if (cards.get().stream().noneMatch(entry -> entry.path().equals(path))) {
            offer(List.of(path));
        }
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
            if (!settings.board().equals(board)) {
                settings.setBoard(board);
                settings.save();
            }
        });
        if (inReaders.stream().noneMatch(entry -> entry.path().equals(path))) {
            offerUnlisted(path);
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
        BatchModel model = new BatchModel(services, paths, this::look);
        beside = Optional.of(model);
        model.read();
        show(model);
    }

    /** Stops whatever is being read; a change to a card is never stopped. */
    public void stop() {
        if (!isWriting()) {
            batch.get().ifPresent(BatchModel::stop);
        }
        services.queue()
                .stop(CardException.refused(
                        services.words().of("stopped.what"), services.words().of("stopped.remedy")));
    }

    /** The cards that were worked on together before one of them was looked at alone; they can be gone back to. */
    public Optional<BatchModel> beside() {
        return beside;
    }

    /** Goes back to the cards that were worked on together, with what was found about them. */
    public void backTogether() {
        if (!isWriting() && batch.get().isEmpty() && beside.isPresent()) {
            Optional<Path> alone = current.get().map(model -> model.card().card());
            leave();
            show(beside.get());
            alone.ifPresent(beside.get()::lookAgain);
        }
    }

    private void show(BatchModel model) {
        // In this order, so that at no moment nothing is in view.
        batch.set(Optional.of(model));
        current.set(Optional.empty());
    }

    /** Whether a card is being changed; until that is over, the card or the cards in view stay there. */
    public boolean isWriting() {
        return isChangeMaking() || batch.get().filter(BatchModel::isWriting).isPresent();
    }

    private boolean isChangeMaking() {
        return current.get()
                .filter(model -> model.change().state().get() instanceof ChangeState.Making)
                .isPresent();
    }

    /**
     * Begins no other card, and does {@code then} as soon as nothing is being written: cards in work are finished,
     * because a change is not left half made.
     */
    public void close(Runnable then) {
        batch.get().ifPresent(BatchModel::stop);
        current.get().ifPresent(CardModel::leave);
        whenAtRest(this::isWriting, then);
    }

    /** Whether a change to a card, or a change or a check of several, is under way. */
    public boolean isInHand() {
        return isChangeMaking() || batch.get().filter(BatchModel::isInHand).isPresent();
    }

    /** Whether what is under way is work on several cards, of which others can be left out. */
    public boolean isBatchInHand() {
        return batch.get().filter(BatchModel::isInHand).isPresent();
    }

    /** Does {@code then} as soon as no change and no batch is under way any more. */
    public void whenOver(Runnable then) {
        whenAtRest(this::isInHand, then);
    }

    private void whenAtRest(BooleanSupplier working, Runnable then) {
        if (!working.getAsBoolean()) {
            then.run();
            return;
        }
        boolean[] over = {false};
        Runnable look = () -> {
            if (!over[0] && !working.getAsBoolean()) {
                over[0] = true;
                then.run();
            }
        };
        batch.get().ifPresent(model -> model.state().watch(state -> look.run()));
        current.get().ifPresent(model -> model.change().state().watch(state -> look.run()));
    }

    private void leave() {
        problem.set(Optional.empty());
        leftOut.set(Optional.empty());
        current.get().ifPresent(CardModel::leave);
        batch.get().ifPresent(BatchModel::stop);
    }

    private void expand(List<Path> paths, Consumer<NamedCards> found) {
        services.queue()
                .submitFirst(
                        services.words().of("busy.names"),
                        () -> new CardNames(true)
                                .expand(paths.stream()
                                        .map(path -> path.toAbsolutePath().toString())
                                        .toList()),
                        found,
                        error -> problem.set(Optional.of(error)));
    }

    private void listed(List<AttachedCard> attached) {
        inReaders = attached.stream()
                .filter(card -> card.system().isEmpty() && (card.removable() || card.boot() == AttachedCard.Boot.YES))
                .map(CardEntry::reader)
                .toList();
        gather();
        lookAtTheOnlyOne(attached);
        Map<Path, AttachedCard> now = new HashMap<>();
        attached.forEach(card -> now.put(Path.of(card.path()), card));
        current.get()
                .filter(model -> seenInReaders.containsKey(model.card().card()))
                .ifPresent(model -> seen(model, now.get(model.card().card())));
        seenInReaders.putAll(now);
        listingEnded();
    }

    /** @param now the disk at the card's place; null where there is none any more */
    private void seen(CardModel model, AttachedCard now) {
        if (now != null && !now.equals(seenInReaders.get(model.card().card()))) {
            // Another card in the same reader, or the same one put in again, between two looks.
            model.setGone(true);
        }
        model.setGone(now == null);
    }

    /** A card that was just put in is what the user wants to see, unless another is in view. */
    private void lookAtTheOnlyOne(List<AttachedCard> attached) {
        List<Path> fresh = attached.stream()
                .filter(card -> card.boot() == AttachedCard.Boot.YES && card.removable())
                .map(card -> Path.of(card.path()))
                .filter(path -> !seenInReaders.containsKey(path))
                .toList();
        if (fresh.size() == 1 && current.get().isEmpty() && batch.get().isEmpty()) {
            look(fresh.get(0));
        }
    }

    private void gather() {
        List<CardEntry> all = new ArrayList<>(inReaders);
        Set<Path> listed = paths(inReaders);
        for (List<CardEntry> group : List.of(opened, earlier)) {
            group.stream().filter(entry -> listed.add(entry.path())).forEach(all::add);
        }
        cards.set(List.copyOf(all));
    }

    private static Set<Path> paths(List<CardEntry> entries) {
        return entries.stream().map(CardEntry::path).collect(Collectors.toCollection(HashSet::new));
    }
}
