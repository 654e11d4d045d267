package bootmend.cli.report;

import bootmend.cli.outcome.CheckedCard;
import bootmend.page.PackingSlip;
import java.io.IOException;

/** A check as a page to print and pack with the cards. */
public final class CheckSlip implements CheckFile {

    private final PackingSlip slip;

    public CheckSlip(PackingSlip slip) {
        this.slip = slip;
    }

    @Override
    public void add(CheckedCard card) throws IOException {
        if (card.error().isPresent()) {
            slip.add(card.name(), card.error().get());
        } else {
            slip.add(card.name(), card.view().orElseThrow());
        }
    }

    @Override
    public void close() throws IOException {
        slip.close();
    }
}
