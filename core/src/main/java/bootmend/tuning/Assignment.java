package bootmend.tuning;

import bootmend.config.LineKind;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * What a config line gives a value: its key, or a parameter of the device tree or of an overlay.
 *
 * <p>Source: "Device trees, overlays, and parameters", configuration/device-tree.adoc, commit 042aa6fd: several
 * parameters on a line are separated by commas, and one without a value is switched on. Values from memory: the colon
 * behind an overlay's name, and the older names of the two keys.
 *
 * @param key the key; {@code dtparam=NAME} or {@code dtoverlay=OVERLAY,NAME} for a parameter
 * @param value the value as written; {@code on} for a parameter without one
 */
public record Assignment(String key, String value) {

    private static final Set<String> DTPARAM = Set.of("dtparam", "device_tree_param");
    private static final Set<String> DTOVERLAY = Set.of("dtoverlay", "device_tree_overlay");
    private static final String ON = "on";

    /** All that a line assigns, in its order; just one but for the lines with parameters. */
    public static List<Assignment> of(LineKind.Setting setting) {
        return of(setting.key(), setting.value());
    }

    /** The same of a line that is commented out, or of a key with other blanks or letter case. */
    static List<Assignment> of(String key, String value) {
        String head = head(key, value);
        if (head == null) {
            return List.of(new Assignment(key, value));
        }
        List<Assignment> found = new ArrayList<>();
        for (String part : parameters(key, value)) {
            int equals = part.indexOf('=');
            found.add(
                    equals < 0
                            ? new Assignment(head + part.strip(), ON)
                            : new Assignment(head + part.substring(0, equals).strip(), part.substring(equals + 1)));
        }
        return found;
    }

    /** What stands before a parameter's name in its key; null where the line has none. */
    private static String head(String key, String value) {
        if (DTPARAM.contains(key)) {
            return "dtparam=";
        }
        return DTOVERLAY.contains(key)
                ? "dtoverlay=" + value.substring(0, nameEnd(value)).strip() + ","
                : null;
    }

    private static List<String> parameters(String key, String value) {
        if (DTPARAM.contains(key)) {
            return List.of(value.split(",", -1));
        }
        int end = nameEnd(value);
        return end == value.length()
                ? List.of()
                : List.of(value.substring(end + 1).split(",", -1));
    }

    private static int nameEnd(String value) {
        for (int i = 0; i < value.length(); i++) {
            if (value.charAt(i) == ',' || value.charAt(i) == ':') {
                return i;
            }
        }
        return value.length();
    }

    /**
     * The line's value without some of its parameters; empty where nothing that does anything would be left.
     *
     * @param setting a line with parameters
     * @param keys the keys of those to leave out
     */
    static String without(LineKind.Setting setting, Set<String> keys) {
        String value = setting.value();
        List<Assignment> all = of(setting);
        List<String> texts = parameters(setting.key(), value);
        List<String> kept = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (!keys.contains(all.get(i).key())) {
                kept.add(texts.get(i));
            }
        }
        if (DTPARAM.contains(setting.key())) {
            return String.join(",", kept);
        }
        int end = nameEnd(value);
        return value.substring(0, end) + (kept.isEmpty() ? "" : value.charAt(end) + String.join(",", kept));
    }

    /** The line's value with another value for one of the things it assigns; the same where it does not assign it. */
    public static String with(LineKind.Setting setting, String key, String newValue) {
        if (head(setting.key(), setting.value()) == null) {
            return setting.key().equals(key) ? newValue : setting.value();
        }
        List<Assignment> all = of(setting);
        List<String> texts = new ArrayList<>(parameters(setting.key(), setting.value()));
        for (int i = 0; i < all.size(); i++) {
            if (all.get(i).key().equals(key)) {
                String text = texts.get(i);
                int equals = text.indexOf('=');
                texts.set(i, (equals < 0 ? text : text.substring(0, equals)) + "=" + newValue);
            }
        }
        if (DTPARAM.contains(setting.key())) {
            return String.join(",", texts);
        }
        int end = nameEnd(setting.value());
        return setting.value().substring(0, end)
                + (texts.isEmpty() ? "" : setting.value().charAt(end) + String.join(",", texts));
    }

    /** Whether a line's key is one whose value is a list of parameters. */
    public static boolean isList(LineKind.Setting setting) {
        return head(setting.key(), setting.value()) != null;
    }
}
