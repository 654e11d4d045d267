package bootmend.boot;

/** A link of the boot chain, in the order in which a board comes to it. */
public enum LinkKind {
    PARTITION("partition"),
    UPDATE("update"),
    FIRMWARE("firmware"),
    CONFIG("config"),
    KERNEL("kernel"),
    DEVICE_TREE("devicetree"),
    OVERLAYS("overlays"),
    INITRAMFS("initramfs"),
    COMMAND_LINE("cmdline"),
    ROOT("root");

    private final String word;

    LinkKind(String word) {
        this.word = word;
    }

    /** How JSON and listings say it. */
    public String word() {
        return word;
    }
}
