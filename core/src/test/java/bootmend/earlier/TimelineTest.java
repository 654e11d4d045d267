package bootmend.earlier;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The order of versions, by where they lie, by times, and by records; a volume of 1000 clusters. */
class TimelineTest {

    private static final long CLUSTERS = 1000;
    private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 20, 12, 0);

    private static Optional<PresentFile> now(long cluster) {
        return Optional.of(new PresentFile(bytes("now"), cluster, Optional.of(NOON)));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static Sighting free(String text, long cluster) {
        return new Sighting(new Place.Free(cluster), bytes(text), true, Optional.empty(), cluster, false);
    }

    private static Sighting copy(String text, long cluster, int hour) {
        return new Sighting(new Place.Copy(text), bytes(text), true, Optional.of(NOON.withHour(hour)), cluster, false);
    }

    private static RecordedVersion record(String id, String before, String after, boolean proven) {
        return new RecordedVersion(
                new Place.Recorded(id, Instant.EPOCH, "back to stock"), bytes(before), bytes(after), proven);
    }

    private static List<String> texts(List<EarlierVersion> versions) {
        return versions.stream()
                .map(version -> new String(version.text(), StandardCharsets.US_ASCII))
                .toList();
    }

    private static List<String> ordered(Timeline timeline, Sighting... sightings) {
        List.of(sightings).forEach(timeline::add);
        return texts(timeline.newestFirst(List.of()));
    }

    @Test
    void behindThePresentFileTheNearestIsTheYoungest() {
        assertThat(ordered(new Timeline(now(500), CLUSTERS, 0), free("a", 100), free("b", 499), free("c", 300)))
                .containsExactly("b", "c", "a");
    }

    @Test
    void beforeItTheLastOfTheVolumeIsTheYoungestOfTheRoundBefore() {
        assertThat(ordered(new Timeline(now(500), CLUSTERS, 0), free("a", 501), free("b", 999), free("c", 2)))
                .containsExactly("c", "b", "a");
    }

    @Test
    void betweenThePresentFileAndTheHintItIsNewer() {
        Timeline timeline = new Timeline(now(500), CLUSTERS, 600);
        List.of(free("old", 400), free("new", 550), free("older", 700)).forEach(timeline::add);

        List<EarlierVersion> versions = timeline.newestFirst(List.of());

        assertThat(texts(versions)).containsExactly("new", "old", "older");
        assertThat(versions).extracting(EarlierVersion::newer).containsExactly(true, false, false);
    }

    @Test
    void aHintFromBeforeThePresentFileIsPassedOver() {
        assertThat(ordered(new Timeline(now(500), CLUSTERS, 300), free("a", 350), free("b", 250), free("c", 450)))
                .containsExactly("c", "a", "b");
    }

    @Test
    void timesPutRightWhatClustersSayOtherwise() {
        Timeline timeline = new Timeline(now(500), CLUSTERS, 0);
        List.of(copy("ten", 400, 10), free("f", 420), copy("eleven", 300, 11), copy("nine", 100, 9))
                .forEach(timeline::add);

        List<EarlierVersion> versions = timeline.newestFirst(List.of());

        assertThat(texts(versions)).containsExactly("f", "eleven", "ten", "nine");
        assertThat(versions)
                .extracting(version -> version.order().certain())
                .containsExactly(false, false, false, true);
    }

    @Test
    void aCopyThatWasWrittenAfterThePresentFileIsNewerWhereverItLies() {
        Timeline timeline = new Timeline(now(500), CLUSTERS, 0);
        List.of(copy("later", 400, 13), free("old", 450)).forEach(timeline::add);

        List<EarlierVersion> versions = timeline.newestFirst(List.of());

        assertThat(texts(versions)).containsExactly("later", "old");
        assertThat(versions).extracting(EarlierVersion::newer).containsExactly(true, false);
    }

    @Test
    void aDeletedFileWhoseTimeSaysOtherwiseThanItsPlaceIsNotCertain() {
        Timeline timeline = new Timeline(now(500), CLUSTERS, 0);
        timeline.add(new Sighting(
                new Place.Deleted("?onfig.new", 400),
                bytes("later"),
                true,
                Optional.of(NOON.withHour(13)),
                400,
                false));

        assertThat(timeline.newestFirst(List.of()))
                .singleElement()
                .satisfies(version -> assertThat(version.order().certain()).isFalse());
    }

    @Test
    void ofTwoFilesOfOneTimeTheirPlaceDecidesAndNothingIsCertain() {
        Timeline timeline = new Timeline(now(500), CLUSTERS, 600);
        timeline.add(copy("same", 550, 12));

        assertThat(timeline.newestFirst(List.of())).singleElement().satisfies(version -> {
            assertThat(version.newer()).isTrue();
            assertThat(version.order().certain()).isFalse();
        });
    }

    @Test
    void aTextSeenTwiceCountsFromItsLastSighting() {
        assertThat(ordered(new Timeline(now(500), CLUSTERS, 0), free("a", 100), free("b", 300), free("a", 490)))
                .containsExactly("a", "b");
    }

    @Test
    void whatIsThereNowIsNoEarlierVersion() {
        assertThat(ordered(new Timeline(now(500), CLUSTERS, 0), free("now", 100), free("b", 300)))
                .containsExactly("b");
    }

    @Test
    void whatAChangeFoundWasThereJustBeforeWhatItLeft() {
        Timeline timeline = new Timeline(now(500), CLUSTERS, 0);
        List.of(free("between", 490), free("first", 100)).forEach(timeline::add);

        List<EarlierVersion> versions =
                timeline.newestFirst(List.of(record("2", "second", "now", true), record("1", "first", "second", true)));

        assertThat(texts(versions)).containsExactly("second", "first", "between");
        assertThat(versions).extracting(version -> version.order().certain()).containsExactly(true, true, false);
    }

    @Test
    void aRecordOfACardThatWasEditedSinceCountsByWhatItLeftThere() {
        Timeline timeline = new Timeline(now(500), CLUSTERS, 0);
        List.of(free("edited", 490), free("left", 400)).forEach(timeline::add);

        List<EarlierVersion> versions = timeline.newestFirst(
                List.of(record("2", "found", "left", false), record("1", "strange", "elsewhere", false)));

        assertThat(texts(versions)).containsExactly("edited", "left", "found");
        assertThat(versions).noneMatch(version -> version.order().certain());
    }
}
