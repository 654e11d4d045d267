package bootmend.device;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import bootmend.CardException;
import bootmend.ReportedIOException;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

/** A look at a card that can be stopped. */
class StoppableCardsTest {

    private final AtomicBoolean stopped = new AtomicBoolean();
    private final CardOpener opener =
            new StoppableCards((path, forChanging) -> CardSource.of(path, new SparseDisk(1 << 20, 512)), stopped::get);

    @Test
    void aLookReadsUntilItIsStopped() throws CardException, IOException {
        try (CardSource card = opener.open(Path.of("lab.img"), false)) {
            card.device().read(0, ByteBuffer.allocate(512));
            stopped.set(true);

            assertThatThrownBy(() -> card.device().read(0, ByteBuffer.allocate(512)))
                    .isInstanceOf(ReportedIOException.class)
                    .hasMessage("reading the card was stopped");
        }
    }

    @Test
    void aCardThatIsHeldForAChangeReadsOn() throws CardException, IOException {
        stopped.set(true);
        try (CardSource card = opener.open(Path.of("lab.img"), true)) {
            ByteBuffer sector = ByteBuffer.allocate(512);
            card.device().read(0, sector);
            assertThat(sector.hasRemaining()).isFalse();
        }
    }
}
