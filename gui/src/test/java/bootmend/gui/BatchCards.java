package bootmend.gui;

import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Small card images of the lab in a folder, FAT16 without a partition table. */
public final class BatchCards {

    private static final String TUNED = "dtparam=spi=on\n[pi4]\narm_freq=2000\nover_voltage=6\n[all]\n";
    private static final String STOCK = "dtparam=spi=on\n";
    private static final int CLUSTERS = 4200;

    private final Path folder;

    public BatchCards(Path folder) {
        this.folder = folder;
    }

    /** A card with two tuning lines. */
    public Path tuned(String name) throws IOException {
        return card(name, TUNED);
    }

    /** A card without one. */
    public Path stock(String name) throws IOException {
        return card(name, STOCK);
    }

    /** Cards with two tuning lines each, each with a serial of its own. */
    public List<Path> tuned(int count) throws IOException {
        List<Path> cards = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            cards.add(tuned(String.format("lab-%05d.img", i)));
        }
        return cards;
    }

    /** A file that is no card. */
    public Path broken(String name) throws IOException {
        return Files.write(folder.resolve(name), new byte[4096]);
    }

    private Path card(String name, String config) throws IOException {
        FatSpec spec =
                FatSpec.fat16(CLUSTERS).label("LAB").serial(name.hashCode()).build();
        SparseDisk disk = spec.emptyDisk();
        new FatBuilder(spec)
                .file("start4.elf", new byte[3000])
                .file("fixup4.dat", new byte[700])
                .file("config.txt", config.getBytes(StandardCharsets.US_ASCII))
                .writeTo(disk, 0);
        Path file = folder.resolve(name);
        disk.writeTo(file);
        return file;
    }

    /** The config file's text, found by looking for it in the image. */
    public static boolean holds(Path card, String text) throws IOException {
        return new String(Files.readAllBytes(card), StandardCharsets.ISO_8859_1).contains(text);
    }
}
