package bootmend.operation;

import bootmend.finding.Finding;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;

/** A change that was worked out on a card and not made: what it would do, byte for byte; immutable, and no card is held. */
public final class ProposedChange {

    private final CardRequest card;
    private final ChangeOrder order;
    private final LocalDateTime written;
    private final Worked worked;
    private final Path records;

    ProposedChange(CardRequest card, ChangeOrder order, LocalDateTime written, Worked worked, Path records) {
        this.card = card;
        this.order = order;
        this.written = written;
        this.worked = worked;
        this.records = records;
    }

    /** The card, as it was named. */
    public CardRequest card() {
        return card;
    }

    /** What was wanted. */
    public ChangeOrder order() {
        return order;
    }

    /** The card as it is before the change. */
    public CardView before() {
        return worked.before();
    }

    /** What becomes of each file that changes; all of a card's files that do. */
    public List<FileEdit> files() {
        return worked.files();
    }

    /** The lines that change, in the files' order. */
    public List<LineChange> lines() {
        return worked.files().stream().flatMap(file -> file.lines().stream()).toList();
    }

    /** What is wrong with the card, each with whether this change repairs it; empty for anything but a repair. */
    public List<Finding> findings() {
        return worked.findings();
    }

    /** What a check finds in the new config files and does not find in those of now, the heaviest first. */
    public List<Finding> brings() {
        return worked.brings();
    }

    /** What a user should say yes to before the change itself, each a question of its own. */
    public List<String> questions() {
        return worked.questions();
    }

    /** Sentences on what the change leaves as it is. */
    public List<String> notes() {
        return worked.notes();
    }

    /** Why boards do not start from the card and a repair does not put that right; empty for anything but a repair. */
    public List<NotRepaired> notRepaired() {
        return worked.notRepaired();
    }

    public PlanView plan() {
        return PlanView.of(worked.plan());
    }

    /** The folder on this computer that the undo record goes into. */
    public Path records() {
        return records;
    }

    /** Whether the card already is as wanted. */
    public boolean isNothing() {
        return worked.plan().isEmpty();
    }

    /** Whether something is wrong with the card that this change does not repair. */
    public boolean leavesDamage() {
        return worked.findings().stream().anyMatch(finding -> !finding.isRepaired());
    }

    /** Whether both write the same bytes to the same places of the same card, and ask and show the same. */
    public boolean sameAs(ProposedChange other) {
        return card.equals(other.card)
                && worked.plan().writesTheSameAs(other.worked.plan())
                && worked.files().equals(other.worked.files())
                && worked.findings().equals(other.worked.findings())
                && worked.brings().equals(other.worked.brings())
                && worked.questions().equals(other.worked.questions())
                && before().partition().equals(other.before().partition());
    }

    /** What it came to where it is left at that. */
    public ChangeOutcome leave() {
        return isNothing() ? new ChangeOutcome.NothingToDo(this) : new ChangeOutcome.NotMade(this);
    }

    LocalDateTime written() {
        return written;
    }

    Worked worked() {
        return worked;
    }
}
