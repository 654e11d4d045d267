package bootmend.view;

import bootmend.earlier.EarlierVersion;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * One earlier version of a card's config file.
 *
 * @param n its number, from 1, the newest first
 * @param version its text, where it was found and what orders it
 * @param beforeNow whether it is the one that was there before the present file
 * @param settings active tuning lines, key to value; of a key that several set, the last
 * @param changes tuning lines that differ from the present file
 * @param otherLines how many other lines differ
 * @param tried what trials and profiles say of these settings
 */
public record EarlierVersionView(
        int n,
        EarlierVersion version,
        boolean beforeNow,
        Map<String, String> settings,
        List<SettingChange> changes,
        int otherLines,
        List<TriedSettings> tried) {

    public EarlierVersionView {
        settings = Collections.unmodifiableMap(new LinkedHashMap<>(settings));
        changes = List.copyOf(changes);
        tried = List.copyOf(tried);
    }

    /** Its lines, each safe to show. */
    public List<String> lines() {
        return TextComparison.lines(version.text());
    }

    /** Of its bytes, in hex. */
    public String sha256() {
        return DigestUtils.sha256Hex(version.text());
    }

    /** Whether a trial or a profile says that its settings held. */
    public boolean isGood() {
        return tried.stream().anyMatch(TriedSettings::isGood);
    }
}
