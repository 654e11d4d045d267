package bootmend.operation;

import bootmend.device.system.Ejection;
import bootmend.request.CardRequest;

/** Has the system let go of a card that is not open any more. */
public final class EjectJob {

    /** What became of it, in a whole sentence. */
    public String run(CardRequest request) {
        return Ejection.of(request.card()).words();
    }
}
