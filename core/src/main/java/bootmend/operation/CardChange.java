package bootmend.operation;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.finding.Finding;
import bootmend.view.CardView;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * What a change came to on one card of many.
 *
 * @param before the card as it was
 * @param lines the lines that change
 * @param findings what a repair found; empty for any other change
 * @param questions what a user should have said yes to first; a batch makes the change all the same, so ask before it
 * @param nothing whether the card was as wanted already
 * @param made the change; empty where there was nothing to do or it was only worked out
 */
public record CardChange(
        CardView before,
        List<LineChange> lines,
        List<Finding> findings,
        List<String> questions,
        PlanView plan,
        boolean nothing,
        Optional<ChangeView> made) {

    /** Works a change out: on a card that is held for changing, or on one that is only read. */
    @FunctionalInterface
    public interface Proposer {
        ProposedChange propose(boolean forChanging) throws CardException;
    }

    public CardChange {
        lines = List.copyOf(lines);
        findings = List.copyOf(findings);
        questions = List.copyOf(questions);
    }

    /**
     * Works the change out and makes it without asking.
     *
     * @param dryRun whether it is only worked out
     */
    public static CardChange of(Proposer proposer, boolean dryRun) throws CardException {
        try (ProposedChange change = proposer.propose(!dryRun)) {
            boolean make = !dryRun && !change.isNothing();
            Optional<ChangeView> made = make ? Optional.of(change.apply()) : Optional.empty();
            return new CardChange(
                    change.card(),
                    change.lines(),
                    change.findings(),
                    change.questions(),
                    change.plan(),
                    change.isNothing(),
                    made);
        } catch (IOException e) {
            throw CardException.unreadable(
                    "the card could not be closed (" + e.getMessage() + ")",
                    "Take the card out and put it back in.",
                    e,
                    NextStep.Plain.SHOW_CARD);
        }
    }

    /** Whether something is wrong with the card that the change does not mend. */
    public boolean leavesDamage() {
        return findings.stream().anyMatch(finding -> !finding.isRepaired());
    }
}
