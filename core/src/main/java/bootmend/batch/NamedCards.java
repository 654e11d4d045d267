package bootmend.batch;

import java.nio.file.Path;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The cards that a user named.
 *
 * @param cards in the order named, each once
 * @param leftOut how many files of patterns and folders were not taken, by reason; without a reason that left out none
 */
public record NamedCards(List<Path> cards, Map<LeftOut, Integer> leftOut) {

    public NamedCards {
        cards = List.copyOf(cards);
        Map<LeftOut, Integer> inOrder = new EnumMap<>(LeftOut.class);
        inOrder.putAll(leftOut);
        leftOut = Collections.unmodifiableMap(inOrder);
    }

    /** What was left out, in one sentence; nothing where all was taken. */
    public Optional<String> note() {
        return leftOut.isEmpty()
                ? Optional.empty()
                : Optional.of("Left out: "
                        + leftOut.entrySet().stream()
                                .map(each -> each.getKey().words(each.getValue()))
                                .collect(Collectors.joining("; "))
                        + ".");
    }
}
