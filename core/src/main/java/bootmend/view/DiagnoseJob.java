package bootmend.view;

import bootmend.CardException;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootTables;
import bootmend.boot.Depth;
import bootmend.boot.NoBootPartition;
import bootmend.card.JobErrors;
import bootmend.card.OpenCard;
import bootmend.config.VisibleText;
import bootmend.device.CardSource;
import bootmend.partition.PartitionSelection;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.request.RequestedBoard;
import bootmend.tuning.resolve.BoardFacts;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Files;

/** Works out why a card does or does not boot, and writes nothing. */
public final class DiagnoseJob {

    private final Workplace workplace;

    public DiagnoseJob(Workplace workplace) {
        this.workplace = workplace;
    }

    /**
     * Looks into every boot file that the boards take; a card without a boot partition is one that stops at its first link.
     *
     * @param about what is known about the board; where it names none, every board that the card can be meant for
     * @throws CardException of kind usage where what is said about the board makes no sense; of kind unreadable where the
     *     card itself cannot be read, or a partition that was named is not its boot partition
     */
    public BootDiagnosis run(CardRequest request, BoardRequest about) throws CardException {
        BoardFacts facts = new RequestedBoard(workplace.tables()).facts(about);
        BootTables tables = new BootTables(workplace.tables());
        try (OpenCard card = OpenCard.open(workplace.opener(), request, false)) {
            BootDiagnosis found = BootDiagnosis.of(card.bootCard(), facts, tables, Depth.CONTENTS);
            return new RepairOutlook(facts, tables, workplace.now()).of(card, found);
        } catch (CardException e) {
            return BootDiagnosis.withoutPartition(facts, tables, withoutPartition(request, e));
        } catch (IOException e) {
            throw JobErrors.unreadable(e);
        }
    }

    /** @throws CardException where it is not for want of a boot partition that the card could not be opened */
    private NoBootPartition withoutPartition(CardRequest request, CardException why) throws CardException {
        if (why.kind() != CardException.Kind.UNREADABLE
                || !(request.selection() instanceof PartitionSelection.Automatic)
                || Files.isDirectory(request.card())) {
            throw why;
        }
        try (CardSource source = workplace.opener().open(request.card(), false)) {
            return NoBootPartition.on(source.device(), VisibleText.of(why.getMessage()));
        } catch (IOException | CardException e) {
            why.addSuppressed(e);
            throw why;
        }
    }
}
