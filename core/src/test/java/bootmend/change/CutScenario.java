package bootmend.change;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatItem;
import bootmend.fixtures.FatLayout;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * A card and a change of one of its files that is cut at every point.
 *
 * @param others every other file's content by path
 */
record CutScenario(String name, SparseDisk disk, FatLayout layout, FileChange change, Map<String, byte[]> others) {

    private static final String CONFIG = "config.txt";
    private static final String NEW_FILE = "tryboot.txt";
    /** Takes three slots. */
    private static final String LONG_NAME = "overlays/Another rather long.dtbo";

    private static final String ROOT_NAME = "Two slots.txt";

    /** Every scenario: each FAT type, with the shapes of chains and folders that take different ways. */
    static List<CutScenario> all() throws IOException {
        List<CutScenario> all = new ArrayList<>();
        for (String type : List.of("FAT12", "FAT16", "FAT32")) {
            int cluster = spec(type).clusterBytes();
            all.add(of(type, "from empty to one cluster", 0, 300, Shape.PLAIN));
            all.add(of(type, "from one cluster to empty", 300, 0, Shape.PLAIN));
            all.add(of(type, "one cluster", cluster - 20, cluster - 3, Shape.PLAIN));
            all.add(of(type, "growing across a cluster's end", cluster - 1, cluster + 1, Shape.PLAIN));
            all.add(of(type, "shrinking across a cluster's end", cluster + 1, cluster, Shape.PLAIN));
            all.add(of(type, "many clusters", 6 * cluster - 40, 6 * cluster - 39, Shape.PLAIN));
            all.add(of(type, "chains in different FAT sectors", 2 * cluster, 2 * cluster + 9, Shape.FAR_APART));
            all.add(of(type, "scattered chains", 4 * cluster, 4 * cluster + 9, Shape.SCATTERED));
            all.add(of(
                    type, "clusters of four sectors", 3 * 4 * cluster - 9, 4 * 4 * cluster - 7, Shape.LARGE_CLUSTERS));
            all.add(of(type, "sectors of 1024 bytes", 2000, 5000, Shape.LARGE_SECTORS));
            all.add(of(type, "a new file", -1, 700, Shape.PLAIN));
            all.add(of(type, "a new empty file", -1, 0, Shape.PLAIN));
            all.add(of(type, "a file that goes", 700, -1, Shape.PLAIN));
            if (type.equals("FAT32")) {
                all.add(of(type, "a long name where the root folder must grow", -1, 70, Shape.FULL_ROOT, ROOT_NAME));
                all.add(of(type, "a long name where another folder must grow", -1, 30, Shape.FOLDER_OF_15, LONG_NAME));
                all.add(of(type, "a new file where the root folder must grow", -1, 700, Shape.FULL_ROOT));
                all.add(of(type, "root folder in several clusters", 700, 900, Shape.LONG_ROOT));
            }
        }
        all.add(of("FAT12", "a new file in new folders", -1, 30, Shape.PLAIN, "lab boards/New.txt"));
        all.add(of("FAT12", "a long name in a full folder", -1, 30, Shape.FOLDER_OF_16, LONG_NAME));
        all.add(of("FAT16", "a long name up to a folder's end", -1, 300, Shape.FOLDER_OF_13, LONG_NAME));
        all.add(of("FAT12", "a long name past a clean sector's end", -1, 30, Shape.FOLDER_OF_14_IN_TWO, LONG_NAME));
        all.add(of("FAT16", "a long name past a sector's end", -1, 30, Shape.FOLDER_OF_15_IN_TWO, LONG_NAME));
        all.add(of("FAT16", "a long name up to a sector's end", -1, 30, Shape.FOLDER_OF_13_IN_TWO, LONG_NAME));
        return all;
    }

    /** Those of which the checker has nothing to say before the change. */
    static List<CutScenario> clean() throws IOException {
        return all().stream()
                .filter(scenario -> !scenario.name().contains("a sector's end"))
                .toList();
    }

    /** How the card is laid out. */
    private enum Shape {
        PLAIN,
        FAR_APART,
        SCATTERED,
        LONG_ROOT,
        LARGE_CLUSTERS,
        LARGE_SECTORS,
        FULL_ROOT,
        FOLDER_OF_13(13),
        FOLDER_OF_15(15),
        FOLDER_OF_16(16),
        FOLDER_OF_14_IN_TWO(14),
        FOLDER_OF_15_IN_TWO(15),
        FOLDER_OF_13_IN_TWO(13);

        private final int slots;

        Shape() {
            this(0);
        }

        /** @param slots how many of the first sixteen slots of the folder are taken, whose sector that is */
        Shape(int slots) {
            this.slots = slots;
        }

        boolean hasLargeClusters() {
            return this == LARGE_CLUSTERS || this == FOLDER_OF_14_IN_TWO || hasLeftovers();
        }

        /** Whether something stands past a folder's end mark, which systems stop at and the checker does not. */
        boolean hasLeftovers() {
            return this == FOLDER_OF_15_IN_TWO || this == FOLDER_OF_13_IN_TWO;
        }
    }

    private static FatSpec spec(String type) {
        return spec(type, Shape.PLAIN);
    }

    private static FatSpec spec(String type, Shape shape) {
        FatSpec.Builder builder =
                switch (type) {
                    case "FAT12" -> FatSpec.fat12(2000);
                    case "FAT16" -> FatSpec.fat16(5000);
                    default -> FatSpec.fat32(65600);
                };
        return builder.sectorsPerCluster(shape.hasLargeClusters() ? 4 : 1)
                .bytesPerSector(shape == Shape.LARGE_SECTORS ? 1024 : 512)
                .serial(0xC07)
                .label("CUTS")
                .build();
    }

    /** A negative size stands for no file at all. */
    private static CutScenario of(String type, String what, int oldBytes, int newBytes, Shape shape)
            throws IOException {
        return of(type, what, oldBytes, newBytes, shape, oldBytes < 0 || newBytes < 0 ? NEW_FILE : CONFIG);
    }

    private static CutScenario of(String type, String what, int oldBytes, int newBytes, Shape shape, String path)
            throws IOException {
        FatSpec spec = spec(type, shape);
        Map<String, byte[]> others = new LinkedHashMap<>();
        others.put("start.elf", bytes(1, 3000));
        others.put("overlays/a.dtbo", bytes(2, 700));
        others.put("overlays/a rather long name.dtbo", bytes(3, 90));
        others.put("cmdline.txt", bytes(4, 60));
        FileChange change = new FileChange(path, bytes(5, oldBytes), bytes(6, newBytes));
        FatBuilder builder = new FatBuilder(spec);
        if (shape == Shape.LONG_ROOT) {
            builder.rootAt(2, 900, 450, 451, 300, 301, 302, 1000, 20);
            for (int i = 0; i < 30; i++) {
                others.put("board-file-with-a-long-name-" + i + ".bin", bytes(100 + i, 40));
            }
        }
        if (shape == Shape.SCATTERED) {
            builder.stride(3);
        }
        if (shape == Shape.FULL_ROOT) {
            // Sixteen slots fill the one cluster: label, folder and two files with long names (two each), and these
            // nine.
            builder.rootAt(2);
            for (int i = 0; i < 9; i++) {
                others.put("F" + i + ".BIN", bytes(200 + i, 9));
            }
        }
        // Of a folder's first slots two lead to it and its parent, two have a.dtbo, and three have the long name.
        for (int i = 7; i < shape.slots; i++) {
            others.put("overlays/F" + i + ".BIN", bytes(300 + i, 9));
        }
        builder.directory("overlays");
        others.forEach(builder::file);
        if (change.before() != null) {
            FatItem file = FatItem.file(path, change.before());
            // A first entry of the table's third sector or later, whatever the type's width.
            builder.add("", shape == Shape.FAR_APART ? file.at(1200, 1201) : file);
        }
        SparseDisk disk = spec.emptyDisk();
        FatLayout layout = builder.writeTo(disk, 0);
        if (shape == Shape.FULL_ROOT) {
            // What once stood in free clusters must not become folder entries.
            int free = layout.chain("F8.BIN")[0] + 1;
            disk.patch(layout.clusterOffset(free), bytes(9, 20 * spec.clusterBytes()));
        }
        if (shape.slots > 0) {
            assertThat(slotsOf(disk, layout)).isEqualTo(shape.slots);
        }
        if (shape.hasLeftovers()) {
            // What stands past a folder's end mark counts for nothing, whatever it is.
            long overlays = layout.clusterOffset(layout.chain("overlays")[0]);
            disk.patch(overlays + shape.slots * 32L + 32, bytes(10, 4 * 512 - shape.slots * 32 - 32));
        }
        return new CutScenario(type + ", " + what, disk, layout, change, others);
    }

    private static int slotsOf(SparseDisk disk, FatLayout layout) {
        int slots = 0;
        long overlays = layout.clusterOffset(layout.chain("overlays")[0]);
        while (slots < 16 && disk.toBytes(overlays + slots * 32L, 1)[0] != 0) {
            slots++;
        }
        return slots;
    }

    private static byte[] bytes(long seed, int length) {
        if (length < 0) {
            return null;
        }
        byte[] bytes = new byte[length];
        new Random(seed).nextBytes(bytes);
        return bytes;
    }

    @Override
    public String toString() {
        return name;
    }
}
