package bootmend.view;

import bootmend.CardException;
import bootmend.boot.BoardDiagnosis;
import bootmend.boot.BootChain;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootTables;
import bootmend.boot.Cause;
import bootmend.boot.Depth;
import bootmend.boot.Remedy;
import bootmend.boot.Verdict;
import bootmend.card.OpenCard;
import bootmend.card.RawCard;
import bootmend.change.Plan;
import bootmend.change.RepairPlanner;
import bootmend.tuning.resolve.BoardFacts;
import java.io.IOException;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * Finds out whether a repair of the card would let a board get further, by following the boot chain once more on the card
 * as the repair would leave it: a boot file whose cluster chain is torn in one FAT copy needs no other copy of itself.
 */
record RepairOutlook(BoardFacts facts, BootTables tables, LocalDateTime now) {

    /** The diagnosis, in which a repair is the remedy wherever it is one; the repair is worked out only where a board stops. */
    BootDiagnosis of(OpenCard card, BootDiagnosis found) throws IOException {
        boolean needed = found.boards().stream().anyMatch(board -> isInNeed(board.chain()));
        if (!needed || !(card instanceof RawCard raw)) {
            return found;
        }
        try {
            Plan plan = new RepairPlanner(raw.window(), raw.volumeStart(), now, false)
                    .plan(false)
                    .plan();
            return plan.isEmpty() ? found : compared(found, after(raw, plan));
        } catch (CardException e) {
            // What no repair can be worked out for is not its to repair.
            return found;
        }
    }

    private static boolean isInNeed(BootChain chain) {
        return chain.verdict() instanceof Verdict.Stops stops && !(stops.cause().remedy() instanceof Remedy.RepairCard);
    }

    private BootDiagnosis after(RawCard card, Plan plan) throws IOException {
        return BootDiagnosis.of(card.bootCardAfter(plan), facts, tables, Depth.CONTENTS);
    }

    private static BootDiagnosis compared(BootDiagnosis before, BootDiagnosis after) {
        return new BootDiagnosis(
                before.boards().stream().map(board -> compared(board, after)).toList(),
                before.meantForNone(),
                before.versions(),
                before.notTold());
    }

    private static BoardDiagnosis compared(BoardDiagnosis before, BootDiagnosis after) {
        Optional<BootChain> repaired = after.boards().stream()
                .filter(board -> board.board().equals(before.board()))
                .map(BoardDiagnosis::chain)
                .findFirst();
        return repaired.filter(chain -> isInNeed(before.chain()) && getsFurther(before.chain(), chain))
                .map(chain -> new BoardDiagnosis(
                        before.board(), before.because(), withRepair(before.chain()), before.tryOnce()))
                .orElse(before);
    }

    private static boolean getsFurther(BootChain before, BootChain after) {
        Verdict.Stops stops = (Verdict.Stops) before.verdict();
        return !(after.verdict() instanceof Verdict.Stops later)
                || later.cause().link().compareTo(stops.cause().link()) > 0;
    }

    private static BootChain withRepair(BootChain chain) {
        Cause cause = ((Verdict.Stops) chain.verdict()).cause();
        return new BootChain(
                chain.board(),
                chain.start(),
                chain.links(),
                new Verdict.Stops(new Cause(cause.link(), cause.sentence(), cause.origin(), new Remedy.RepairCard())));
    }
}
