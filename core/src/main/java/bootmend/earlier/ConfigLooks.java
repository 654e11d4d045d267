package bootmend.earlier;

import bootmend.config.ConfigLine;
import bootmend.config.Filter;
import bootmend.config.FilterParser;
import bootmend.config.LineKind;
import bootmend.tuning.Board;
import bootmend.tuning.TuningTables;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Tells by its lines alone whether a text is a config file; nothing else of a card's free clusters is ever shown. */
final class ConfigLooks {

    /** A line of a config file is cut by a board at 98 bytes; comments may be longer. No source: a bound. */
    private static final int LONGEST_LINE = 512;

    private static final Pattern KEY = Pattern.compile("[a-z][a-z0-9_]*(:[01])?");
    /** Model filters of boards to come. No source: the form that all known ones have. */
    private static final Pattern MODEL = Pattern.compile("\\[(pi|cm)[0-9][0-9a-z+]{0,8}]");

    /** Keys of other files whose values are nobody's business; no key of a config file is like them (no source). */
    private static final Pattern SECRET =
            Pattern.compile(".*(pass|psk|ssid|secret|token|login|user|wifi|wpa|auth|cred|private).*");

    private static final String INITRAMFS = "initramfs ";

    private final ConfigKeys keys;
    private final FilterParser filters;

    ConfigLooks(TuningTables tables) {
        this.keys = ConfigKeys.load(tables.vocabulary());
        this.filters =
                new FilterParser(tables.boards().all().stream().map(Board::id).collect(Collectors.toSet()));
    }

    /** What one line looks like. */
    LineLook of(ConfigLine line) {
        byte[] bytes = line.bytes();
        if (bytes.length > LONGEST_LINE || !TextBytes.isText(bytes)) {
            return LineLook.FOREIGN;
        }
        LineKind kind = line.kind();
        if (kind instanceof LineKind.Blank
                || kind instanceof LineKind.Comment
                || kind instanceof LineKind.CommentedSetting) {
            return LineLook.NEUTRAL;
        } else if (kind instanceof LineKind.Section section) {
            return isFilter(section.raw()) ? LineLook.NEUTRAL : LineLook.FOREIGN;
        } else if (kind instanceof LineKind.Setting setting) {
            return setting(setting);
        } else if (kind instanceof LineKind.Include) {
            return LineLook.UNKNOWN;
        }
        return line.text().startsWith(INITRAMFS) ? LineLook.KNOWN : LineLook.FOREIGN;
    }

    private LineLook setting(LineKind.Setting setting) {
        if (keys.knows(setting.trimmedKey())) {
            return LineLook.KNOWN;
        }
        boolean plain = setting.keyBytes().from() == 0
                && KEY.matcher(setting.key()).matches()
                && !SECRET.matcher(setting.key()).matches()
                && setting.value().indexOf(' ') < 0;
        return plain ? LineLook.UNKNOWN : LineLook.FOREIGN;
    }

    private boolean isFilter(String raw) {
        return !(filters.parse(raw) instanceof Filter.Unknown)
                || MODEL.matcher(raw).matches();
    }

    /** Whether so many lines of each look make a config file; blank lines and comments count for nothing. */
    static boolean isConfig(int known, int unknown) {
        return known >= 1 && known >= 2 * unknown;
    }
}
