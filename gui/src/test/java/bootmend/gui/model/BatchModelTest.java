package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.finding.Purpose;
import bootmend.gui.BatchCards;
import bootmend.gui.text.Words;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.HistoryJob;
import bootmend.page.CardState;
import bootmend.record.ProfileJob;
import bootmend.record.ProfileListing;
import bootmend.record.ProfileView;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BatchModelTest {

    private static final ChangeOrder STOCK = ChangeOrder.of(ChangeRequest.ToStock.PLAIN);

    @TempDir
    private Path folder;

    private final List<Path> lookedAt = new ArrayList<>();
    private BatchCards cards;
    private Services services;

    @BeforeEach
    void set() throws IOException {
        cards = new BatchCards(Files.createDirectory(folder.resolve("cards")));
        services = new Services(
                Workplace.ofThisComputer(folder.resolve("records")),
                new WorkQueue(Runnable::run, Runnable::run),
                Runnable::run,
                new Words(Locale.ENGLISH));
    }

    @Test
    void everyCardIsReadAndAFailureStaysWithItsCard() throws IOException {
        BatchModel model = batch(cards.tuned("a.img"), cards.broken("b.img"), cards.stock("c.img"));

        model.read();

        assertThat(states(model)).containsExactly(CardState.SEEN, CardState.FAILED, CardState.SEEN);
        assertThat(model.rows().get(0).get().now().orElseThrow().activeLines()).isEqualTo(2);
        assertThat(model.rows().get(0).get().now().orElseThrow().label()).isEqualTo("LAB");
        assertThat(model.rows().get(2).get().now().orElseThrow().stock()).isTrue();
        assertThat(rest(model).tally().reasons()).hasSize(1).containsValue(1);
        assertThat(rest(model).tally().tuned()).isEqualTo(1);
        assertThat(rest(model).tally().stock()).isEqualTo(1);
        assertThat(model.canMake()).isFalse();
    }

    @Test
    void whatIsWorkedOutWritesNothingAndWhatIsMadeIsThatAlone() throws CardException, IOException {
        Path tuned = cards.tuned("a.img");
        Path broken = cards.broken("b.img");
        Path stock = cards.stock("c.img");
        byte[] before = Files.readAllBytes(tuned);
        byte[] stockBefore = Files.readAllBytes(stock);
        BatchModel model = batch(tuned, broken, stock);
        model.read();

        model.workOut(STOCK);

        assertThat(states(model)).containsExactly(CardState.PLANNED, CardState.FAILED, CardState.NOTHING);
        assertThat(rest(model).tally().lines()).isEqualTo(2);
        assertThat(rest(model).tally().sectors())
                .isEqualTo(model.rows().get(0).get().sectors())
                .isPositive();
        assertThat(Files.readAllBytes(tuned)).isEqualTo(before);
        assertThat(model.canMake()).isTrue();

        model.make();

        assertThat(states(model)).containsExactly(CardState.CHANGED, CardState.FAILED, CardState.NOTHING);
        assertThat(model.rows().get(0).get().now().orElseThrow().stock()).isTrue();
        assertThat(model.rows().get(0).get().outcome().orElseThrow().verified()).isTrue();
        assertThat(BatchCards.holds(tuned, "#arm_freq=2000")).isTrue();
        assertThat(Files.readAllBytes(stock)).isEqualTo(stockBefore);
        assertThat(new HistoryJob(services.workplace())
                        .run(CardRequest.of(tuned))
                        .changes())
                .hasSize(1);
        assertThat(model.canMake()).isFalse();
    }

    @Test
    void aCardThatIsNotAsItWasWorkedOutIsLeftAlone() throws IOException {
        Path card = cards.tuned("a.img");
        Path other = cards.tuned("b.img");
        BatchModel model = batch(card, other);
        model.workOut(STOCK);
        Files.copy(cards.stock("c.img"), card, StandardCopyOption.REPLACE_EXISTING);
        byte[] before = Files.readAllBytes(card);

        model.make();

        assertThat(states(model)).containsExactly(CardState.FAILED, CardState.CHANGED);
        assertThat(model.rows().get(0).get().outcome().orElseThrow().error().orElseThrow())
                .hasMessageContaining("not as it was");
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
    }

    @Test
    void aPackedCardIsKnownNotToBeChangeableBeforeAnythingIsMade() throws IOException {
        Path packed = folder.resolve("cards/d.img.gz");
        try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(packed))) {
            Files.copy(cards.tuned("a.img"), out);
        }
        BatchModel model = batch(packed);
        model.read();
        assertThat(states(model)).containsExactly(CardState.SEEN);

        model.workOut(STOCK);

        assertThat(states(model)).containsExactly(CardState.FAILED);
        assertThat(model.canMake()).isFalse();
    }

    @Test
    void anUnprovenProfileIsAskedAboutOnceForAllCards() throws CardException, IOException {
        Path card = cards.tuned("a.img");
        ProfileView saved = new ProfileJob(services.workplace())
                .save(CardRequest.of(card), new ProfileJob.Save("cart", "pi4", "", "", "", List.of(), false));
        Path stock = cards.stock("b.img");
        BatchModel model = batch(card, stock, cards.stock("c.img"));
        model.read();
        ProfileListing listing = model.profiles().get().value().orElseThrow();
        assertThat(listing.profiles()).containsExactly(saved);
        assertThat(listing.cautions()).isNotEmpty();

        model.workOut(ChangeOrder.of(new ChangeRequest.ToProfile("cart", Optional.empty())));

        assertThat(states(model)).containsExactly(CardState.NOTHING, CardState.PLANNED, CardState.PLANNED);
        assertThat(model.questions()).singleElement().asString().contains("unproven");
        model.make();
        assertThat(rest(model).task()).isInstanceOf(BatchTask.WorkOut.class);
        model.agree(model.questions().get(0), true);
        model.make();
        assertThat(states(model)).containsExactly(CardState.NOTHING, CardState.CHANGED, CardState.CHANGED);
        assertThat(BatchCards.holds(stock, "arm_freq=2000")).isTrue();
    }

    @Test
    void stoppingFinishesTheCardInWorkAndBeginsNoOther() throws CardException, IOException {
        List<Path> all = cards.tuned(20);
        BatchModel model = new BatchModel(services, all, lookedAt::add, 1);
        model.workOut(STOCK);
        model.rows().get(0).watch(row -> {
            if (row.is(CardState.CHANGED)) {
                model.stop();
            }
        });

        model.make();

        // Eight that wait in turn may have been done before the first result was handed out.
        assertThat(rest(model).tally().count(CardState.NOT_STARTED)).isGreaterThanOrEqualTo(10);
        assertThat(rest(model).tally().count(CardState.CHANGED)
                        + rest(model).tally().count(CardState.NOT_STARTED))
                .isEqualTo(20);
        for (int i = 0; i < all.size(); i++) {
            boolean changed = model.rows().get(i).get().is(CardState.CHANGED);
            assertThat(BatchCards.holds(all.get(i), "#arm_freq=2000")).isEqualTo(changed);
            assertThat(new HistoryJob(services.workplace())
                            .run(CardRequest.of(all.get(i)))
                            .changes())
                    .hasSize(changed ? 1 : 0);
        }
        model.workOut(STOCK);
        model.make();
        assertThat(states(model)).doesNotContain(CardState.NOT_STARTED, CardState.FAILED);
    }

    @Test
    void aCheckGivesSlipsAndAReport() throws IOException {
        BatchModel model = batch(cards.tuned("a.img"), cards.broken("b.img"));

        model.check(Purpose.SHIP);

        assertThat(states(model)).containsExactly(CardState.NOT_READY, CardState.FAILED);
        model.saveSlips(folder.resolve("slips.html"));
        model.saveReport(folder.resolve("report.html"), "Check to ship");
        assertThat(model.saved().get().value())
                .contains(folder.resolve("report.html").toAbsolutePath());
        assertThat(Files.readString(folder.resolve("slips.html"), StandardCharsets.UTF_8))
                .contains("a.img", "b.img");
        assertThat(Files.readString(folder.resolve("report.html"), StandardCharsets.UTF_8))
                .contains("Check to ship", "1 not ready, 1 failed");
        try (var files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString())).noneMatch(name -> name.endsWith(".part"));
        }
    }

    @Test
    void aReportIsNeverSavedOverACard() throws IOException {
        Path card = cards.tuned("a.img");
        byte[] before = Files.readAllBytes(card);
        BatchModel model = batch(card);
        model.check(Purpose.SHIP);

        model.saveReport(card, "Check");

        assertThat(model.saved().get().error()).isPresent();
        assertThat(Files.readAllBytes(card)).isEqualTo(before);
    }

    @Test
    void aCardThatWasChangedAloneIsReadAgainAndItsPlanGivenUp() throws IOException {
        Path card = cards.tuned("a.img");
        BatchModel model = batch(card, cards.tuned("b.img"));
        model.workOut(STOCK);
        Files.copy(cards.stock("c.img"), card, StandardCopyOption.REPLACE_EXISTING);

        model.lookAgain(model.cards().get(1));
        assertThat(states(model)).containsExactly(CardState.PLANNED, CardState.PLANNED);
        model.lookAgain(card);

        assertThat(states(model)).containsExactly(CardState.SEEN, CardState.PLANNED);
        assertThat(rest(model).tally().count(CardState.PLANNED)).isEqualTo(1);
        model.make();
        assertThat(states(model)).containsExactly(CardState.SEEN, CardState.CHANGED);
    }

    private BatchModel batch(Path... paths) {
        return new BatchModel(services, List.of(paths), lookedAt::add);
    }

    private static BatchState.Rest rest(BatchModel model) {
        return (BatchState.Rest) model.state().get();
    }

    private static List<CardState> states(BatchModel model) {
        return model.rows().stream()
                .map(row -> row.get().outcome().orElseThrow().state())
                .toList();
    }
}
