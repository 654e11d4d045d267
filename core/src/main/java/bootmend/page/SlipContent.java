package bootmend.page;

import bootmend.StepWords;
import bootmend.config.VisibleText;
import bootmend.finding.Finding;
import bootmend.finding.Rule;
import bootmend.view.CheckView;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * What a packing slip says of one card, in the order in which it says it; text from the card is made visible.
 *
 * @param ready whether nothing stands against the card's purpose
 * @param facts what the card is, and what it was checked for
 * @param groups what was found, the heaviest first
 */
public record SlipContent(String card, boolean ready, String verdict, List<Fact> facts, List<Group> groups) {

    /** Stands at the end of every slip. */
    public static final String CAUTION =
            "The board maker's limits and local rules come first. This slip tells what stood "
                    + "on the card when it was read; it cannot tell whether a board is stable with it.";
    /** What is left to be filled in by hand. */
    public static final List<String> BLANKS = List.of("Checked by", "Received by", "Date");
    /** Stands where there are no groups. */
    public static final String NOTHING = "Nothing was found.";

    /** A published build carries start files in several variants, all of the same build but for their last letters. */
    private static final int MOST_BUILDS = 4;

    /**
     * One thing about the card.
     *
     * @param detail in small type below; may be empty
     */
    public record Fact(String name, String value, String detail) {}

    /** What one rule found, with what that means, what to do and where it is published. */
    public record Group(String severity, String rule, List<Item> items, String meaning, String remedy, String source) {

        public Group {
            items = List.copyOf(items);
        }
    }

    /**
     * One finding.
     *
     * @param boards those it holds for, in brackets; empty where it holds for all or none matters
     */
    public record Item(String where, String what, String boards) {}

    public SlipContent {
        facts = List.copyOf(facts);
        groups = List.copyOf(groups);
    }

    /**
     * The slip of a card that was checked.
     *
     * @param card as the user named it
     * @param zone the time zone that the date is given in
     * @param words what says the steps
     */
    public static SlipContent of(String card, CheckView view, ZoneId zone, StepWords words) {
        return new SlipContent(
                VisibleText.of(card),
                !view.hasBlocker(),
                CheckWords.verdict(view),
                facts(view, zone),
                Finding.byRule(view.findings()).entrySet().stream()
                        .map(rule -> group(rule.getKey(), rule.getValue(), view.boards(), words))
                        .toList());
    }

    private static List<Fact> facts(CheckView view, ZoneId zone) {
        String label = view.card().partition().label();
        DateTimeFormatter when = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'xxx", Locale.ROOT)
                .withZone(zone);
        List<Fact> facts = new ArrayList<>(List.of(
                new Fact("Label", label.isEmpty() ? "none" : VisibleText.of(label), ""),
                new Fact("Serial", view.card().partition().serial(), ""),
                new Fact(
                        "Volume",
                        view.card().partition().fatType() + ", "
                                + Amount.size(view.card().partition().bytes()),
                        ""),
                view.card()
                        .config()
                        .map(config -> new Fact(
                                "Config file",
                                VisibleText.of(config.path()) + ", " + config.bytes() + " bytes",
                                "sha256 " + config.sha256()))
                        .orElse(new Fact("Config file", "none that can be read", "")),
                new Fact("Checked", CheckWords.purpose(view.purpose()) + ", " + when.format(view.when()), ""),
                new Fact("Boards", CheckWords.boards(view), "")));
        view.firmware().stream()
                .limit(MOST_BUILDS)
                .map(build -> new Fact("Firmware", VisibleText.of(build.file()), VisibleText.of(build.words())))
                .forEach(facts::add);
        return facts;
    }

    private static Group group(Rule rule, List<Finding> findings, List<String> all, StepWords words) {
        return new Group(
                rule.heaviest().word(),
                rule.id(),
                findings.stream().map(finding -> item(finding, all)).toList(),
                rule.meaning(),
                words.remedy(rule.remedy(), rule.steps()),
                rule.source());
    }

    private static Item item(Finding finding, List<String> all) {
        return new Item(
                VisibleText.of(finding.where().words()),
                VisibleText.of(finding.what()),
                CheckWords.boards(finding, all).strip());
    }
}
