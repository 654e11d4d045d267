package bootmend.check;

import bootmend.config.ConfigLine;
import bootmend.config.ConfigName;
import bootmend.config.LineEnd;
import bootmend.finding.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The config file itself: its name, and whether it is text that a board can read. */
record ConfigFileCheck() implements Check {

    private static final String NAME = ConfigName.NAME;
    private static final Set<String> NEARLY = Set.of(NAME, "config", "config.txt.txt", "config.text", "config.txt.rtf");

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        List<CardFiles.Entry> alike = card.files().inRoot().stream()
                .filter(ConfigFileCheck::isNearlyConfig)
                .toList();
        if (card.read().configProblem().isPresent()) {
            remarks.add(Remark.of(
                    "config-not-plain-text",
                    Place.file(NAME),
                    card.read().configProblem().get()));
        } else if (card.read().config().isEmpty()) {
            if (alike.isEmpty()) {
                remarks.add(Remark.of("config-missing", Place.file(NAME), "There is no config.txt."));
            }
            alike.forEach(entry -> remarks.add(Remark.of(
                    "config-misnamed",
                    Place.file(entry.path()),
                    "There is no config.txt, but \"" + entry.path() + "\".")));
        } else {
            alike.forEach(entry -> remarks.add(Remark.of(
                    "config-lookalike",
                    Place.file(entry.path()),
                    "\"" + entry.path() + "\" stands beside config.txt.")));
        }
        card.read().config().forEach(text -> look(text, remarks));
        return remarks;
    }

    private static void look(ConfigText text, List<Remark> remarks) {
        Place where = Place.file(text.path());
        text.warnings().stream()
                .findFirst()
                .ifPresent(warning -> remarks.add(
                        Remark.of("config-not-whole", where, "The file was not read whole: " + warning + ".")));
        byte[] bytes = text.document().toBytes();
        long zeros = 0;
        for (byte each : bytes) {
            zeros += each == 0 ? 1 : 0;
        }
        if (zeros > 0) {
            remarks.add(
                    Remark.of("config-not-plain-text", where, zeros + " of its " + bytes.length + " bytes are zero."));
        }
        if (text.document().hasByteOrderMark()) {
            remarks.add(Remark.of("config-byte-order-mark", where, "The file begins with a byte-order mark."));
        }
        long bare = text.document().lines().stream()
                .map(ConfigLine::end)
                .filter(end -> end == LineEnd.CR)
                .count();
        if (bare > 0) {
            remarks.add(Remark.of(
                    "config-bare-line-ends",
                    where,
                    bare + (bare == 1 ? " line ends" : " lines end") + " with a lone carriage return."));
        }
    }

    /** Whether a name is the config file's but for blanks and endings; the name itself, in whatever case, is not. */
    private static boolean isNearlyConfig(CardFiles.Entry entry) {
        String name = entry.name().toLowerCase(Locale.ROOT);
        String bare = name.replaceAll("\\s", "");
        return NEARLY.contains(bare) && !name.equals(NAME) && !entry.alias().equalsIgnoreCase(NAME);
    }
}
