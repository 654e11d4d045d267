package bootmend.cli.outcome;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.NextStep;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Next steps as commands and options. */
class CommandWordsTest {

    @ParameterizedTest
    @MethodSource("steps")
    void everyStepIsAWholeSentence(NextStep step) {
        assertThat(step.in(CommandWords.about("lab-07.img"))).matches("[A-Z`].*\\.");
    }

    @Test
    void aCommandNamesTheCardWhereItCanBeCopied() {
        NextStep step = NextStep.RecoverCard.of(Path.of("a.rec"));

        assertThat(step.in(CommandWords.about("cards/lab-07.img")))
                .isEqualTo("Run `bootmend recover cards/lab-07.img`; the undo record is a.rec.");
        assertThat(step.in(CommandWords.withoutCard()))
                .isEqualTo("Run `bootmend recover` on the card; the undo record is a.rec.");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "my card.img",
                "-x.img",
                "a;reboot",
                "$(reboot)",
                "`reboot`",
                "a\nb",
                "\u202ea.img",
                "a'b",
                "C:\\a.img"
            })
    void aNameThatAShellWouldTakeApartIsLeftOut(String card) {
        assertThat(NextStep.Plain.REPAIR_CARD.in(CommandWords.about(card)))
                .isEqualTo("Run `bootmend repair` on the card, which shows first what it would do.");
    }

    @Test
    void valuesAreMadeVisible() {
        CardException error = CardException.refused(
                "it is so",
                "Wait.",
                new NextStep.UnpackImage(NextStep.UnpackImage.Packing.GZIP, "lab\u001b[2J.img.gz"),
                new NextStep.GivePartition(List.of(1, 2)));

        assertThat(CommandWords.withoutCard().remedy(error))
                .isEqualTo("Wait. Unpack it with `gzip -dk lab\\x1B[2J.img.gz` and use the image that comes of it."
                        + " Choose one with --partition 1 or --partition 2.");
    }

    static Stream<NextStep> steps() {
        return Stream.of(
                        Stream.of(NextStep.Plain.values()),
                        Stream.of(NextStep.Allow.values()),
                        Stream.of(
                                NextStep.RecoverCard.NO_RECORD,
                                new NextStep.GivePartition(List.of(2)),
                                new NextStep.GiveSetting("arm_freq")),
                        Stream.of(NextStep.UnpackImage.Packing.values())
                                .map(packing -> new NextStep.UnpackImage(packing, "lab.img")))
                .flatMap(each -> each);
    }
}
