package bootmend.operation;

/**
 * How a board is started once with what is staged.
 *
 * <p>Source: "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86.
 */
public final class TryOnceStart {

    private TryOnceStart() {}

    /** The command that restarts a board with its try-once flag, as its maker documents it. */
    public static String command() {
        return "sudo reboot '0 tryboot'";
    }
}
