package bootmend.operation;

import bootmend.boot.BoardDiagnosis;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.Cause;
import bootmend.boot.LinkKind;
import bootmend.boot.Origin;
import bootmend.boot.Remedy;
import bootmend.boot.Verdict;
import bootmend.config.ConfigName;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Why boards do not start from a card, where a repair does not put that right.
 *
 * @param boards the boards that it holds for; empty where nothing on the card tells a board
 */
public record NotRepaired(List<String> boards, Cause cause) {

    public NotRepaired {
        boards = List.copyOf(boards);
    }

    /** One for each cause, in the boards' order. */
    static List<NotRepaired> of(BootDiagnosis diagnosis) {
        if (diagnosis.meantForNone()) {
            return List.of(new NotRepaired(
                    List.of(),
                    new Cause(
                            LinkKind.KERNEL,
                            "Neither a kernel nor a device tree on this card tells which board it is for.",
                            Origin.NOT_KNOWN,
                            new Remedy.WriteAnew())));
        }
        Map<Cause, List<String>> boards = new LinkedHashMap<>();
        for (BoardDiagnosis board : diagnosis.boards()) {
            if (board.chain().verdict() instanceof Verdict.Stops stops
                    && !isRepaired(stops.cause().remedy())) {
                boards.computeIfAbsent(stops.cause(), none -> new ArrayList<>()).add(board.board());
            }
        }
        return boards.entrySet().stream()
                .map(each -> new NotRepaired(each.getValue(), each.getKey()))
                .toList();
    }

    private static boolean isRepaired(Remedy remedy) {
        return remedy instanceof Remedy.RepairCard
                || remedy instanceof Remedy.RenameFile rename && rename.to().equals(ConfigName.NAME)
                || remedy instanceof Remedy.SavePlain save && save.file().equals(ConfigName.NAME);
    }
}
