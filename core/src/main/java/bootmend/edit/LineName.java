package bootmend.edit;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import bootmend.config.VisibleText;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A line of a card's config files as a user names it: by its number in the config file, by an included file's path, a colon
 * and a number, or by what it says, which finds it on any card.
 */
public record LineName(String text) {

    private static final Pattern NUMBER = Pattern.compile("(?:(.+):)?([0-9]{1,7})");

    /** Where a line stands. */
    record Spot(String path, int line) {}

    /** Whether it names a place, at which another card may have another line. */
    public boolean isNumber() {
        return NUMBER.matcher(text).matches();
    }

    /**
     * The line to be commented out; empty where that is done already.
     *
     * @param main the config file's path
     */
    Optional<Spot> toCommentOut(String main, Map<String, ConfigDocument> files) throws CardException {
        Optional<Spot> numbered = numbered(main, files);
        if (numbered.isPresent()) {
            return numbered.filter(spot -> line(spot, files).isLive());
        }
        Optional<Spot> live = only(spots(files, line -> line.isLive() && says(line.bytes())));
        return live.isPresent() ? live : absent(files, line -> line.isComment() && says(line.uncommented()));
    }

    /** The line to be made live; empty where it is already. */
    Optional<Spot> toUncomment(String main, Map<String, ConfigDocument> files) throws CardException {
        Optional<Spot> numbered = numbered(main, files);
        Optional<Spot> spot = numbered.isPresent()
                ? numbered.filter(each -> !line(each, files).isLive())
                : only(spots(files, line -> line.isComment() && says(line.uncommented())));
        if (numbered.isEmpty() && spot.isEmpty()) {
            return absent(files, line -> line.isLive() && says(line.bytes()));
        }
        if (spot.isPresent() && !isStatement(line(spot.get(), files))) {
            throw CardException.usage(
                    spot.get().path() + " line " + spot.get().line() + " is no statement that is commented out",
                    "Name a line such as #arm_freq=1800.",
                    NextStep.Plain.SHOW_CARD);
        }
        return spot;
    }

    /** Whether a board would do something with the line if it were live. */
    private static boolean isStatement(ConfigLine line) {
        ConfigDocument alone = ConfigDocument.parse(line.uncommented());
        if (alone.lines().isEmpty()) {
            return false;
        }
        LineKind kind = alone.line(1).kind();
        return kind instanceof LineKind.Setting setting && setting.key().chars().noneMatch(c -> c <= ' ')
                || kind instanceof LineKind.Include
                || kind instanceof LineKind.Section
                || alone.line(1).text().startsWith("initramfs ");
    }

    private Optional<Spot> numbered(String main, Map<String, ConfigDocument> files) throws CardException {
        Matcher matcher = NUMBER.matcher(text);
        if (!matcher.matches()) {
            return Optional.empty();
        }
        String path = matcher.group(1) == null ? main : matcher.group(1);
        Optional<String> file = files.keySet().stream()
                .filter(each -> each.equalsIgnoreCase(path))
                .findFirst();
        if (file.isEmpty()) {
            throw CardException.usage(
                    "the card has no config file " + VisibleText.of(path),
                    "Lines are named in " + String.join(", ", files.keySet()) + ".");
        }
        int number = Integer.parseInt(matcher.group(2));
        int last = files.get(file.get()).lines().size();
        if (number < 1 || number > last) {
            throw CardException.usage(
                    file.get() + " has no line " + number,
                    "It has " + last + (last == 1 ? " line." : " lines."),
                    NextStep.Plain.SHOW_CARD);
        }
        return Optional.of(new Spot(file.get(), number));
    }

    private boolean says(byte[] bytes) {
        ConfigDocument alone = ConfigDocument.parse(bytes);
        return !alone.lines().isEmpty() && alone.line(1).text().strip().equals(text.strip());
    }

    private static List<Spot> spots(Map<String, ConfigDocument> files, Predicate<ConfigLine> wanted) {
        List<Spot> spots = new ArrayList<>();
        files.forEach((path, document) ->
                document.lines().stream().filter(wanted).forEach(line -> spots.add(new Spot(path, line.number()))));
        return spots;
    }

    private Optional<Spot> only(List<Spot> spots) throws CardException {
        if (spots.size() > 1) {
            throw CardException.usage(
                    "several lines read " + VisibleText.of(text) + " ("
                            + spots.get(0).path() + " line " + spots.get(0).line() + " is the first)",
                    "Name one by its number.");
        }
        return spots.stream().findFirst();
    }

    private <T> Optional<T> absent(Map<String, ConfigDocument> files, Predicate<ConfigLine> done) throws CardException {
        if (spots(files, done).isEmpty()) {
            throw CardException.refused(
                    "no line of the config file reads " + VisibleText.of(text),
                    "Name the line as it stands there, or by its number.",
                    NextStep.Plain.SHOW_CARD);
        }
        return Optional.empty();
    }

    private static ConfigLine line(Spot spot, Map<String, ConfigDocument> files) {
        return files.get(spot.path()).line(spot.line());
    }
}
