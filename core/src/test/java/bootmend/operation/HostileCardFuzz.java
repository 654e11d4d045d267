package bootmend.operation;

import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;

/**
 * The entry point for a coverage-guided fuzzer: its bytes say which card is damaged where and how. It needs nothing of
 * the fuzzer's; the Maven profile {@code fuzz} runs it.
 */
public final class HostileCardFuzz {

    private static final HostileCards CARDS = new HostileCards();
    private static final List<HostileCards.Base> BASES = HostileCards.bases();
    private static final int MOST_PATCHES = 16;

    private HostileCardFuzz() {}

    /** One card: a byte for the base, then patches of region (1 byte), place (2), length (1) and that many bytes. */
    public static void fuzzerTestOneInput(byte[] input) throws IOException {
        ByteBuffer program = ByteBuffer.wrap(input);
        if (program.remaining() < 2) {
            return;
        }
        HostileCards.Base base = BASES.get(Math.floorMod(program.get(), BASES.size()));
        SparseDisk card = base.disk().copy();
        for (int i = 0; i < MOST_PATCHES && program.remaining() >= 5; i++) {
            Mutation.Region region = base.regions()
                    .get(Math.floorMod(program.get(), base.regions().size()));
            long at = region.offset() + Math.floorMod(program.getShort(), region.length());
            byte[] bytes = new byte[Math.min(program.get() & 0x3F, program.remaining())];
            program.get(bytes);
            card.patch(at, Arrays.copyOf(bytes, (int) Math.min(bytes.length, card.getSize() - at)));
        }
        CARDS.survive(card);
    }
}
