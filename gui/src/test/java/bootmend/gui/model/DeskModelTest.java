package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import bootmend.gui.SmallCards;
import bootmend.gui.text.Words;
import bootmend.view.AttachedCard;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which cards there are, and which one is looked at. */
class DeskModelTest {

    @TempDir
    private Path folder;

    private final List<AttachedCard> attached = new ArrayList<>();
    private DeskModel desk;

    @BeforeEach
    void open() {
        desk = desk();
    }

    @Test
    void theOnlyCardThatIsPutInIsLookedAt() throws IOException {
        Path card = card("in-reader.img");
        attached.add(attached(card, true, Optional.empty()));

        desk.lookAtReaders();

        assertThat(desk.current().get().orElseThrow().card().card()).isEqualTo(card);
        assertThat(desk.cards().get()).extracting(CardEntry::group).containsExactly(CardEntry.Group.READER);
    }

    @Test
    void aCardInViewIsNotPushedAsideByOneThatIsPutIn() throws IOException {
        desk.look(card("opened.img"));
        attached.add(attached(card("in-reader.img"), true, Optional.empty()));

        desk.lookAtReaders();

        assertThat(desk.current().get().orElseThrow().card().card()).isEqualTo(folder.resolve("opened.img"));
    }

    @Test
    void ofTwoCardsNoneIsTakenForTheUsersOwn() throws IOException {
        attached.add(attached(card("one.img"), true, Optional.empty()));
        attached.add(attached(card("two.img"), true, Optional.empty()));

        desk.lookAtReaders();

        assertThat(desk.current().get()).isEmpty();
    }

    @Test
    void aLookThatIsAskedForDuringALookComesAfterIt() throws IOException {
        Deque<Runnable> worker = new ArrayDeque<>();
        List<List<AttachedCard>> lists =
                new ArrayList<>(List.of(List.of(), List.of(attached(card("in-reader.img"), false, Optional.empty()))));
        DeskModel slow = new DeskModel(
                new Services(
                        Workplace.ofThisComputer(folder.resolve("home")),
                        new WorkQueue(worker::add, Runnable::run),
                        Runnable::run,
                        new Words(Locale.ENGLISH)),
                () -> lists.remove(0),
                WindowSettings.load(folder.resolve("settings")));

        slow.lookAtReaders();
        slow.lookAtReaders();
        slow.lookAtReaders();
        worker.remove().run();
        worker.remove().run();

        assertThat(worker).isEmpty();
        assertThat(slow.cards().get()).extracting(CardEntry::title).containsExactly("in-reader");
    }

    @Test
    void anotherCardInTheSameReaderIsReadAnew() throws IOException {
        Path reader = card("in-reader.img");
        attached.add(attached(reader, true, Optional.empty()));
        desk.lookAtReaders();
        Files.move(
                SmallCards.write(folder, "other.img", "dtparam=audio=on\n"),
                reader,
                StandardCopyOption.REPLACE_EXISTING);

        desk.lookAtReaders();
        assertThat(tuned()).as("nothing says that it is another card").isTrue();

        AttachedCard larger = new AttachedCard(
                reader.toString(),
                1 << 21,
                "reader",
                "usb",
                true,
                false,
                AttachedCard.Boot.YES,
                "",
                Optional.empty(),
                List.of(),
                List.of());
        attached.set(0, larger);
        desk.lookAtReaders();

        assertThat(tuned()).isFalse();
        assertThat(desk.current().get().orElseThrow().change().canMake()).isFalse();
    }

    private boolean tuned() {
        return !desk.current()
                .get()
                .orElseThrow()
                .sheet()
                .get()
                .value()
                .orElseThrow()
                .show()
                .card()
                .isStock();
    }

    @Test
    void theDiskOfTheRunningSystemIsNotListed() throws IOException {
        attached.add(attached(card("system.img"), false, Optional.of("it is mounted at /")));
        attached.add(attached(card("built-in.img"), false, Optional.empty()));

        desk.lookAtReaders();

        assertThat(desk.cards().get()).extracting(CardEntry::title).containsExactly("built-in");
    }

    @Test
    void oneCardThatIsOpenedIsLookedAtAndSeveralAreTakenTogether() throws IOException {
        Path one = card("one.img");
        Path two = card("two.img");

        desk.open(List.of(one));
        assertThat(desk.current().get()).isPresent();

        desk.open(List.of(one, two));
        assertThat(desk.current().get()).isEmpty();
        assertThat(desk.batch().get().orElseThrow().cards()).containsExactly(one, two);
    }

    @Test
    void aFolderOfImagesIsOpenedAsItsImages() throws IOException {
        Path shelf = Files.createDirectory(folder.resolve("shelf"));
        SmallCards.write(shelf, "a.img", SmallCards.TUNED);
        SmallCards.write(shelf, "b.img", SmallCards.TUNED);
        Files.writeString(shelf.resolve("notes.txt"), "the blue book");

        desk.open(List.of(shelf));

        assertThat(desk.batch().get().orElseThrow().cards())
                .containsExactly(shelf.resolve("a.img"), shelf.resolve("b.img"));
    }

    @Test
    void cardsThatWereLookedAtAreThereAtTheNextStart() throws IOException {
        desk.look(card("one.img"));

        assertThat(desk().cards().get())
                .extracting(CardEntry::path, CardEntry::group)
                .containsExactly(tuple(folder.resolve("one.img"), CardEntry.Group.EARLIER));
    }

    private DeskModel desk() {
        Services services = new Services(
                Workplace.ofThisComputer(folder.resolve("home")),
                new WorkQueue(Runnable::run, Runnable::run),
                Runnable::run,
                new Words(Locale.ENGLISH));
        return new DeskModel(
                services,
                () -> List.copyOf(attached),
                WindowSettings.load(folder.resolve("home").resolve("window.properties")));
    }

    private Path card(String name) throws IOException {
        return SmallCards.write(folder, name, SmallCards.TUNED);
    }

    private static AttachedCard attached(Path card, boolean removable, Optional<String> system) {
        return new AttachedCard(
                card.toString(),
                1 << 20,
                card.getFileName().toString().replace(".img", ""),
                "usb",
                removable,
                false,
                AttachedCard.Boot.YES,
                "",
                system,
                List.of(),
                List.of());
    }
}
