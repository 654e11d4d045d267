package bootmend.earlier;

import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Lines of texts that belong together, and which of them follow each other: how successive versions of one file are alike. */
final class FamiliarLines {

    private record Pair(String above, String below) {}

    /** How many lines at the top of a file tell where one begins. */
    private static final int HEAD = 4;

    private final Set<String> first = new HashSet<>();
    private final List<Set<String>> heads =
            Stream.<Set<String>>generate(HashSet::new).limit(HEAD).toList();
    private final Set<String> later = new HashSet<>();
    private final Set<String> sure = new HashSet<>();
    private final Set<Pair> pairs = new HashSet<>();

    /** Learns a file that is known whole. */
    void addWhole(byte[] text) {
        List<ConfigLine> lines = ConfigDocument.parse(text).lines();
        for (int i = 0; i < lines.size(); i++) {
            String line = text(lines.get(i));
            sure.add(line);
            (i == 0 ? first : later).add(line);
            if (i < HEAD && !line.isBlank()) {
                heads.get(i).add(line);
            }
            if (i > 0) {
                pairs.add(new Pair(text(lines.get(i - 1)), line));
            }
        }
    }

    /** Learns a text of which nobody knows yet where a file ends in it and another begins. */
    void add(Stretch stretch) {
        List<ConfigLine> lines = ConfigDocument.parse(stretch.bytes()).lines();
        int at = 0;
        for (int i = 0; i < lines.size(); i++) {
            ConfigLine line = lines.get(i);
            int end = at + line.bytes().length + line.end().bytes().length;
            int from = at;
            boolean broken =
                    stretch.mayEndAt(at) || stretch.seams().stream().anyMatch(seam -> seam >= from && seam < end);
            if (i > 0 && !broken) {
                later.add(text(line));
                pairs.add(new Pair(text(lines.get(i - 1)), text(line)));
            }
            at = end;
        }
    }

    /** Whether one of these lines was seen right below the other. */
    boolean follow(ConfigLine above, ConfigLine below) {
        return pairs.contains(new Pair(text(above), text(below)));
    }

    /** Whether a file that is known whole has this line. */
    boolean isSure(ConfigLine line) {
        return sure.contains(text(line));
    }

    /** Whether the lines from {@code at} on are like the first ones of a known file. */
    boolean beginsAt(List<ConfigLine> lines, int at) {
        for (int i = 0; i < HEAD && at + i < lines.size(); i++) {
            if (heads.get(i).contains(text(lines.get(at + i)))) {
                return true;
            }
        }
        return false;
    }

    private boolean isFirst(ConfigLine line) {
        return first.contains(text(line));
    }

    /** Whether this line was seen below others and no known file begins with it. */
    boolean isLaterOnly(ConfigLine line) {
        return !isFirst(line) && later.contains(text(line));
    }

    /** One character a byte, so that no two lines are alike that are not. */
    private static String text(ConfigLine line) {
        return new String(line.bytes(), StandardCharsets.ISO_8859_1);
    }
}
