package bootmend;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Puts next steps into the words of one front end, each a whole sentence that is safe to show.
 *
 * <p>One method for each kind of step and switches over the two sets of constants, so that a step without words does not
 * compile.
 */
public interface StepWords {

    String plain(NextStep.Plain step);

    String allow(NextStep.Allow step);

    String recoverCard(NextStep.RecoverCard step);

    String givePartition(NextStep.GivePartition step);

    String giveSetting(NextStep.GiveSetting step);

    String unpackImage(NextStep.UnpackImage step);

    /** All that an error says to do: its own sentence, which may be missing, then its steps. */
    default String remedy(CardException error) {
        return remedy(error.remedy(), error.steps());
    }

    /** A sentence, which may be empty, and the steps after it. */
    default String remedy(String sentence, List<NextStep> steps) {
        return Stream.concat(Stream.of(sentence), steps.stream().map(step -> step.in(this)))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining(" "));
    }
}
