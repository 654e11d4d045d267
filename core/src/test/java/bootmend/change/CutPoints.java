package bootmend.change;

import bootmend.device.DeviceEvent;
import bootmend.fixtures.SparseDisk;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Consumer;

/** Every state a card can be left in when a recorded run of writes and forces is cut. */
final class CutPoints {

    private static final int TEAR = 32;
    private static final int MOST_SUBSETS = 1 << 10;
    private static final int TORN_SUBSETS_A_WRITE = 12;

    private final SparseDisk before;
    private final List<List<DeviceEvent.Write>> epochs = new ArrayList<>();

    /** @param events what a device saw; writes between two forces may reach the card in any order or not at all */
    CutPoints(SparseDisk before, List<DeviceEvent> events) {
        this.before = before;
        List<DeviceEvent.Write> epoch = new ArrayList<>();
        for (DeviceEvent event : events) {
            if (event instanceof DeviceEvent.Write write) {
                epoch.add(write);
            } else if (event instanceof DeviceEvent.Force) {
                epochs.add(epoch);
                epoch = new ArrayList<>();
            }
        }
        epochs.add(epoch);
    }

    /** Hands every state to {@code visitor}: each write lost, done or torn, then every subset between two forces, some with a torn write. */
    int visit(Consumer<SparseDisk> visitor) {
        int count = 0;
        SparseDisk reached = before.copy();
        for (List<DeviceEvent.Write> epoch : epochs) {
            count += inOrder(reached.copy(), epoch, visitor);
            count += subsets(reached, epoch, visitor);
            count += tornSubsets(reached, epoch, visitor);
            epoch.forEach(write -> apply(reached, write, write.bytes().length));
        }
        return count;
    }

    private static int inOrder(SparseDisk state, List<DeviceEvent.Write> epoch, Consumer<SparseDisk> visitor) {
        int count = 0;
        for (DeviceEvent.Write write : epoch) {
            for (int done = 0; done <= write.bytes().length; done += TEAR) {
                SparseDisk torn = state.copy();
                apply(torn, write, done);
                visitor.accept(torn);
                count++;
            }
            apply(state, write, write.bytes().length);
        }
        return count;
    }

    private static int subsets(SparseDisk state, List<DeviceEvent.Write> epoch, Consumer<SparseDisk> visitor) {
        Random random = new Random(epoch.size());
        boolean every = epoch.size() <= 10;
        int subsets = every ? 1 << epoch.size() : MOST_SUBSETS;
        for (int i = 0; i < subsets; i++) {
            SparseDisk some = state.copy();
            for (int w = 0; w < epoch.size(); w++) {
                if (every ? (i >>> w & 1) == 1 : random.nextBoolean()) {
                    apply(some, epoch.get(w), epoch.get(w).bytes().length);
                }
            }
            visitor.accept(some);
        }
        return subsets;
    }

    /** Some writes reached the card, and one of the others was torn in the middle. */
    private static int tornSubsets(SparseDisk state, List<DeviceEvent.Write> epoch, Consumer<SparseDisk> visitor) {
        Random random = new Random(31L * epoch.size());
        int states = epoch.size() * TORN_SUBSETS_A_WRITE;
        for (int i = 0; i < states; i++) {
            SparseDisk some = state.copy();
            int torn = random.nextInt(epoch.size());
            for (int w = 0; w < epoch.size(); w++) {
                int length = epoch.get(w).bytes().length;
                if (w == torn) {
                    apply(some, epoch.get(w), TEAR * (1 + random.nextInt(length / TEAR - 1)));
                } else if (random.nextBoolean()) {
                    apply(some, epoch.get(w), length);
                }
            }
            visitor.accept(some);
        }
        return states;
    }

    private static void apply(SparseDisk disk, DeviceEvent.Write write, int length) {
        if (length > 0) {
            disk.patch(write.offset(), Arrays.copyOf(write.bytes(), length));
        }
    }
}
