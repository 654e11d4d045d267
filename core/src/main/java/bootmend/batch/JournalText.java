package bootmend.batch;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ThreadLocalRandom;

/**
 * The form of a batch's journal: lines of UTF-8, each ended by a mark, so that one that was cut off is never taken for a
 * whole one. The first names the form, the second the time, the number of cards and what is done; a line a card follows,
 * then a line for each beginning and each end.
 */
final class JournalText {

    static final String SUFFIX = ".batch";
    /** More than any batch; a larger number in a file is not believed. */
    static final int MOST_CARDS = 200_000;

    private static final String FORM = "bootmend batch 1";
    private static final String END = " .";
    private static final int LEAST_SHOWN = ' ';

    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS", Locale.ROOT).withZone(ZoneOffset.UTC);

    /** What a line says of a card. */
    enum Mark {
        BEGUN,
        DONE,
        FAILED,
        CUT
    }

    private JournalText() {}

    static Path folderIn(Path home) {
        return home.resolve("batches");
    }

    static Path fileIn(Path home, Instant now) {
        String end = HexFormat.of().toHexDigits(ThreadLocalRandom.current().nextInt());
        return folderIn(home).resolve(STAMP.format(now) + "-" + end + SUFFIX);
    }

    static String head(String what, List<Path> cards, Instant now) {
        StringBuilder head = new StringBuilder(FORM)
                .append(END)
                .append('\n')
                .append(now)
                .append(' ')
                .append(cards.size())
                .append(' ')
                .append(escaped(what))
                .append(END)
                .append('\n');
        cards.forEach(
                card -> head.append(escaped(card.toAbsolutePath().normalize().toString()))
                        .append(END)
                        .append('\n'));
        return head.toString();
    }

    /** Begins with a line's end, so that a line before it that was cut off spoils only itself. */
    static String line(Mark mark, int number) {
        return "\n" + mark.name().toLowerCase(Locale.ROOT) + " " + number + END + "\n";
    }

    /** The batch, or nothing where its head is not whole, so that no card of it was begun. */
    static Optional<CutBatch> read(Path file, byte[] bytes) {
        List<String> lines = new String(bytes, StandardCharsets.UTF_8).lines().toList();
        if (lines.size() < 2
                || !lines.get(0).equals(FORM + END)
                || !lines.get(1).endsWith(END)) {
            return Optional.empty();
        }
        String[] head = text(lines.get(1)).split(" ", 3);
        try {
            Instant began = Instant.parse(head[0]);
            int count = Integer.parseInt(head[1]);
            if (count < 0 || count > MOST_CARDS || lines.size() < 2 + count) {
                return Optional.empty();
            }
            List<String> cards = lines.subList(2, 2 + count);
            if (!cards.stream().allMatch(card -> card.endsWith(END))) {
                return Optional.empty();
            }
            Mark[] marks = marks(lines.subList(2 + count, lines.size()), count);
            return Optional.of(new CutBatch(
                    file,
                    began,
                    plain(head[2]),
                    cards(cards, marks, Mark.DONE),
                    cards(cards, marks, Mark.FAILED),
                    cut(cards, marks),
                    cards(cards, marks, null)));
        } catch (DateTimeException | NumberFormatException | IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    /** The last that each card's lines say; a line that says nothing is passed over. */
    private static Mark[] marks(List<String> lines, int count) {
        Mark[] marks = new Mark[count];
        for (String line : lines) {
            for (Mark mark : Mark.values()) {
                String name = mark.name().toLowerCase(Locale.ROOT) + " ";
                if (line.startsWith(name) && line.endsWith(END)) {
                    int number = number(text(line).substring(name.length()));
                    if (number >= 0 && number < count) {
                        marks[number] = mark;
                    }
                }
            }
        }
        return marks;
    }

    private static int number(String digits) {
        return digits.matches("\\d{1,9}") ? Integer.parseInt(digits) : -1;
    }

    private static List<String> cut(List<String> cards, Mark[] marks) {
        List<String> cut = new ArrayList<>(cards(cards, marks, Mark.BEGUN));
        cut.addAll(cards(cards, marks, Mark.CUT));
        return cut;
    }

    private static List<String> cards(List<String> cards, Mark[] marks, Mark wanted) {
        List<String> found = new ArrayList<>();
        for (int i = 0; i < marks.length; i++) {
            if (marks[i] == wanted) {
                found.add(plain(text(cards.get(i))));
            }
        }
        return found;
    }

    private static String text(String line) {
        return line.substring(0, Math.max(0, line.length() - END.length()));
    }

    private static String escaped(String text) {
        StringBuilder escaped = new StringBuilder();
        for (int i = 0; i < text.length(); i++) {
            char each = text.charAt(i);
            boolean plain = each >= LEAST_SHOWN && each != '%' && !Character.isISOControl(each) && each < '\u2028';
            escaped.append(plain ? String.valueOf(each) : "%" + HexFormat.of().toHexDigits(each));
        }
        return escaped.toString();
    }

    private static String plain(String escaped) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < escaped.length(); i++) {
            char each = escaped.charAt(i);
            if (each == '%'
                    && escaped.length() >= i + 5
                    && escaped.substring(i + 1, i + 5).matches("[0-9a-f]{4}")) {
                text.append((char) HexFormat.fromHexDigits(escaped, i + 1, i + 5));
                i += 4;
            } else {
                text.append(each);
            }
        }
        return text.toString();
    }
}
