package bootmend.view;

import java.util.Optional;

/**
 * A tuning line in which two texts of a config file differ.
 *
 * @param section as it stands above the line, brackets included; empty for all boards
 * @param then its value in the earlier text; empty where that has no such line
 * @param now its value in the present one; empty where that has no such line
 */
public record SettingChange(String section, String key, Optional<String> then, Optional<String> now) {}
