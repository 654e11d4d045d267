package bootmend.operation;

import java.util.List;

/**
 * Settings to be tried once.
 *
 * @param board the board that the card is for
 * @param settings each {@code KEY=NUMBER}; what the card sets on that board besides stays
 * @param despiteBlockers whether they are staged although a check finds a blocker in them
 * @param inPlace whether a full card may be overwritten where a file stands
 */
public record StageRequest(String board, List<String> settings, boolean despiteBlockers, boolean inPlace) {

    public StageRequest {
        settings = List.copyOf(settings);
    }
}
