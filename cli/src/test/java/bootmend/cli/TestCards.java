package bootmend.cli;

import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;

/** Small cards as image files. */
final class TestCards {

    static final String TUNED = "# cart 3\narm_freq=2100\n[pi4]\nover_voltage=6\n[all]\narm_boost=1\ndtparam=spi=on\n";

    private TestCards() {}

    static Path tuned(Path folder) throws IOException {
        return with(folder, "tuned.img", TUNED.getBytes(StandardCharsets.UTF_8));
    }

    static Path with(Path folder, String name, byte[] config) throws IOException {
        return write(
                folder,
                name,
                new FatBuilder(FatSpec.fat16(5000)
                                .label("LAB")
                                .serial(0x0000BEEF)
                                .build())
                        .file("start.elf", new byte[700])
                        .file("config.txt", config));
    }

    /** A card with these files in its root. */
    static Path withFiles(Path folder, String name, Map<String, byte[]> files) throws IOException {
        FatBuilder builder = new FatBuilder(
                FatSpec.fat16(5000).label("LAB").serial(0x0000BEEF).build());
        files.forEach(builder::file);
        return write(folder, name, builder);
    }

    static Path withoutConfig(Path folder) throws IOException {
        return write(folder, "bare.img", new FatBuilder(FatSpec.fat16(5000).build()).file("start.elf", new byte[700]));
    }

    private static Path write(Path folder, String name, FatBuilder builder) throws IOException {
        FatSpec spec = FatSpec.fat16(5000).build();
        SparseDisk disk = spec.emptyDisk();
        builder.writeTo(disk, 0);
        Path file = folder.resolve(name);
        disk.writeTo(file);
        return file;
    }
}
