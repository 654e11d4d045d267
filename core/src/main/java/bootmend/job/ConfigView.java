package bootmend.job;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/** The config file, as a user is shown it. */
public final class ConfigView {

    private final String path;
    private final byte[] content;

    /**
     * @param path from the boot partition's root
     * @param content its bytes
     */
    public ConfigView(String path, byte[] content) {
        this.path = path;
        this.content = content.clone();
    }

    /** From the boot partition's root. */
    public String path() {
        return path;
    }

    /** Its size. */
    public int bytes() {
        return content.length;
    }

    /** Of its content, in hex; worked out only here, because most commands do not show it. */
    public String sha256() {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ConfigView view && path.equals(view.path) && Arrays.equals(content, view.content);
    }

    @Override
    public int hashCode() {
        return 31 * path.hashCode() + Arrays.hashCode(content);
    }

    @Override
    public String toString() {
        return path + ", " + content.length + " bytes";
    }
}
