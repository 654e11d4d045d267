package bootmend.gui.model;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.gui.text.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The window's words for what to do next: places in the window, no commands. */
class StepPlacesTest {

    private final StepPlaces places = new StepPlaces(new Words(Locale.ENGLISH));

    @ParameterizedTest
    @MethodSource("steps")
    void everyStepIsAWholeSentenceWithoutACommand(NextStep step) {
        assertThat(step.in(places)).matches("[A-Z\u201c].*\\.").doesNotContain("`", " --", "bootmend ", "{", "}");
    }

    @Test
    void valuesAreSaid() {
        assertThat(NextStep.RecoverCard.of(Path.of("home", "undo", "it's.rec")).in(places))
                .contains("change strip", "it's.rec");
        assertThat(new NextStep.GivePartition(List.of(1, 3)).in(places)).isEqualTo("Partitions here: 1, 3.");
        assertThat(new NextStep.UnpackImage(NextStep.UnpackImage.Packing.XZ, "lab\u202e.img.xz").in(places))
                .contains("lab\\u{202E}.img.xz", "xz files");
    }

    @Test
    void theStepsComeAfterWhatTheErrorSays() {
        assertThat(places.remedy(CardException.refused("it is so", "Wait.", NextStep.Plain.LIST_CHANGES)))
                .isEqualTo("Wait. See \u201cChanges made\u201d.");
        assertThat(places.remedy(CardException.refused("it is so", "", NextStep.Plain.LIST_CHANGES)))
                .isEqualTo("See \u201cChanges made\u201d.");
    }

    static Stream<NextStep> steps() {
        return Stream.of(
                        Stream.of(NextStep.Plain.values()),
                        Stream.of(NextStep.Allow.values()),
                        Stream.of(
                                NextStep.RecoverCard.NO_RECORD,
                                NextStep.RecoverCard.of(Path.of("a.rec")),
                                new NextStep.GivePartition(List.of(2)),
                                new NextStep.GiveSetting("arm_freq")),
                        Stream.of(NextStep.UnpackImage.Packing.values())
                                .map(packing -> new NextStep.UnpackImage(packing, "lab.img")))
                .flatMap(each -> each);
    }
}
