package bootmend.gui.view;

import bootmend.CardException;
import bootmend.device.CardOpener;
import bootmend.device.CardSource;
import bootmend.device.ForwardingDevice;
import bootmend.device.system.FixedDisks;
import bootmend.device.system.LocalCards;
import bootmend.operation.ChangeOperation;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Clock;

/** Leaves a change to a card interrupted, as a card that is pulled does. */
final class CutChange {

    private static final int WRITES = 4;

    private CutChange() {}

    /** Begins to put the card back to stock and stops after a few sectors. */
    static void leave(Path card, Path home) throws IOException {
        CardOpener opener = (path, forChanging) -> CardSource.of(
                path,
                new PulledDevice(new LocalCards(FixedDisks.REFUSED)
                        .open(path, forChanging)
                        .device()));
        Workplace workplace = new Workplace(home, Clock.systemDefaultZone(), opener);
        try {
            new ChangeOperation(workplace)
                    .make(
                            CardRequest.of(card),
                            ChangeOrder.of(ChangeRequest.ToStock.PLAIN),
                            ChangeOperation.Approval.GIVEN)
                    .orThrow();
            throw new AssertionError("the change was not cut");
        } catch (CardException e) {
            if (e.kind() != CardException.Kind.INTERRUPTED) {
                throw new AssertionError("the change was refused instead", e);
            }
        }
    }

    private static final class PulledDevice extends ForwardingDevice {

        private int writes;

        PulledDevice(BlockDevice device) {
            super(device);
        }

        @Override
        public void write(long offset, ByteBuffer source) throws IOException {
            if (++writes > WRITES) {
                throw new IOException("the card was pulled");
            }
            super.write(offset, source);
        }
    }
}
