package bootmend.card;

import bootmend.config.ConfigName;
import bootmend.fat.BootFiles;
import bootmend.fat.Directory;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FileBytes;
import bootmend.fat.FileContent;
import bootmend.fat.VolumeSpace;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** A folder with nothing in it but a config file, whose bytes are known. */
record LoneFile(byte[] bytes) implements BootFiles {

    /** A folder has room for it, whatever that is the folder of. */
    private static final VolumeSpace SPACE = new VolumeSpace(1 << 16, 1 << 16, 512);

    private DirectoryEntry entry() {
        return new DirectoryEntry(ConfigName.NAME, ConfigName.NAME, false, 0, 2, bytes.length, 1, List.of());
    }

    @Override
    public Directory root() {
        return new Directory(List.of(entry()), Optional.empty(), List.of());
    }

    @Override
    public Directory list(DirectoryEntry folder) {
        return new Directory(List.of(), Optional.empty(), List.of());
    }

    @Override
    public FileContent read(DirectoryEntry file, int limit) {
        return new FileContent(Arrays.copyOf(bytes, Math.min(bytes.length, limit)), List.of());
    }

    @Override
    public FileBytes bytes(DirectoryEntry file) {
        return new FileBytes() {
            @Override
            public long size() {
                return bytes.length;
            }

            @Override
            public byte[] read(long offset, int length) {
                int from = (int) Math.min(bytes.length, offset);
                return Arrays.copyOfRange(bytes, from, (int) Math.min(bytes.length, from + (long) length));
            }

            @Override
            public List<String> warnings() {
                return List.of();
            }
        };
    }

    @Override
    public VolumeSpace space() {
        return SPACE;
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
