package bootmend.job;

/**
 * The config file, as a user is shown it.
 *
 * @param path from the boot partition's root
 * @param bytes its size
 * @param sha256 of its content, in hex
 */
public record ConfigView(String path, int bytes, String sha256) {
}
