package bootmend.record;

import java.util.Optional;

/**
 * One tuning key of which two sets of settings differ.
 *
 * @param left its value in the first; empty where that leaves it at stock
 * @param right its value in the second
 */
public record SettingDifference(String key, Optional<String> left, Optional<String> right) {}
