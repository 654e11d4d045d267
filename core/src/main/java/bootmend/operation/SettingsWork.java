package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep.Allow;
import bootmend.boot.BootTables;
import bootmend.card.ConfigFiles;
import bootmend.card.OpenCard;
import bootmend.request.BoardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.view.CardBoards;
import java.io.IOException;
import java.util.Set;

/** Gives a card the tuning settings that were read from another. */
record SettingsWork(Work work, ChangeRequest.ToSettings request) implements WorkOut {

    @Override
    public Worked on(OpenCard card) throws CardException, IOException {
        Board board = new RequestedBoard(tables())
                .facts(BoardRequest.of(request.board()))
                .board()
                .orElseThrow();
        if (!work.order().accepts(Allow.OTHER_BOARD)) {
            refuseForOthers(card, board, tables());
        }
        return new SettingsPut(work, board, request.settings(), "tuning like " + request.name()).on(card);
    }

    /** @throws CardException where what stands on the card tells that it is for other boards */
    static void refuseForOthers(OpenCard card, Board board, TuningTables tables) throws CardException, IOException {
        Set<String> meant = new BootTables(tables).meantFor(CardBoards.names(card, ConfigFiles.read(card.volume())));
        if (!meant.isEmpty() && !meant.contains(board.id())) {
            throw CardException.refused(
                    "the card can be meant for " + String.join(", ", meant) + ", not for " + board.id(),
                    "Settings that hold on one board prove nothing for another, which may not boot with them.",
                    Allow.OTHER_BOARD);
        }
    }

    private TuningTables tables() {
        return work.workplace().tables();
    }
}
