package bootmend.operation;

import bootmend.fixtures.SparseDisk;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Damages a card by a seed: single bytes and numbers where they hurt most, stretches of noise, whole sectors swapped. */
final class Mutation {

    private static final int SECTOR = 512;
    private static final byte[] TELLING = {0, 1, 2, (byte) 0x7F, (byte) 0x80, (byte) 0xE5, (byte) 0xF7, (byte) 0xF8, -1
    };

    private final SparseDisk disk;
    private final Random random;
    private final List<Region> regions;

    /** A stretch of a card that is worth damaging. */
    record Region(long offset, int length) {}

    private Mutation(SparseDisk disk, List<Region> regions, long seed) {
        this.disk = disk;
        this.regions = regions;
        this.random = new Random(seed);
    }

    /** A damaged copy of {@code disk}; the same seed damages it the same way. */
    static SparseDisk of(SparseDisk disk, List<Region> regions, long seed) {
        Mutation mutation = new Mutation(disk.copy(), regions, seed);
        int times = 1 + mutation.random.nextInt(6);
        for (int i = 0; i < times; i++) {
            mutation.once();
        }
        return mutation.disk;
    }

    private void once() {
        Region region = regions.get(random.nextInt(regions.size()));
        long at = region.offset() + random.nextInt(region.length());
        switch (random.nextInt(6)) {
            case 0 -> patch(at, (byte) random.nextInt());
            case 1 -> patch(at, TELLING[random.nextInt(TELLING.length)]);
            case 2 -> patch(at, number(random.nextBoolean() ? 2 : 4));
            case 3 -> patch(at, noise(1 + random.nextInt(64)));
            case 4 -> patch(at, new byte[1 + random.nextInt(SECTOR)]);
            default -> swap(at, regions.get(random.nextInt(regions.size())));
        }
    }

    /** A little-endian number: small, huge, or just beside a power of two. */
    private byte[] number(int bytes) {
        long value =
                switch (random.nextInt(3)) {
                    case 0 -> random.nextInt(300);
                    case 1 -> -1L - random.nextInt(20);
                    default -> (1L << random.nextInt(32)) + random.nextInt(3) - 1;
                };
        byte[] number = new byte[bytes];
        for (int i = 0; i < bytes; i++) {
            number[i] = (byte) (value >>> (8 * i));
        }
        return number;
    }

    private byte[] noise(int length) {
        byte[] noise = new byte[length];
        random.nextBytes(noise);
        return noise;
    }

    private void swap(long at, Region other) {
        long first = at / SECTOR * SECTOR;
        long second = (other.offset() + random.nextInt(other.length())) / SECTOR * SECTOR;
        byte[] one = disk.toBytes(first, SECTOR);
        patch(first, disk.toBytes(second, SECTOR));
        patch(second, one);
    }

    private void patch(long at, byte... bytes) {
        int room = (int) Math.min(bytes.length, disk.getSize() - at);
        disk.patch(at, Arrays.copyOf(bytes, room));
    }
}
