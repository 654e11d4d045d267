package bootmend.device;

import bootmend.CardException;
import bootmend.ReportedIOException;
import de.waldheinz.fs.BlockDevice;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.function.BooleanSupplier;

/** Opens cards so that a look at one can be stopped between two reads; a card that is opened for a change cannot. */
public final class StoppableCards implements CardOpener {

    private final CardOpener opener;
    private final BooleanSupplier stopped;

    /** @param stopped asked before each read, on the thread that reads */
    public StoppableCards(CardOpener opener, BooleanSupplier stopped) {
        this.opener = opener;
        this.stopped = stopped;
    }

    @Override
    public CardSource open(CardName name, boolean forChanging) throws CardException, IOException {
        CardSource source = opener.open(name, forChanging);
        return forChanging ? source : source.behind(device -> new StoppableDevice(device, stopped));
    }

    private static final class StoppableDevice extends ForwardingDevice {

        private final BooleanSupplier stopped;

        StoppableDevice(BlockDevice device, BooleanSupplier stopped) {
            super(device);
            this.stopped = stopped;
        }

        @Override
        public void read(long offset, ByteBuffer dest) throws IOException {
            if (stopped.getAsBoolean()) {
                throw new ReportedIOException(
                        CardException.refused("reading the card was stopped", "Read it again to see the rest."));
            }
            super.read(offset, dest);
        }
    }
}
