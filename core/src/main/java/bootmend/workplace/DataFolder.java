package bootmend.workplace;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;

/**
 * Where bootmend keeps its data: {@code BOOTMEND_HOME} where it is set, else the system's own place for it.
 *
 * <p>Sources: XDG Base Directory Specification 0.8 ({@code XDG_DATA_HOME}); for the other systems common practice.
 */
final class DataFolder {

    private final String system;
    private final String userHome;
    private final Map<String, String> environment;

    /** @param system the name Java gives the operating system */
    DataFolder(String system, String userHome, Map<String, String> environment) {
        this.system = system.toLowerCase(Locale.ROOT);
        this.userHome = userHome;
        this.environment = environment;
    }

    Path path() {
        String own = environment.getOrDefault("BOOTMEND_HOME", "");
        if (!own.isBlank()) {
            return Path.of(own);
        }
        if (system.startsWith("windows")) {
            String local = environment.getOrDefault("LOCALAPPDATA", "");
            return (local.isBlank() ? Path.of(userHome, "AppData", "Local") : Path.of(local)).resolve("bootmend");
        }
        if (system.startsWith("mac")) {
            return Path.of(userHome, "Library", "Application Support", "bootmend");
        }
        String data = environment.getOrDefault("XDG_DATA_HOME", "");
        // The specification says that a relative path there is to be ignored.
        Path base = data.startsWith("/") ? Path.of(data) : Path.of(userHome, ".local", "share");
        return base.resolve("bootmend");
    }
}
