package bootmend.earlier;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineEnd;
import bootmend.fat.FreeSpace;
import bootmend.fat.Geometry;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Consumer;

/** Goes through free clusters and takes out what may be text of a config file; holds one piece of the card at a time. */
final class FreeTexts {

    /** Longer than any config file that people write. No source: a bound against hostile cards. */
    static final int MOST_BYTES = 1 << 15;

    private static final int PIECE = 1 << 20;
    /** How often a text may go on somewhere else. No source: a bound against hostile cards. */
    private static final int MOST_SEAMS = 32;

    private final FreeSpace space;
    private final ConfigLooks looks;
    private final FamiliarLines familiar;
    private final int clusterBytes;
    private final int unit;

    FreeTexts(FreeSpace space, Geometry geometry, ConfigLooks looks, FamiliarLines familiar) {
        this.space = space;
        this.looks = looks;
        this.familiar = familiar;
        this.clusterBytes = geometry.bytesPerCluster();
        this.unit = geometry.bytesPerSector();
    }

    /**
     * Visits every free cluster.
     *
     * @return whether the search went on to the end
     */
    boolean scan(SearchProgress progress, Consumer<Stretch> found) throws IOException {
        long all = space.count() * clusterBytes;
        long done = 0;
        long resume = 0;
        for (long cluster = space.next(0); cluster >= 0; ) {
            if (!progress.goOn(done, all)) {
                return false;
            }
            int count = space.run(cluster, Math.max(1, PIECE / clusterBytes));
            byte[] piece = space.read(cluster, count);
            for (int i = 0; i < count; i++) {
                if (cluster + i >= resume) {
                    resume = visit(cluster + i, piece, i * clusterBytes, found);
                }
            }
            done += piece.length;
            cluster = space.next(cluster + count);
        }
        return true;
    }

    /** The text that begins at a free cluster, where it may be a config file's. */
    List<Stretch> at(long cluster) throws IOException {
        List<Stretch> found = new ArrayList<>();
        if (space.next(cluster) == cluster) {
            visit(cluster, space.read(cluster, 1), 0, found::add);
        }
        return found;
    }

    /** Takes out what stands in one cluster; returns the first cluster that was not looked at by that. */
    private long visit(long cluster, byte[] piece, int at, Consumer<Stretch> found) throws IOException {
        long next = cluster + 1;
        int sector = 0;
        while (sector < clusterBytes) {
            int end = TextBytes.end(piece, at + sector, at + clusterBytes) - at;
            if (end > sector && mayBegin(piece, at + sector, at + end)) {
                Stretch stretch = sector == 0 && end == clusterBytes
                        ? follow(cluster, Arrays.copyOfRange(piece, at, at + clusterBytes))
                        : inside(cluster, piece, at, sector, end);
                found.accept(stretch);
                next = Math.max(next, after(stretch));
            }
            sector = Math.max(sector + unit, (end + unit - 1) / unit * unit);
        }
        return next;
    }

    /** A text that does not fill its cluster. */
    private Stretch inside(long cluster, byte[] piece, int at, int from, int end) {
        int sectorEnd = (end + unit - 1) / unit * unit;
        boolean ended = end % unit == 0
                ? end < clusterBytes && piece[at + end - 1] == '\n'
                : TextBytes.isZero(piece, at + end, at + sectorEnd);
        return new Stretch(
                cluster, from, Arrays.copyOfRange(piece, at + from, at + end), ended, unit, List.of(), List.of());
    }

    /** A text that fills its cluster, as far as it goes on in the free clusters behind. */
    private Stretch follow(long first, byte[] start) throws IOException {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        text.writeBytes(start);
        List<Long> behind = new ArrayList<>();
        List<Integer> seams = new ArrayList<>();
        boolean ended = start[start.length - 1] == '\n';
        long cluster = first;
        boolean goesOn = true;
        while (goesOn && text.size() < MOST_BYTES) {
            long next = space.next(cluster + 1);
            byte[] more = next < 0 ? new byte[0] : space.read(next, 1);
            int end = TextBytes.end(more, 0, more.length);
            if (end == 0 || next != cluster + 1 && seams.size() == MOST_SEAMS) {
                return new Stretch(first, 0, text.toByteArray(), ended, unit, List.copyOf(behind), List.copyOf(seams));
            }
            if (next != cluster + 1) {
                seams.add(text.size());
            }
            behind.add(next);
            text.write(more, 0, end);
            int sectorEnd = (end + unit - 1) / unit * unit;
            ended = end % unit == 0 ? more[end - 1] == '\n' : TextBytes.isZero(more, end, sectorEnd);
            goesOn = end == clusterBytes && !isForeign(more, end);
            if (end == clusterBytes && !goesOn || text.size() >= MOST_BYTES) {
                ended = false;
            }
            cluster = next;
        }
        return new Stretch(first, 0, text.toByteArray(), ended, unit, List.copyOf(behind), List.copyOf(seams));
    }

    /** Where to look on: behind the text, or where another may have begun inside it. */
    private long after(Stretch stretch) {
        int length = stretch.bytes().length;
        int last = stretch.seams().isEmpty() ? length : stretch.seams().get(0);
        for (int at = clusterBytes; at < last; at += clusterBytes) {
            if (stretch.mayEndAt(at)) {
                return stretch.cluster() + at / clusterBytes;
            }
        }
        int passed = stretch.ended() ? (last + clusterBytes - 1) / clusterBytes : (last - 1) / clusterBytes;
        return stretch.cluster() + Math.max(1, passed);
    }

    /** Whether the first sector of a text can be of a config file; its first line may be the rest of one. */
    private boolean mayBegin(byte[] bytes, int from, int to) {
        int end = Math.min(to, from + unit);
        boolean cut = (end - from) % unit == 0;
        List<ConfigLine> lines =
                ConfigDocument.parse(Arrays.copyOfRange(bytes, from, end)).lines();
        int known = 0;
        int foreign = 0;
        for (ConfigLine line : lines) {
            boolean partOfLine = cut && line.number() == lines.size() && line.end() == LineEnd.NONE;
            LineLook look = partOfLine ? LineLook.NEUTRAL : looks.of(line);
            known += look == LineLook.KNOWN ? 1 : 0;
            if (look == LineLook.FOREIGN && !familiar.isSure(line)) {
                foreign++;
                if (line.number() > 1) {
                    return known > 0;
                }
            }
        }
        return foreign == 0 || known > 0;
    }

    /** Whether a cluster has a whole line that stands in no config file. */
    private boolean isForeign(byte[] bytes, int end) {
        List<ConfigLine> lines = ConfigDocument.parse(Arrays.copyOf(bytes, end)).lines();
        return lines.stream()
                .skip(1)
                .limit(Math.max(0, lines.size() - 2))
                .anyMatch(line -> looks.of(line) == LineLook.FOREIGN && !familiar.isSure(line));
    }
}
