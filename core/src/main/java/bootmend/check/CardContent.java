package bootmend.check;

import bootmend.tuning.resolve.StockLines;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Everything a check knows of a card; made by {@link CardContents}.
 *
 * @param read what was read
 * @param boards what the config file comes to on each board that the card can be meant for; where nothing tells one, on
 *     every known board
 * @param bootable whether the board was given, or something on the card tells one
 * @param texts the first bytes of the files that {@link #wantedTexts} names, by path
 * @param stockLines which tuning lines hold the stock value on those boards
 */
public record CardContent(
        ExaminedCard read,
        List<BoardReading> boards,
        boolean bootable,
        Map<String, FileText> texts,
        StockLines stockLines) {

    public CardContent {
        boards = List.copyOf(boards);
        texts = Map.copyOf(texts);
    }

    CardFiles files() {
        return read.files();
    }

    /** Ids of the boards that the card is for, in their usual order; empty where nothing tells one. */
    public List<String> boardIds() {
        return bootable ? boards.stream().map(BoardReading::id).toList() : List.of();
    }

    /** The paths of the small files whose text is asked for, each once. */
    public Set<String> wantedTexts() {
        return LeftFiles.load().wanted(files());
    }

    /** The same with the texts of files. */
    public CardContent withTexts(Map<String, FileText> read) {
        return new CardContent(this.read, boards, bootable, read, stockLines);
    }

    /** The same where nothing tells a board. */
    public CardContent withoutBoardTold() {
        return new CardContent(read, boards, false, texts, stockLines);
    }
}
