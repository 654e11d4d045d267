package bootmend.check;

import bootmend.boot.BootKeys;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import bootmend.finding.Place;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Settings written so that the board does not take them as they look.
 *
 * <p>Sources: a Linux distributor's boards documentation, "Edit the boot configuration", section on format; line limit:
 * "File format", config_txt/what_is_config_txt.adoc, commit 57ad5821.
 */
record SpellingCheck(Vocabulary vocabulary) implements Check {

    private static final Pattern TRAILING_COMMENT = Pattern.compile("(.*?)[ \\t]+#.*");

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        for (ConfigText text : card.read().config()) {
            for (ConfigLine line : text.document().lines()) {
                look(Place.line(text.path(), line.number()), line, remarks);
            }
        }
        return remarks;
    }

    private void look(Place where, ConfigLine line, List<Remark> remarks) {
        if (line.isLive() && line.isPastLimit()) {
            remarks.add(Remark.of(
                    "past-line-limit",
                    where,
                    "The line has " + line.bytes().length + " characters; the board reads " + ConfigLine.LIMIT + "."));
        }
        if (!(line.kind() instanceof LineKind.Setting setting)) {
            return;
        }
        if (setting.hasBlankBesideEquals()) {
            remarks.add(Remark.of(
                    "blank-beside-equals",
                    where,
                    "\"" + setting.key() + "=" + setting.value() + "\" has a blank beside its equals sign."));
        }
        rightCase(setting.trimmedKey())
                .ifPresent(right -> remarks.add(Remark.of(
                        "wrong-letter-case", where, setting.trimmedKey() + " is no key; " + right + " is one.")));
        Matcher comment = TRAILING_COMMENT.matcher(setting.value());
        if (comment.matches()) {
            remarks.add(Remark.of(
                    "trailing-comment",
                    where,
                    setting.key() + " gets the value \"" + setting.value() + "\", not \"" + comment.group(1) + "\"."));
        }
    }

    private Optional<String> rightCase(String key) {
        String lower = key.toLowerCase(Locale.ROOT);
        boolean known = vocabulary.findIgnoringCase(key).isPresent() || BootKeys.ALL.contains(lower);
        String right = vocabulary.findIgnoringCase(key).map(TuningKey::key).orElse(lower);
        return known && !right.equals(key) ? Optional.of(right) : Optional.empty();
    }

    /** Whether a value is a number but for blanks and a comment, which this check names. */
    static boolean explains(String value) {
        Matcher comment = TRAILING_COMMENT.matcher(value);
        String rest = comment.matches() ? comment.group(1) : value;
        boolean blankInFront = !value.isEmpty() && Character.isWhitespace(value.charAt(0));
        return (comment.matches() || blankInFront)
                && TuningNumber.parse(rest.strip()).isPresent();
    }
}
