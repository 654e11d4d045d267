package bootmend.change;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Four cards, of which the first three are sisters, one reader, one store of records, and what must be true of them. */
final class SistersModel {

    private static final Path HOME = Path.of("/home");
    private static final Instant TIME = Instant.parse("2026-02-03T10:11:12Z");
    private static final int[][] SISTERS = {{0, 1, 2}, {0, 2, 1}, {1, 0, 2}, {1, 2, 0}, {2, 0, 1}, {2, 1, 0}};
    private static final int STRANGER = 3;

    /** One thing that is done with the cards. */
    record Step(Kind kind, int number) {
        @Override
        public String toString() {
            return kind + " " + number;
        }
    }

    enum Kind {
        SWAP,
        RESET,
        REPAIR_CUT,
        UNDO,
        FINISH,
        TAKE_BACK,
        FORGET
    }

    /** What the test itself knows of a record: whose it is, and what its card held before and would hold after it. */
    private record Known(int owner, int before, int after, int number, int undoes) {}

    /** Contents of cards by number, so that each is compared and looked at once, and what is planned for each. */
    private static final class Contents {
        private final Map<ByteBuffer, Integer> numbers = new HashMap<>();
        private final List<byte[]> all = new ArrayList<>();
        private final Map<String, Plan> plans = new HashMap<>();

        /** A content that is new must hold a config file that is whole, old or new. */
        int number(byte[] content) throws IOException {
            Integer known = numbers.get(ByteBuffer.wrap(content));
            if (known != null) {
                return known;
            }
            assertThat(new SmallCard(content).config()).isIn(SmallCard.OLD, SmallCard.NEW);
            numbers.put(ByteBuffer.wrap(content), all.size());
            all.add(content);
            return all.size() - 1;
        }
    }

    private final Contents contents;

    private final boolean keyed;
    private final boolean ticking;
    private final int[] cards;
    private final int inHand;
    private final Map<Path, byte[]> files;
    private final Map<String, Known> known;
    /** For each card the id of the record whose change was cut on it, or null where it is whole. */
    private final String[] torn;

    private SistersModel(
            Contents contents,
            boolean keyed,
            boolean ticking,
            int[] cards,
            int inHand,
            Map<Path, byte[]> files,
            Map<String, Known> known,
            String[] torn) {
        this.contents = contents;
        this.keyed = keyed;
        this.ticking = ticking;
        this.cards = cards;
        this.inHand = inHand;
        this.files = files;
        this.known = known;
        this.torn = torn;
    }

    static SistersModel start(boolean keyed, boolean ticking) throws IOException {
        Contents contents = new Contents();
        int sister = contents.number(SmallCard.of(7, SmallCard.OLD).bytes());
        int stranger = contents.number(SmallCard.of(8, SmallCard.OLD).bytes());
        return new SistersModel(
                contents,
                keyed,
                ticking,
                new int[] {sister, sister, sister, stranger},
                0,
                Map.of(),
                Map.of(),
                new String[STRANGER + 1]);
    }

    private Medium medium(int card) {
        return new Medium("/dev/reader", keyed ? "cid:" + card : "");
    }

    private Clock clock() {
        return Clock.fixed(ticking ? TIME.plusSeconds(10L * known.size()) : TIME, ZoneOffset.UTC);
    }

    private LocalDateTime now() {
        return LocalDateTime.now(clock());
    }

    private SmallCard card() {
        return new SmallCard(contents.all.get(cards[inHand]));
    }

    private Plan plan(Kind kind) throws CardException, IOException {
        String key = kind + " " + cards[inHand] + " " + now();
        Plan plan = contents.plans.get(key);
        if (plan == null) {
            plan = kind == Kind.RESET ? card().reset(now()) : card().repair(now());
            contents.plans.put(key, plan);
        }
        return plan;
    }

    /** Everything that can be done next. */
    List<Step> steps() throws CardException, IOException {
        List<Step> steps = new ArrayList<>();
        for (int other = 0; other <= STRANGER; other++) {
            if (other != inHand) {
                steps.add(new Step(Kind.SWAP, other));
            }
        }
        Plan reset = plan(Kind.RESET);
        cuts(reset).forEach(cut -> steps.add(new Step(Kind.RESET, cut)));
        if (!reset.isEmpty()) {
            steps.add(new Step(Kind.RESET, reset.sectorsWritten()));
        }
        cuts(plan(Kind.REPAIR_CUT)).forEach(cut -> steps.add(new Step(Kind.REPAIR_CUT, cut)));
        steps.add(new Step(Kind.UNDO, 0));
        steps.add(new Step(Kind.FINISH, 0));
        steps.add(new Step(Kind.TAKE_BACK, 0));
        int open = (int) files.keySet().stream()
                .filter(file -> file.getParent().equals(HOME.resolve("open")))
                .count();
        for (int number = 0; number < open; number++) {
            steps.add(new Step(Kind.FORGET, number));
        }
        return steps;
    }

    /** Numbers of writes that reach the card: up to each step's start, and one write into a step of several. */
    private static Set<Integer> cuts(Plan plan) {
        Set<Integer> cuts = new TreeSet<>();
        int writes = 0;
        for (PlanStep step : plan.steps()) {
            cuts.add(writes);
            if (step.kind() == PlanStep.Kind.PREPARE || step.kind() == PlanStep.Kind.FREE_LOST) {
                cuts.add(writes + 1);
            }
            writes += step.changes().size();
        }
        cuts.remove(writes);
        return cuts;
    }

    /** Does it on copies, and checks all that must be true then. */
    SistersModel take(Step step, Map<String, Integer> outcomes) throws CardException, IOException {
        if (step.kind() == Kind.SWAP) {
            return with(contents.all.get(cards[inHand]), step.number(), files, known, torn);
        }
        SmallCard card = card();
        MemoryRecords records = new MemoryRecords(files);
        UndoStore store = new UndoStore(HOME, records);
        Map<String, Known> knownAfter = new HashMap<>(known);
        String[] tornAfter = torn.clone();
        String outcome;
        try {
            outcome = switch (step.kind()) {
                case RESET -> commit(card, store, plan(Kind.RESET), step.number(), tornAfter, knownAfter, records);
                case REPAIR_CUT ->
                    commit(card, store, plan(Kind.REPAIR_CUT), step.number(), tornAfter, knownAfter, records);
                case UNDO -> undo(card, store, knownAfter, records);
                case FINISH -> recover(card, store, true, tornAfter);
                case TAKE_BACK -> recover(card, store, false, tornAfter);
                case FORGET -> forget(store, step.number(), tornAfter);
                case SWAP -> throw new IllegalStateException();
            };
        } catch (CardException e) {
            assertThat(e.kind()).as(e.getMessage()).isNotEqualTo(CardException.Kind.INTERRUPTED);
            assertThat(contents.number(card.bytes()) == cards[inHand])
                    .as("a refusal writes nothing: " + e.getMessage())
                    .isTrue();
            assertThat(records.files()).as("and keeps the records").isEqualTo(files);
            outcome = "refused";
        }
        outcomes.merge(outcome, 1, Integer::sum);
        SistersModel after = with(card.bytes(), inHand, records.files(), knownAfter, tornAfter);
        after.check(outcome);
        return after;
    }

    private SistersModel with(
            byte[] content, int hand, Map<Path, byte[]> records, Map<String, Known> knownThen, String[] tornThen)
            throws IOException {
        int[] cardsThen = cards.clone();
        cardsThen[inHand] = contents.number(content);
        return new SistersModel(contents, keyed, ticking, cardsThen, hand, records, knownThen, tornThen);
    }

    /** As every change is begun: not where one waits. */
    private void refuseWhenWaiting(SmallCard card, UndoStore store) throws CardException, IOException {
        if (look(card, store).forbidsChanges()) {
            throw CardException.refused("a change waits", "Recover it.");
        }
    }

    /** What is found; an exact one is never a sister's. */
    private Interruption look(SmallCard card, UndoStore store) throws CardException, IOException {
        Interruption found = new Recovery(card.target(medium(inHand)), store).look();
        found.exact()
                .ifPresent(change -> assertThat(known.get(change.record().id()).owner())
                        .as("the record is this card's own")
                        .isEqualTo(inHand));
        return found;
    }

    private String commit(
            SmallCard card,
            UndoStore store,
            Plan plan,
            int writes,
            String[] tornAfter,
            Map<String, Known> knownAfter,
            MemoryRecords records)
            throws CardException, IOException {
        refuseWhenWaiting(card, store);
        boolean cut = writes < plan.sectorsWritten();
        if (cut) {
            card.failAfter(writes);
        }
        int before = contents.number(card.bytes());
        try {
            new Committer(store, clock()).commit(card.target(medium(inHand)), plan);
            assertThat(cut).isFalse();
        } catch (CardException e) {
            assertThat(cut && e.kind() == CardException.Kind.INTERRUPTED)
                    .as(e.getMessage())
                    .isTrue();
        }
        String id = note(before, applied(before, plan), -1, knownAfter, records);
        if (cut && before != contents.number(card.bytes())) {
            tornAfter[inHand] = id;
        }
        return cut ? "cut" : "done";
    }

    /** Remembers whose the one new record is. */
    private String note(int before, int after, int undoes, Map<String, Known> knownAfter, MemoryRecords records) {
        String id = ids(records.files()).keySet().stream()
                .filter(each -> !knownAfter.containsKey(each))
                .findFirst()
                .orElseThrow();
        knownAfter.put(id, new Known(inHand, before, after, knownAfter.size(), undoes));
        return id;
    }

    private int applied(int before, Plan plan) throws IOException {
        byte[] after = contents.all.get(before).clone();
        plan.steps()
                .forEach(step -> step.changes()
                        .forEach(change -> System.arraycopy(
                                change.after(), 0, after, Math.toIntExact(change.offset()), change.after().length)));
        return contents.number(after);
    }

    private String undo(SmallCard card, UndoStore store, Map<String, Known> knownAfter, MemoryRecords records)
            throws CardException, IOException {
        refuseWhenWaiting(card, store);
        Target target = card.target(medium(inHand));
        History history = History.of(target, store);
        for (UndoRecord record : history.oldestFirst()) {
            assertThat(known.get(record.id()).owner())
                    .as("history is of this card")
                    .isEqualTo(inHand);
        }
        Optional<UndoRecord> last = history.lastToUndo();
        if (last.isEmpty()) {
            return history.untold().isEmpty() ? "no change to undo" : "history cannot be told";
        }
        int before = contents.number(card.bytes());
        Plan back = new UndoPlanner(target).plan(last.get(), now(), false);
        new Committer(store, clock()).undo(target, back, last.get());
        note(before, applied(before, back), known.get(last.get().id()).number(), knownAfter, records);
        Known its = known.get(last.get().id());
        assertThat(card.config()).isEqualTo(new SmallCard(contents.all.get(its.before())).config());
        if (before == its.after()) {
            assertThat(contents.number(card.bytes()) == its.before())
                    .as("undone to the very bytes")
                    .isTrue();
        }
        return "change undone";
    }

    /** A user who is asked which record it is knows. */
    private String recover(SmallCard card, UndoStore store, boolean finish, String[] tornAfter)
            throws CardException, IOException {
        Interruption found = look(card, store);
        Recovery recovery = new Recovery(card.target(medium(inHand)), store);
        Optional<OpenChange> change = found.exact();
        if (found instanceof Interruption.Ambiguous ambiguous) {
            assertThat(keyed).as("told apart by its key: %s", found).isFalse();
            change = ambiguous.candidates().stream()
                    .filter(candidate -> known.get(candidate.record().id()).owner() == inHand)
                    .reduce((older, newer) -> newer);
        }
        if (change.isEmpty()) {
            return "recover: " + found.getClass().getSimpleName();
        }
        OpenChange chosen = recovery.named(change.get().record().id()).orElseThrow();
        Known its = known.get(chosen.record().id());
        Recovered recovered = finish ? recovery.finish(chosen) : recovery.undo(chosen);
        assertThat(contents.number(card.bytes()) == (finish ? its.after() : its.before()))
                .as("finished or undone to the very bytes")
                .isTrue();
        tornAfter[inHand] = null;
        if (found instanceof Interruption.Ambiguous) {
            return "recover: Ambiguous";
        }
        return recovered.getClass().getSimpleName().toLowerCase(Locale.ROOT);
    }

    private String forget(UndoStore store, int number, String[] tornAfter) throws CardException, IOException {
        UndoRecord record = store.open().get(number);
        store.forget(record.id());
        int owner = known.get(record.id()).owner();
        if (record.id().equals(tornAfter[owner])) {
            // On the user's word: the card stays as it is, and its record is kept.
            tornAfter[owner] = "forgotten " + record.id();
        }
        return "forgotten";
    }

    /** Every card is whole or its record waits for it. */
    private void check(String outcome) throws CardException, IOException {
        Map<String, String> places = ids(files);
        for (int each = 0; each < cards.length; each++) {
            if (torn[each] != null) {
                String id = torn[each].replace("forgotten ", "");
                assertThat(places.get(id))
                        .as("the record of torn card %s after %s", each, outcome)
                        .isEqualTo(torn[each].equals(id) ? "open" : "forgotten");
            }
        }
        if (torn[inHand] != null && !torn[inHand].startsWith("forgotten")) {
            assertRecoverable();
        }
    }

    private void assertRecoverable() throws CardException, IOException {
        SmallCard card = card();
        Interruption found = look(card, new UndoStore(HOME, new MemoryRecords(files)));
        List<OpenChange> offered = found instanceof Interruption.Ambiguous ambiguous
                ? ambiguous.candidates()
                : found.exact().stream().toList();
        assertThat(offered)
                .as("a torn card's own record is offered: %s", found)
                .anyMatch(change -> change.record().id().equals(torn[inHand]));
        if (keyed) {
            assertThat(found).isInstanceOf(Interruption.Exact.class);
        }
    }

    /** Each record's id and the folder that it lies in. */
    private static Map<String, String> ids(Map<Path, byte[]> files) {
        Map<String, String> ids = new TreeMap<>();
        for (Path file : files.keySet()) {
            String name = file.getFileName().toString();
            String rest = name.substring(name.indexOf('_') + 1);
            String top = HOME.relativize(file).getName(0).toString();
            ids.put(rest.substring(0, rest.indexOf('.')), name.contains("taken-back") ? "undone" : top);
        }
        return ids;
    }

    /** The same for models that differ only in the random ends of names and in which sister is which. */
    String key() {
        return Arrays.stream(SISTERS).map(this::key).min(String::compareTo).orElseThrow();
    }

    private String key(int[] sisters) {
        StringBuilder key = new StringBuilder();
        for (int sister : sisters) {
            key.append(cardKey(sister)).append(',');
        }
        key.append(cardKey(STRANGER)).append(" in hand ").append(place(sisters, inHand));
        Map<String, String> places = ids(files);
        int i = 0;
        for (Map.Entry<String, String> record : places.entrySet()) {
            Known its = known.get(record.getKey());
            key.append('|')
                    .append(place(sisters, its.owner()))
                    .append(record.getValue())
                    .append(its.before())
                    .append('-')
                    .append(its.after())
                    .append(its.number() == i)
                    .append(its.undoes());
            i++;
        }
        return key.toString();
    }

    private String cardKey(int card) {
        return cards[card]
                + (torn[card] == null
                        ? ""
                        : "torn"
                                + known.get(torn[card].replace("forgotten ", ""))
                                        .number());
    }

    private static int place(int[] sisters, int card) {
        for (int i = 0; i < sisters.length; i++) {
            if (sisters[i] == card) {
                return i;
            }
        }
        return STRANGER;
    }
}
