package bootmend.record;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.trial.LogSummary;
import bootmend.trial.Quantity;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.OptionalDouble;

/** Sums up a board's log; keeps nothing. */
public final class TrialImportJob {

    private final Workplace workplace;

    public TrialImportJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /** @param setClock clock that was set, in MHz; where empty, the highest in the log */
    public LogSummary run(Path log, OptionalDouble setClock) throws CardException {
        try {
            setClock.ifPresent(Quantity.CLOCK::check);
        } catch (IllegalArgumentException e) {
            throw CardException.usage(e.getMessage(), "", NextStep.Plain.GIVE_CLOCK);
        }
        return LogSummary.read(log, setClock, workplace.tables().throttleBits());
    }
}
