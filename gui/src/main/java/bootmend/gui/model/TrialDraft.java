package bootmend.gui.model;

import bootmend.CardException;
import bootmend.gui.text.Words;
import bootmend.record.TrialRequest;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A trial as it stands in the form's fields, as it was typed; an empty text says nothing.
 *
 * @param fromCard whether what the card sets was in force, but for what is named here
 * @param onceStarted whether the board was started with its try-once flag, so that the card's staged file ran
 * @param others settings besides clock and voltage step, each {@code KEY=NUMBER}, with blanks or commas between
 * @param despite whether to keep it, undecided, where its log contradicts it
 */
public record TrialDraft(
        String label,
        String board,
        boolean fromCard,
        boolean onceStarted,
        String clock,
        String step,
        String others,
        String outcome,
        String minutes,
        boolean fullLoad,
        String peak,
        String clockUnderLoad,
        String mask,
        String cooling,
        String supply,
        String ambient,
        String notes,
        String log,
        boolean despite) {

    /**
     * @param card the one that is looked at
     * @throws CardException of kind usage with the field's name, where a field does not hold what it should
     */
    TrialRequest request(Optional<CardRequest> card, Words words) throws CardException {
        if (label.isBlank()) {
            throw CardException.usage(words.of("adding.nolabel"), words.of("adding.nolabel.remedy"));
        }
        if (outcome.isBlank()) {
            throw CardException.usage(words.of("adding.nooutcome"), words.of("adding.nooutcome.remedy"));
        }
        BoardRequest about = new BoardRequest(
                text(board),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                onceStarted ? Optional.of(true) : Optional.empty(),
                List.of());
        return new TrialRequest(
                label.strip(),
                about,
                fromCard ? card : Optional.empty(),
                settings(),
                path(words),
                outcome,
                new TrialRequest.Measured(
                        number(minutes, "adding.minutes", words),
                        fullLoad,
                        number(peak, "adding.peak", words),
                        number(clockUnderLoad, "adding.loadclock", words),
                        text(mask),
                        List.of()),
                cooling.strip(),
                supply.strip(),
                number(ambient, "adding.ambient", words),
                Optional.empty(),
                notes.strip(),
                despite);
    }

    private List<String> settings() {
        List<String> settings = new ArrayList<>();
        text(clock).ifPresent(value -> settings.add("arm_freq=" + value));
        text(step).ifPresent(value -> settings.add("over_voltage=" + value));
        text(others)
                .ifPresent(all ->
                        settings.addAll(List.of(all.replaceAll("\\s*=\\s*", "=").split("[\\s,;]+"))));
        return settings;
    }

    private Optional<Path> path(Words words) throws CardException {
        try {
            return text(log).map(Path::of);
        } catch (InvalidPathException e) {
            throw CardException.usage(words.of("adding.nolog", log), words.of("adding.nolog.remedy"));
        }
    }

    private static Optional<String> text(String text) {
        return text.isBlank() ? Optional.empty() : Optional.of(text.strip());
    }

    /** A decimal comma is as good as a point. */
    private static OptionalDouble number(String text, String key, Words words) throws CardException {
        if (text.isBlank()) {
            return OptionalDouble.empty();
        }
        try {
            return OptionalDouble.of(Double.parseDouble(text.strip().replace(',', '.')));
        } catch (NumberFormatException e) {
            String field = words.of(key).replace("_", "").toLowerCase(Locale.ROOT);
            throw CardException.usage(
                    words.of("adding.nonumber", text.strip(), field), words.of("adding.nonumber.remedy"));
        }
    }
}
