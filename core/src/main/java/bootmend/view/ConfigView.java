package bootmend.view;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The config file, as a user is shown it. Its hash is worked out when it is first asked for, because most commands do not
 * show it; until then its content is kept.
 */
public final class ConfigView {

    private final String path;
    private final int bytes;
    private byte[] content;
    private String sha256;

    /**
     * @param path from the boot partition's root
     * @param content its bytes
     */
    public ConfigView(String path, byte[] content) {
        this.path = path;
        this.bytes = content.length;
        this.content = content.clone();
    }

    /** From the boot partition's root. */
    public String path() {
        return path;
    }

    /** Its size. */
    public int bytes() {
        return bytes;
    }

    /** Of its content, in hex. */
    public synchronized String sha256() {
        if (sha256 == null) {
            sha256 = hash(content);
            content = null;
        }
        return sha256;
    }

    /** This, without its content, for whoever keeps the views of many cards. */
    public ConfigView hashed() {
        sha256();
        return this;
    }

    private static String hash(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ConfigView view
                && path.equals(view.path)
                && bytes == view.bytes
                && sha256().equals(view.sha256());
    }

    @Override
    public int hashCode() {
        return 31 * path.hashCode() + bytes;
    }

    @Override
    public String toString() {
        return path + ", " + bytes + " bytes";
    }
}
