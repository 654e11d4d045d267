package bootmend.config;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Cuts a config file's bytes into lines; joining them again gives the same bytes. */
final class LineSplitter {

    private final byte[] bytes;
    private int position;

    private LineSplitter(byte[] bytes, int start) {
        this.bytes = bytes;
        this.position = start;
    }

    static List<ConfigLine> split(byte[] bytes, int start) {
        return new LineSplitter(bytes, start).lines();
    }

    private List<ConfigLine> lines() {
        List<ConfigLine> lines = new ArrayList<>();
        String section = null;
        while (position < bytes.length) {
            int from = position;
            while (position < bytes.length && bytes[position] != '\n' && bytes[position] != '\r') {
                position++;
            }
            byte[] content = Arrays.copyOfRange(bytes, from, position);
            LineEnd end = end();
            position += end.bytes().length;
            ConfigLine line = new ConfigLine(lines.size() + 1, content, end, section);
            if (line.kind() instanceof LineKind.Section opened) {
                section = opened.raw();
            }
            lines.add(line);
        }
        return List.copyOf(lines);
    }

    private LineEnd end() {
        if (position == bytes.length) {
            return LineEnd.NONE;
        }
        if (bytes[position] == '\n') {
            return LineEnd.LF;
        }
        boolean feedFollows = position + 1 < bytes.length && bytes[position + 1] == '\n';
        return feedFollows ? LineEnd.CRLF : LineEnd.CR;
    }
}
