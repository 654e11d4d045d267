package bootmend.view;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.codec.digest.DigestUtils;

/**
 * What a card's config file was before, as a user is shown it.
 *
 * @param card the path it was opened at
 * @param now the config file as it is; empty where there is none
 * @param versions the newest first
 * @param knownGood names of known-good profiles for the boards that the card can be for
 * @param complete whether all of the free space was searched
 * @param searched bytes of free clusters that were read
 * @param dropped texts that were left out because there were too many
 * @param mounted whether it is a mounted folder, of which no free cluster is seen
 */
public record EarlierView(
        String card,
        Optional<Present> now,
        List<EarlierVersionView> versions,
        List<String> knownGood,
        boolean complete,
        long searched,
        int dropped,
        boolean mounted) {

    public EarlierView {
        versions = List.copyOf(versions);
        knownGood = List.copyOf(knownGood);
    }

    /**
     * The config file as it is.
     *
     * @param text its bytes; not to be changed
     * @param settings active tuning lines, key to value; of a key that several set, the last
     * @param tried what trials and profiles say of these settings
     */
    public record Present(byte[] text, Map<String, String> settings, List<TriedSettings> tried) {

        public Present {
            tried = List.copyOf(tried);
        }

        /** Its lines, each safe to show. */
        public List<String> lines() {
            return TextComparison.lines(text);
        }

        /** Of its bytes, in hex. */
        public String sha256() {
            return DigestUtils.sha256Hex(text);
        }
    }

    /** The version that was there before the present one, surely or likely. */
    public Optional<EarlierVersionView> beforeNow() {
        return versions.stream().filter(EarlierVersionView::beforeNow).findFirst();
    }

    /** The newest version that a trial or a profile says is good; a version of which lines are missing counts too. */
    public Optional<EarlierVersionView> lastGood() {
        return versions.stream().filter(EarlierVersionView::isGood).findFirst();
    }
}
