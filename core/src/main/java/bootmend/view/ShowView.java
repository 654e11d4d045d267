package bootmend.view;

import bootmend.boot.BootDiagnosis;
import bootmend.boot.FirmwareVersion;
import java.util.List;
import java.util.Optional;

/**
 * A card with what it comes to on the board that was asked about, or on each board that it can be meant for.
 *
 * @param card the card; its tuning lines carry their effect where a board was asked about
 * @param board the board that was asked about; {@code boards} then has that one alone
 * @param boards every board that the card can be meant for, or every known board where nothing tells one
 * @param anyBootable whether the card has the boot files of a known board; true where a board was asked about
 * @param keys every key that some of these boards gets a value for, in the vocabulary's order
 * @param cautions those that the tuning of these boards calls for
 * @param boot what the boot chain comes to by the names on the card; empty where the config file cannot be read
 * @param firmware builds of boot firmware that the board takes from the card; none where no board was asked about
 */
public record ShowView(
        CardView card,
        Optional<String> board,
        List<BoardView> boards,
        boolean anyBootable,
        List<String> keys,
        List<CautionView> cautions,
        Optional<BootDiagnosis> boot,
        List<FirmwareVersion> firmware) {

    public ShowView {
        boards = List.copyOf(boards);
        keys = List.copyOf(keys);
        cautions = List.copyOf(cautions);
        firmware = List.copyOf(firmware);
    }

    ShowView withBoot(BootDiagnosis found, List<FirmwareVersion> builds) {
        return new ShowView(card, board, boards, anyBootable, keys, cautions, Optional.of(found), builds);
    }
}
