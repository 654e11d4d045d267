package bootmend.operation;

import bootmend.device.PartitionWindow;
import bootmend.fat.DirectoryEntry;
import bootmend.fat.FatVolume;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** All files of a card, by path in lower case, as {@code bootmend.fat} reads them; folders one level deep. */
public final class CardFiles {

    private static final int LIMIT = 1 << 20;

    private CardFiles() {}

    public static Map<String, ByteBuffer> of(SparseDisk card, FatLayout layout) throws IOException {
        FatVolume volume = FatVolume.open(
                new PartitionWindow(card, layout.volumeOffset(), layout.spec().bytes()));
        Map<String, ByteBuffer> files = new TreeMap<>();
        add(files, "", volume, volume.root().entries());
        for (DirectoryEntry entry : volume.root().entries()) {
            if (entry.folder()) {
                add(files, entry.name() + "/", volume, volume.list(entry).entries());
            }
        }
        return files;
    }

    private static void add(
            Map<String, ByteBuffer> files, String folder, FatVolume volume, List<DirectoryEntry> entries)
            throws IOException {
        for (DirectoryEntry entry : entries) {
            if (!entry.folder()) {
                files.putIfAbsent(
                        (folder + entry.name()).toLowerCase(Locale.ROOT),
                        ByteBuffer.wrap(volume.read(entry, LIMIT).bytes()));
            }
        }
    }
}
