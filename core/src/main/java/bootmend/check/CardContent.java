package bootmend.check;

import java.util.List;

/**
 * Everything a check knows of a card; made by {@link CardContents}.
 *
 * @param read what was read
 * @param boards what the config file comes to on each board that the card can be meant for; where nothing tells one, on
 *     every known board
 * @param bootable whether the board was given, or something on the card tells one
 */
public record CardContent(CardRead read, List<BoardReading> boards, boolean bootable) {

    public CardContent {
        boards = List.copyOf(boards);
    }

    CardFiles files() {
        return read.files();
    }

    /** Ids of the boards that the card is for, in their usual order; empty where nothing tells one. */
    public List<String> boardIds() {
        return bootable ? boards.stream().map(BoardReading::id).toList() : List.of();
    }
}
