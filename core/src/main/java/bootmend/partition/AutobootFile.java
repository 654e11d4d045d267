package bootmend.partition;

import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;

/**
 * The card's {@code autoboot.txt}: which partition an ordinary start boots from.
 *
 * <p>Source: "autoboot.txt", config_txt/autoboot.adoc, commit 04d84a86 (at most 512 bytes; the filters {@code [all]},
 * {@code [none]} and {@code [tryboot]} alone).
 *
 * @param bootPartition the number it names for an ordinary start; 0 means the first bootable FAT partition
 * @param switchesPartition whether a try-once start takes another partition rather than another file
 */
public record AutobootFile(OptionalInt bootPartition, boolean switchesPartition) {

    public static final String NAME = "autoboot.txt";
    /** More than this is not read by the boot firmware. */
    public static final int MAX_BYTES = 512;

    /** Reads the first 512 bytes of the file; lines it cannot use are passed over, as the boot firmware does. */
    public static AutobootFile parse(byte[] bytes) {
        String text = new String(bytes, 0, Math.min(bytes.length, MAX_BYTES), StandardCharsets.ISO_8859_1);
        OptionalInt partition = OptionalInt.empty();
        boolean switches = false;
        boolean applies = true;
        for (String line : text.split("\\R", -1)) {
            String trimmed = line.strip();
            if (trimmed.startsWith("[")) {
                applies = trimmed.equals("[all]");
            } else if (applies && trimmed.startsWith("boot_partition=")) {
                partition = number(trimmed.substring("boot_partition=".length()), partition);
            } else if (applies && trimmed.startsWith("tryboot_a_b=")) {
                switches = trimmed.equals("tryboot_a_b=1");
            }
        }
        return new AutobootFile(partition, switches);
    }

    private static OptionalInt number(String text, OptionalInt before) {
        return text.matches("\\d{1,3}") ? OptionalInt.of(Integer.parseInt(text)) : before;
    }
}
