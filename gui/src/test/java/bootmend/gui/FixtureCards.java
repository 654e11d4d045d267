package bootmend.gui;

import bootmend.fixtures.DamagedCards;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Small card images, written to a folder. */
public final class FixtureCards {

    public static final String LABEL = "LABBOOT";

    private final Path folder;

    public FixtureCards(Path folder) {
        this.folder = folder;
    }

    /** A FAT16 card with that config file. */
    public Path card(String name, String config) throws IOException {
        return write(name, config, false);
    }

    /** The same without a free cluster. */
    public Path full(String name, String config) throws IOException {
        return write(name, config, true);
    }

    /** One of the catalogued damages. */
    public Path damaged(String id) throws IOException {
        Path file = folder.resolve(id + ".img");
        DamagedCards.card(id).disk().writeTo(file);
        return file;
    }

    private Path write(String name, String config, boolean full) throws IOException {
        FatSpec spec = FatSpec.fat16(5000).serial(0x1AB).label(LABEL).build();
        SparseDisk disk = spec.emptyDisk();
        FatBuilder builder = new FatBuilder(spec).file("start.elf", new byte[2000])
                .file("config.txt", config.getBytes(StandardCharsets.US_ASCII));
        (full ? builder.fillUpTo(0) : builder).writeTo(disk, 0);
        Path file = folder.resolve(name);
        disk.writeTo(file);
        return file;
    }
}
