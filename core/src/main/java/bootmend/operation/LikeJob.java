package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.NextStep.Allow;
import bootmend.boot.BootTables;
import bootmend.card.CardSettings;
import bootmend.card.ConfigFiles;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.config.VisibleText;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import bootmend.view.CardBoards;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.util.Optional;
import java.util.Set;

/** Reads the tuning settings of one card, to be given to others. */
public final class LikeJob {

    private static final int LONGEST_NAME = 100;

    private final Workplace workplace;

    public LikeJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /**
     * What to ask for on the other cards.
     *
     * @param boardId the board that all of them are for; may be left out where the card can be meant for one board only
     * @param accepted the risks that were taken
     * @throws CardException where a setting hangs on something that the card does not tell, or the card is not for that board
     */
    public ChangeRequest.ToSettings read(CardRequest request, Optional<String> boardId, Set<Allow> accepted)
            throws CardException {
        TuningTables tables = workplace.tables();
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            ConfigFiles files = ConfigFiles.read(card.volume());
            files.main().refuseWhenNotWhole();
            Board board = boardId.isPresent()
                    ? new RequestedBoard(tables)
                            .facts(BoardRequest.of(boardId.get()))
                            .board()
                            .orElseThrow()
                    : only(card, files);
            if (!accepted.contains(Allow.OTHER_BOARD)) {
                SettingsWork.refuseForOthers(card, board, tables);
            }
            return new ChangeRequest.ToSettings(name(request), board.id(), new CardSettings(tables).of(files, board));
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    private Board only(OpenCard card, ConfigFiles files) throws CardException, IOException {
        Set<String> meant = new BootTables(workplace.tables()).meantFor(CardBoards.names(card, files));
        if (meant.size() != 1) {
            throw CardException.usage(
                    meant.isEmpty()
                            ? "nothing on the card tells which board it is for"
                            : "the card can be meant for several boards (" + String.join(", ", meant) + ")",
                    "",
                    NextStep.Plain.GIVE_BOARD);
        }
        return workplace.tables().boards().find(meant.iterator().next()).orElseThrow();
    }

    private static String name(CardRequest request) {
        String name = VisibleText.of(
                request.card().getFileName() == null
                        ? request.card().toString()
                        : request.card().getFileName().toString());
        return name.substring(0, Math.min(LONGEST_NAME, name.length()));
    }
}
