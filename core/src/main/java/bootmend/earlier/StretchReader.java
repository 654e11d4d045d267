package bootmend.earlier;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Takes from a stretch of text what is a version of the config file: whole where its lines, its first and its last byte say
 * so, else the lines that surely belong to one, and nothing of what may be another file's.
 */
final class StretchReader {

    private final ConfigLooks looks;
    private final FamiliarLines familiar;

    StretchReader(ConfigLooks looks, FamiliarLines familiar) {
        this.looks = looks;
        this.familiar = familiar;
    }

    /**
     * What was taken.
     *
     * @param bytes whole lines
     * @param whole whether that is the whole file
     */
    record Taken(byte[] bytes, boolean whole) {}

    /**
     * @param size bytes that the file had, where an entry tells that it began here; 0 where none does
     * @param mayGoOn whether a text that begins elsewhere may go on here
     */
    Optional<Taken> take(Stretch stretch, int size, boolean mayGoOn) {
        byte[] bytes = size > 0 ? Arrays.copyOf(stretch.bytes(), size) : stretch.bytes();
        Look look = new Look(stretch, bytes, size > 0, mayGoOn);
        look.go();
        return look.taken();
    }

    /** One look at one stretch, line by line. */
    private final class Look {

        private final Stretch stretch;
        private final byte[] bytes;
        private final boolean told;
        private final boolean mayGoOn;
        private final List<ConfigLine> lines;
        private final int[] starts;
        private final LineLook[] seen;
        private int from;
        private int to;
        private boolean sureStart = true;
        private boolean sureEnd;

        Look(Stretch stretch, byte[] bytes, boolean told, boolean mayGoOn) {
            this.stretch = stretch;
            this.bytes = bytes;
            this.told = told;
            this.mayGoOn = mayGoOn;
            this.lines = ConfigDocument.parse(bytes).lines();
            this.starts = new int[lines.size() + 1];
            this.seen = new LineLook[lines.size()];
            this.to = lines.size();
            this.sureEnd = told || stretch.ended();
            int at = bytes.length - lines.stream().mapToInt(Look::length).sum();
            for (int i = 0; i < lines.size(); i++) {
                starts[i] = at;
                at += length(lines.get(i));
            }
            starts[lines.size()] = at;
            if (lines.size() > 0) {
                starts[0] = 0;
            }
        }

        private static int length(ConfigLine line) {
            return line.bytes().length + line.end().bytes().length;
        }

        void go() {
            start();
            for (int i = from + 1; i < to; i++) {
                if (isSeam(i) && !familiar.isSure(lines.get(i)) && !isFollowed(i) || looks(i) == LineLook.FOREIGN) {
                    cut(i);
                } else if (!told && stretch.mayEndAt(starts[i]) && !familiar.follow(lines.get(i - 1), lines.get(i))) {
                    mayEnd(i);
                }
            }
            if (!sureEnd) {
                dropUnsureEnd();
            }
            if (!sureStart) {
                dropUnsureStart();
            }
        }

        private LineLook looks(int i) {
            if (seen[i] == null) {
                seen[i] = look(i);
            }
            return seen[i];
        }

        private LineLook look(int i) {
            LineLook look = looks.of(lines.get(i));
            boolean plain = look == LineLook.UNKNOWN
                    || look == LineLook.FOREIGN && TextBytes.isText(lines.get(i).bytes());
            return plain && familiar.isSure(lines.get(i)) ? LineLook.KNOWN : look;
        }

        /** Where the file began with another line, this is what is left of it behind a cluster that was written over. */
        private void start() {
            if (lines.isEmpty()) {
                return;
            }
            ConfigLine first = lines.get(0);
            if (stretch.offset() > 0) {
                sureStart = false;
                from = 1;
            } else if (looks(0) == LineLook.FOREIGN || looks(0) == LineLook.UNKNOWN && !told) {
                sureStart = false;
                from = 1;
            } else if (!told && (familiar.isLaterOnly(first) || mayGoOn && !familiar.beginsAt(lines, 0))) {
                sureStart = false;
            }
        }

        /** Whether the text goes on in a cluster elsewhere within a line, or right before it. */
        private boolean isSeam(int i) {
            return stretch.seams().stream().anyMatch(seam -> seam >= starts[i] && seam < starts[i + 1]);
        }

        /** A line that is put together of two clusters, and known with what stands around it. */
        private boolean isFollowed(int i) {
            return familiar.follow(lines.get(i - 1), lines.get(i));
        }

        private void cut(int i) {
            to = i;
            sureEnd = false;
        }

        /** Another file may begin with this line. */
        private void mayEnd(int i) {
            boolean known = false;
            for (int k = i; k < to && !known; k++) {
                known = looks(k) == LineLook.KNOWN;
            }
            if (familiar.beginsAt(lines, i)) {
                to = i;
                sureEnd = true;
            } else if (!known) {
                cut(i);
            } else if (!familiar.beginsAt(lines, 0)) {
                sureEnd = false;
            }
        }

        /** What stands below the last line that is known may be another file's. */
        private void dropUnsureEnd() {
            while (to > from && looks(to - 1) != LineLook.KNOWN) {
                to--;
            }
            if (to == lines.size() && to > from && !stretch.ended() && !told) {
                // The last line may have been longer.
                boolean cutOff = lines.get(to - 1).end().bytes().length == 0;
                to -= cutOff ? 1 : 0;
            }
            for (int i = from; i < to; i++) {
                if (looks(i) == LineLook.UNKNOWN) {
                    to = i;
                }
            }
            while (to > from && looks(to - 1) != LineLook.KNOWN) {
                to--;
            }
        }

        /** What stands above the first line that is known may be another file's. */
        private void dropUnsureStart() {
            for (int i = from; i < to; i++) {
                if (looks(i) == LineLook.UNKNOWN) {
                    from = i + 1;
                }
            }
            while (from < to && looks(from) != LineLook.KNOWN && !isSection(from)) {
                from++;
            }
        }

        private boolean isSection(int i) {
            return lines.get(i).kind() instanceof LineKind.Section;
        }

        Optional<Taken> taken() {
            int known = 0;
            int unknown = 0;
            for (int i = from; i < to; i++) {
                known += looks(i) == LineLook.KNOWN ? 1 : 0;
                unknown += looks(i) == LineLook.UNKNOWN ? 1 : 0;
            }
            if (!ConfigLooks.isConfig(known, unknown)) {
                return Optional.empty();
            }
            return Optional.of(new Taken(Arrays.copyOfRange(bytes, starts[from], starts[to]), sureStart && sureEnd));
        }
    }
}
