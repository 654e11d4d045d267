package bootmend.view;

import java.util.List;

/**
 * A card with its config file in full and what that comes to.
 *
 * @param show the card, and what it comes to on the board that was asked about or on each that it can be meant for
 * @param files the config file first, then those that it includes; empty where it cannot be read
 * @param boards ids of every known board
 * @param waiting a change that was interrupted
 * @param staged whether settings are staged beside the config file for one try
 */
public record SheetView(
        ShowView show, List<SheetFile> files, List<String> boards, InterruptedChange waiting, boolean staged) {

    public SheetView {
        files = List.copyOf(files);
        boards = List.copyOf(boards);
    }
}
