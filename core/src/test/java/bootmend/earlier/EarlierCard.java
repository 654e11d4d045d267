package bootmend.earlier;

import bootmend.CardException;
import bootmend.card.CardEarlier;
import bootmend.card.OpenCard;
import bootmend.fat.FatVolume;
import bootmend.fat.Geometry;
import bootmend.fixtures.FatBuilder;
import bootmend.fixtures.FatSpec;
import bootmend.fixtures.SparseDisk;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryWorkplace;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;

/** A small card, FAT16 with clusters of four sectors, into whose free clusters a test puts what others left there. */
public final class EarlierCard {

    public static final int CLUSTER = 2048;

    public final SparseDisk disk;
    private final Geometry geometry;

    private EarlierCard(SparseDisk disk) throws IOException {
        this.disk = disk;
        this.geometry = FatVolume.open(disk).geometry();
    }

    public static EarlierCard of(UnaryOperator<FatBuilder> files) throws IOException {
        FatSpec spec = FatSpec.fat16(5000).sectorsPerCluster(4).build();
        SparseDisk disk = spec.emptyDisk();
        files.apply(new FatBuilder(spec).file("start4.elf", new byte[3000])).writeTo(disk, 0);
        return new EarlierCard(disk);
    }

    public static EarlierCard withConfig(String config) throws IOException {
        return of(card -> card.file("config.txt", bytes(config)));
    }

    /** Puts bytes into clusters side by side. */
    public EarlierCard put(long cluster, byte[] bytes) {
        disk.patch(geometry.clusterStart(cluster), bytes);
        return this;
    }

    public EarlierCard put(long cluster, String text) {
        return put(cluster, bytes(text));
    }

    public List<EarlierVersion> search() throws CardException, IOException {
        return search(SearchProgress.TO_THE_END).newestFirst();
    }

    public EarlierVersions search(SearchProgress progress) throws CardException, IOException {
        try (MemoryWorkplace bench = new MemoryWorkplace()) {
            bench.insert("/cards/one.img", disk);
            try (OpenCard card =
                    OpenCard.open(bench.workplace().opener(), CardRequest.of(Path.of("/cards/one.img")), false)) {
                return new CardEarlier(bench.workplace()).of(card, progress);
            }
        }
    }

    public static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.ISO_8859_1);
    }

    public static String text(EarlierVersion version) {
        return new String(version.text(), StandardCharsets.ISO_8859_1);
    }
}
