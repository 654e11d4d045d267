package bootmend.check;

import bootmend.tuning.Board;
import bootmend.tuning.resolve.Candidate;
import bootmend.tuning.resolve.Effective;
import bootmend.tuning.resolve.EffectiveState;
import bootmend.tuning.resolve.Resolution;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the config file comes to on one of the boards that a card is for.
 *
 * @param board the board
 * @param resolution the config file on it; of an empty file where the card has none
 */
public record BoardReading(Board board, Resolution resolution) {

    String id() {
        return board.id();
    }

    /** Every value that a tuning key has or may have; none where the board ignores it or no line gives it one. */
    List<Candidate> possible(String key) {
        return possible(resolution.tuning(key));
    }

    /** The same for a key that is no tuning key and of which the last line wins. */
    List<Candidate> possibleSetting(String key) {
        return possible(resolution.setting(key)).stream()
                .filter(each -> !each.value().isBlank())
                .toList();
    }

    static List<Candidate> possible(Optional<Effective> effective) {
        return effective.filter(each -> each.state() != EffectiveState.IGNORED).stream()
                .flatMap(each -> Stream.concat(Stream.of(each.chosen()), each.otherwise().stream()))
                .toList();
    }
}
