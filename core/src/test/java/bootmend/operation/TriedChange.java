package bootmend.operation;

import bootmend.CardException;
import bootmend.finding.Finding;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import bootmend.workplace.Workplace;
import java.util.List;

/** A change that a test works out, looks at and then makes as it was shown. */
public record TriedChange(ChangeOperation operation, ProposedChange change) {

    public static TriedChange of(Workplace workplace, CardRequest card, ChangeRequest request) throws CardException {
        return of(workplace, card, ChangeOrder.of(request));
    }

    public static TriedChange of(Workplace workplace, CardRequest card, ChangeOrder order) throws CardException {
        ChangeOperation operation = new ChangeOperation(workplace);
        return new TriedChange(operation, operation.workOut(card, order));
    }

    /** Makes it where there is something to do, in one opening of the card; whether there was. */
    public static boolean make(Workplace workplace, CardRequest card, ChangeRequest request) throws CardException {
        return make(workplace, card, ChangeOrder.of(request));
    }

    public static boolean make(Workplace workplace, CardRequest card, ChangeOrder order) throws CardException {
        return new ChangeOperation(workplace)
                .make(card, order, ChangeOperation.Approval.GIVEN)
                .orThrow()
                .ifMade()
                .isPresent();
    }

    public CardView card() {
        return change.before();
    }

    public List<LineChange> lines() {
        return change.lines();
    }

    public List<Finding> findings() {
        return change.findings();
    }

    public List<String> questions() {
        return change.questions();
    }

    public PlanView plan() {
        return change.plan();
    }

    public boolean isNothing() {
        return change.isNothing();
    }

    public boolean leavesDamage() {
        return change.leavesDamage();
    }

    public Made apply() throws CardException {
        return operation.make(change).orThrow().ifMade().orElseThrow();
    }
}
