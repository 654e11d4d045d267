package bootmend.edit;

import bootmend.CardException;
import bootmend.config.ConfigDocument;
import bootmend.config.ConfigLine;
import bootmend.config.LineKind;
import bootmend.config.VisibleText;
import bootmend.tuning.Assignment;
import java.util.List;
import java.util.Set;

/**
 * One thing that a line of the config file gives a value, and the value that is wanted.
 *
 * <p>Of most keys the last line that counts wins. Overlays and pins add up: there a line is about the overlay or the pins
 * that its value begins with. A line with device tree parameters is about each of them. Sources: "Device trees, overlays,
 * and parameters", configuration/device-tree.adoc, commit 042aa6fd; that pins add up: value from memory.
 *
 * @param key the key on the line
 * @param subject what the line is about, such as {@code arm_freq}, {@code dtparam=audio}, {@code dtoverlay=gpio-fan}
 * @param value of a parameter its own, else the whole value of the line
 */
public record WantedSetting(String key, String subject, String value) {

    private static final Set<String> DTPARAM = Set.of("dtparam", "device_tree_param");
    private static final Set<String> DTOVERLAY = Set.of("dtoverlay", "device_tree_overlay");
    private static final String PINS = "gpio";

    /**
     * All that {@code text}, a line as a user writes it, wants.
     *
     * @throws CardException of kind usage where it would be no setting on a card
     */
    public static List<WantedSetting> parse(String text) throws CardException {
        return of(setting(text));
    }

    /** All that a line of a config file gives a value. */
    public static List<WantedSetting> of(LineKind.Setting setting) {
        String key = setting.key();
        if (DTPARAM.contains(key)) {
            return Assignment.of(setting).stream()
                    .map(part -> new WantedSetting(key, part.key(), part.value()))
                    .toList();
        }
        return List.of(new WantedSetting(key, subject(setting), setting.value()));
    }

    private static LineKind.Setting setting(String text) throws CardException {
        ConfigDocument document;
        try {
            document = ConfigDocument.parse(new byte[0]).append(List.of(text));
        } catch (IllegalArgumentException e) {
            throw CardException.usage(VisibleText.of(text) + " cannot stand in a config file", e.getMessage());
        }
        ConfigLine line = document.line(1);
        boolean plain = line.kind() instanceof LineKind.Setting setting
                && text.startsWith(setting.key())
                && setting.key().chars().noneMatch(c -> c <= ' ')
                && setting.value().equals(setting.value().strip());
        if (!plain) {
            throw CardException.usage(
                    VisibleText.of(text) + " is no setting",
                    "Write KEY=VALUE as in the config file, without blanks beside the equals sign, such as "
                            + "arm_freq=1800.");
        }
        LineKind.Setting setting = (LineKind.Setting) line.kind();
        boolean unnamed = setting.value().isEmpty() && (DTPARAM.contains(setting.key()) || adds(setting));
        if (unnamed) {
            throw CardException.usage(
                    VisibleText.of(text) + " names nothing", "Write what it is about, such as dtparam=audio=on.");
        }
        return setting;
    }

    private static boolean adds(LineKind.Setting setting) {
        return DTOVERLAY.contains(setting.key()) || setting.key().equals(PINS);
    }

    private static String subject(LineKind.Setting setting) {
        String value = setting.value();
        if (DTOVERLAY.contains(setting.key())) {
            return "dtoverlay=" + value.split("[,:]", 2)[0].strip();
        }
        return setting.key().equals(PINS) ? PINS + "=" + value.split("=", 2)[0].strip() : setting.key();
    }

    /** The line that says it, on its own. */
    public String line() {
        return isParameter() ? subject + "=" + value : key + "=" + value;
    }

    /** Whether several lines of the key count beside each other, so that none replaces the one before. */
    public boolean addsUp() {
        return !subject.equals(key) && !isParameter();
    }

    boolean isParameter() {
        return DTPARAM.contains(key);
    }

    /** Whether the line gives it a value. */
    boolean standsIn(LineKind kind) {
        if (!(kind instanceof LineKind.Setting setting)) {
            return false;
        }
        if (isParameter()) {
            return DTPARAM.contains(setting.key())
                    && Assignment.of(setting).stream()
                            .anyMatch(part -> part.key().equals(subject));
        }
        return subject(setting).equals(subject);
    }

    /** The value of a line that gives it one, with the wanted one. */
    String newValue(LineKind.Setting setting) {
        return isParameter() ? Assignment.with(setting, subject, value) : value;
    }

    /** Whether the line ends what lines of parameters before it were about and begins another overlay's. */
    static boolean opensOverlay(LineKind kind) {
        return isOverlay(kind) && !((LineKind.Setting) kind).value().isBlank();
    }

    static boolean isOverlay(LineKind kind) {
        return kind instanceof LineKind.Setting setting && DTOVERLAY.contains(setting.key());
    }
}
