package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.gui.BatchCards;
import bootmend.gui.text.Words;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.page.CardState;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Locale;
import java.util.Queue;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DeskTogetherTest {

    @TempDir
    private Path folder;

    private final Queue<Runnable> later = new ArrayDeque<>();
    private BatchCards made;
    private WindowSettings settings;
    private DeskModel desk;

    @BeforeEach
    void open() throws IOException {
        made = new BatchCards(Files.createDirectory(folder.resolve("cards")));
        settings = WindowSettings.load(folder.resolve("window.properties"));
        desk = desk();
    }

    /** A desk whose work waits until {@link #work} does it. */
    private DeskModel desk() {
        Services services = new Services(
                Workplace.ofThisComputer(folder.resolve("records")),
                new WorkQueue(later::add, Runnable::run),
                Runnable::run,
                new Words(Locale.ENGLISH));
        return new DeskModel(services, List::of, settings);
    }

    private void work() {
        while (!later.isEmpty()) {
            later.remove().run();
        }
    }

    @Test
    void cardsLookedAtBeforeKeepTheirOrderUntilTheNextStart() {
        for (String name : List.of("a.img", "b.img", "c.img")) {
            settings.remember(folder.resolve(name));
        }
        desk = desk();
        assertThat(names()).containsExactly("c.img", "b.img", "a.img");

        desk.look(folder.resolve("a.img").toAbsolutePath());
        desk.lookAtReaders();
        work();

        assertThat(names()).containsExactly("c.img", "b.img", "a.img");
        desk = desk();
        assertThat(names()).containsExactly("a.img", "c.img", "b.img");
    }

    @Test
    void cardsNamedTwiceAreListedOnce() throws IOException {
        Path card = made.stock("a.img");
        settings.remember(card);
        desk = desk();
        desk.offer(List.of(card, card));
        desk.offer(List.of(card));

        assertThat(desk.cards().get())
                .singleElement()
                .extracting(CardEntry::group)
                .isEqualTo(CardEntry.Group.OPENED);
    }

    @Test
    void aFolderOfImagesIsOpenedTogetherAndOneImageAlone() throws IOException {
        made.tuned(2);
        desk.open(List.of(folder.resolve("cards")));
        work();
        assertThat(desk.batch().get().orElseThrow().cards()).hasSize(2);
        assertThat(desk.current().get()).isEmpty();

        desk.open(List.of(folder.resolve("cards/lab-00001.img")));
        work();
        assertThat(desk.batch().get()).isEmpty();
        assertThat(desk.current().get().orElseThrow().card().card().getFileName())
                .hasToString("lab-00001.img");
    }

    @Test
    void whoeverGoesOnToOtherCardsStopsTheReadingOfTheseAndCanComeBack() throws IOException {
        List<Path> cards = made.tuned(3);
        desk.together(cards);
        BatchModel batch = desk.batch().get().orElseThrow();
        desk.look(cards.get(2));
        work();
        assertThat(batch.rows()).allMatch(row -> row.get().is(CardState.NOT_STARTED));

        desk.backTogether();
        work();
        assertThat(desk.batch().get()).contains(batch);
        assertThat(desk.current().get()).isEmpty();
        assertThat(batch.rows().get(2).get().is(CardState.SEEN)).isTrue();
        batch.read();
        work();
        assertThat(batch.rows()).allMatch(row -> row.get().is(CardState.SEEN));
    }

    @Test
    void stoppingWhatIsReadLeavesTheCardsThatWereNotBegun() throws IOException {
        desk.together(made.tuned(3));
        BatchModel batch = desk.batch().get().orElseThrow();

        desk.stop();
        work();

        assertThat(batch.state().get()).isInstanceOf(BatchState.Rest.class);
        assertThat(batch.rows())
                .allMatch(
                        row -> row.get().is(CardState.NOT_STARTED) && !row.get().waiting());
    }

    @Test
    void aBatchThatWritesIsNotStoppedAsReadingIs() throws IOException {
        desk.together(made.tuned(3));
        work();
        BatchModel batch = desk.batch().get().orElseThrow();
        batch.workOut(ChangeOrder.of(ChangeRequest.ToStock.PLAIN));
        work();
        batch.make();

        desk.stop();
        work();

        assertThat(batch.rows()).allMatch(row -> row.get().is(CardState.CHANGED));
    }

    @Test
    void theWindowClosesOnceTheCardsInWorkAreFinished() throws IOException {
        AtomicInteger closed = new AtomicInteger();
        desk.together(made.tuned(3));
        work();
        BatchModel batch = desk.batch().get().orElseThrow();
        batch.workOut(ChangeOrder.of(ChangeRequest.ToStock.PLAIN));
        work();
        batch.make();

        desk.close(closed::incrementAndGet);
        desk.close(closed::incrementAndGet);
        assertThat(closed).hasValue(0);
        work();

        assertThat(closed.get()).isPositive();
        assertThat(batch.rows()).allMatch(row -> row.get().is(CardState.NOT_STARTED));
    }

    @Test
    void atNoMomentBetweenTwoViewsIsNothingInView() throws IOException {
        List<Path> cards = made.tuned(2);
        desk.look(cards.get(0));
        desk.current()
                .watch(card -> assertThat(card.isPresent() || desk.batch().get().isPresent())
                        .isTrue());
        desk.together(cards);
        work();

        assertThat(desk.batch().get()).isPresent();
    }

    private List<String> names() {
        return desk.cards().get().stream().map(CardEntry::title).toList();
    }
}
