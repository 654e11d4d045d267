package bootmend.device;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Names that Windows gives to devices, none of which survives as a path.
 *
 * <p>Source: "Naming Files, Paths, and Namespaces" (Win32 Device Namespaces, reserved names) and "CreateFileW" (physical
 * disks and volumes) of the Windows documentation; values from memory.
 */
final class WindowsNames {

    /** Slashes either way, and the backslash that making a path of it adds. */
    private static final Pattern DEVICE = Pattern.compile(
            "[\\\\/]{2}[.?][\\\\/](?:(PHYSICALDRIVE\\d{1,4})|([A-Z]:)|(VOLUME\\{[0-9A-F-]{36}\\}))[\\\\/]*",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern DRIVE = Pattern.compile("[A-Za-z]:");

    /** With or without an ending, these are devices in every folder. */
    private static final Pattern RESERVED = Pattern.compile(
            "(?:.*[\\\\/])?(?:CON|PRN|AUX|NUL|COM[0-9]|LPT[0-9])(?:\\.[^\\\\/]*)?\\s*", Pattern.CASE_INSENSITIVE);

    private WindowsNames() {}

    /** The disk's or volume's name as the system's own calls take it. */
    static Optional<String> device(String text) {
        Matcher found = DEVICE.matcher(text);
        if (!found.matches()) {
            return Optional.empty();
        }
        if (found.group(3) != null) {
            return Optional.of("\\\\?\\Volume"
                    + found.group(3).substring("Volume".length()).toLowerCase(Locale.ROOT));
        }
        String name = found.group(1) == null ? found.group(2) : found.group(1);
        return Optional.of("\\\\.\\" + name.toUpperCase(Locale.ROOT));
    }

    /** {@code E:} alone means the current folder on that drive; what its user means is the drive. */
    static Optional<String> drive(String text) {
        return DRIVE.matcher(text).matches() ? Optional.of(text.toUpperCase(Locale.ROOT) + "\\") : Optional.empty();
    }

    static boolean isReserved(String text) {
        return RESERVED.matcher(text).matches();
    }
}
