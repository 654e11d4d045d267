package bootmend.check;

import bootmend.boot.BootCard;
import bootmend.boot.CardLayout;
import bootmend.boot.CardPartition;
import bootmend.fat.BootFiles;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import bootmend.fat.FileContent;
import bootmend.fat.VolumeSpace;
import bootmend.fixtures.ChainCard;
import bootmend.fixtures.ChainFiles;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/**
 * A card in memory: boot files by path, and a system on a second partition.
 *
 * @param torn why a file cannot be read to its end, by path; under {@value #PARTITION}, the boot partition's type, or
 *     {@value #LOST} where its first sector is
 */
record MemoryBootCard(Map<String, byte[]> contents, Map<String, String> torn) implements BootCard, BootFiles {

    static final String PARTITION = "boot partition";
    static final String LOST = "lost";

    private static final long MIB = 1 << 20;
    private static final byte[] SYSTEM = ChainFiles.ext4(4 * MIB, ChainCard.ROOT_ID, ChainCard.ROOT_LABEL);
    private static final byte[] FIRST_SECTOR = firstSector();

    private static byte[] firstSector() {
        byte[] sector = new byte[512];
        sector[12] = 2;
        sector[13] = 1;
        sector[14] = 1;
        sector[16] = 2;
        sector[510] = 0x55;
        sector[511] = (byte) 0xAA;
        return sector;
    }

    @Override
    public CardLayout layout() {
        return new CardLayout(
                CardLayout.Kind.MBR,
                Optional.of(ChainCard.DISK_ID),
                List.of(partition(1, torn.getOrDefault(PARTITION, "0x0C"), MIB), partition(2, "0x83", 8 * MIB)),
                false,
                OptionalLong.of(16 * MIB),
                List.of());
    }

    private static CardPartition partition(int number, String type, long start) {
        return new CardPartition(
                number, type, start, 4 * MIB, Optional.of(ChainCard.DISK_ID + "-0" + number), Optional.empty());
    }

    @Override
    public int bootPartition() {
        return 1;
    }

    @Override
    public String choice() {
        return "the first FAT partition with boot firmware";
    }

    @Override
    public BootFiles files() {
        return this;
    }

    @Override
    public Optional<BootFiles> files(int partition) {
        return partition == 1 ? Optional.of(this) : Optional.empty();
    }

    @Override
    public Optional<byte[]> bytes(CardPartition partition, long offset, int length) {
        boolean lost = partition.number() == 1 && LOST.equals(torn.get(PARTITION));
        byte[] from = partition.number() == 2 ? SYSTEM : lost ? new byte[512] : FIRST_SECTOR;
        return Optional.of(Arrays.copyOfRange(
                Arrays.copyOf(from, (int) Math.max(from.length, offset + length)),
                (int) offset,
                (int) offset + length));
    }

    @Override
    public Directory root() {
        return list("");
    }

    @Override
    public Directory list(DirectoryEntry folder) {
        return list(paths().get((int) folder.offset()) + "/");
    }

    /** Every file and folder; its place is the offset of its entry. */
    private List<String> paths() {
        Set<String> paths = new LinkedHashSet<>();
        contents.keySet().forEach(path -> {
            for (int slash = path.indexOf('/'); slash > 0; slash = path.indexOf('/', slash + 1)) {
                paths.add(path.substring(0, slash));
            }
            paths.add(path);
        });
        return List.copyOf(paths);
    }

    private Directory list(String folder) {
        List<DirectoryEntry> entries = new ArrayList<>();
        List<String> paths = paths();
        for (int i = 0; i < paths.size(); i++) {
            String path = paths.get(i);
            if (path.startsWith(folder) && path.indexOf('/', folder.length()) < 0) {
                String name = path.substring(folder.length());
                byte[] bytes = contents.get(path);
                entries.add(new DirectoryEntry(
                        name, name, bytes == null, 0, i, bytes == null ? 0 : bytes.length, i, List.of()));
            }
        }
        return new Directory(entries, Optional.empty(), List.of());
    }

    @Override
    public FileContent read(DirectoryEntry file, int limit) {
        byte[] bytes = contents.get(paths().get((int) file.offset()));
        return new FileContent(Arrays.copyOf(bytes, Math.min(limit, bytes.length)), List.of());
    }

    @Override
    public FileBytes bytes(DirectoryEntry file) {
        String path = paths().get((int) file.offset());
        byte[] bytes = contents.get(path);
        return new FileBytes() {
            @Override
            public long size() {
                return bytes.length;
            }

            @Override
            public byte[] read(long offset, int length) {
                int from = (int) Math.min(bytes.length, offset);
                return Arrays.copyOfRange(bytes, from, (int) Math.min(bytes.length, (long) from + length));
            }

            @Override
            public List<String> warnings() {
                return Optional.ofNullable(torn.get(path)).stream().toList();
            }
        };
    }

    @Override
    public VolumeSpace space() {
        throw new AssertionError("the boot chain does not count space");
    }

    @Override
    public List<String> warnings() {
        return List.of();
    }

    @Override
    public List<String> remarks() {
        return List.of();
    }
}
