package bootmend.record;

import bootmend.card.ConfigFiles;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** The file that a trial's settings were read from, by what it held. */
final class TrialRan {

    private TrialRan() {}

    /** Such as {@code tryboot.txt sha256 ...}, with a word on the files it includes. */
    static String words(ConfigFiles files) {
        int included = files.all().size() - 1;
        return files.main().path() + " sha256 " + digest(files.main().bytes())
                + (included == 0 ? "" : " with " + included + " included");
    }

    private static String digest(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
