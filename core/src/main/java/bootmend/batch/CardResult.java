package bootmend.batch;

import bootmend.CardException;
import bootmend.NextStep;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * What became of one card of many: exactly one of a view and an error.
 *
 * @param card as it was named
 * @param started false where the batch was stopped before this card's turn; nothing was read from it then
 * @param took from its start to its end
 */
public record CardResult<T>(
        Path card, boolean started, Optional<T> view, Optional<CardException> error, Duration took) {

    static <T> CardResult<T> of(Path card, T view, Duration took) {
        return new CardResult<>(card, true, Optional.of(view), Optional.empty(), took);
    }

    static <T> CardResult<T> failed(Path card, CardException error, Duration took) {
        return new CardResult<>(card, true, Optional.empty(), Optional.of(error), took);
    }

    static <T> CardResult<T> notStarted(Path card) {
        return new CardResult<>(
                card,
                false,
                Optional.empty(),
                Optional.of(CardException.refused(
                        "it was not started, because the batch was stopped before its turn",
                        "",
                        NextStep.Plain.DO_AGAIN)),
                Duration.ZERO);
    }
}
