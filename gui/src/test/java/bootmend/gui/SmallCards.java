package bootmend.gui;

import bootmend.fixtures.DamagedCards;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Small FAT16 cards without a partition table, for tests. */
public final class SmallCards {

    /** Tuned in two lines. */
    public static final String TUNED = "# cart 3\narm_freq=2000\nover_voltage=6\ndtparam=audio=on\n";

    private SmallCards() {}

    /** Writes a card with that config file and gives its path. */
    public static Path write(Path folder, String name, String config) throws IOException {
        return write(folder, name, config, false);
    }

    /** The same with earlier texts of the config file in free clusters, the youngest first. */
    public static Path writeWithEarlier(Path folder, String name, String config, String... earlier) throws IOException {
        FatSpec spec = spec(name);
        SparseDisk disk = spec.emptyDisk();
        FatLayout layout = files(spec, config).writeTo(disk, 0);
        int cluster = layout.chain("config.txt")[0];
        for (int i = 0; i < earlier.length; i++) {
            disk.patch(
                    layout.clusterOffset(cluster + 40 * (earlier.length - i)),
                    earlier[i].getBytes(StandardCharsets.US_ASCII));
        }
        Path card = folder.resolve(name);
        disk.writeTo(card);
        return card;
    }

    /** The same without a free cluster. */
    public static Path writeFull(Path folder, String name, String config) throws IOException {
        return write(folder, name, config, true);
    }

    /** Writes a card with one of the catalogued damages. */
    public static Path writeDamaged(Path folder, String id) throws IOException {
        Path card = folder.resolve(id + ".img");
        DamagedCards.card(id).disk().writeTo(card);
        return card;
    }

    /** Makes a folder as a mounted boot partition is one. */
    public static Path mounted(Path folder, String config) throws IOException {
        Path boot = Files.createDirectory(folder.resolve("boot"));
        Files.writeString(boot.resolve("config.txt"), config);
        Files.write(boot.resolve("start4.elf"), new byte[100]);
        return boot;
    }

    private static Path write(Path folder, String name, String config, boolean full) throws IOException {
        FatSpec spec = spec(name);
        SparseDisk disk = spec.emptyDisk();
        FatBuilder builder = files(spec, config);
        (full ? builder.fillUpTo(0) : builder).writeTo(disk, 0);
        Path card = folder.resolve(name);
        disk.writeTo(card);
        return card;
    }

    private static FatSpec spec(String name) {
        return FatSpec.fat16(5000)
                .serial(0x1AB0 + name.hashCode() % 1000)
                .label("LAB")
                .build();
    }

    private static FatBuilder files(FatSpec spec, String config) {
        return new FatBuilder(spec)
                .file("start4.elf", new byte[2000])
                .file("config.txt", config.getBytes(StandardCharsets.US_ASCII));
    }
}
