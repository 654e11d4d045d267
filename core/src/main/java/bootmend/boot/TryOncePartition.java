package bootmend.boot;

import java.nio.charset.StandardCharsets;
import java.util.OptionalInt;

/**
 * Which partition {@code autoboot.txt} names for a try-once start.
 *
 * <p>Source: config_txt/autoboot.adoc, commit 04d84a86: the filters {@code [all]}, {@code [none]}, {@code [tryboot]}; a
 * later line wins.
 */
final class TryOncePartition {

    private static final int MOST_BYTES = 512;
    private static final String KEY = "boot_partition=";

    private TryOncePartition() {}

    static OptionalInt in(byte[] bytes) {
        String text = new String(bytes, 0, Math.min(bytes.length, MOST_BYTES), StandardCharsets.ISO_8859_1);
        OptionalInt partition = OptionalInt.empty();
        boolean applies = true;
        for (String line : text.split("\\R", -1)) {
            String trimmed = line.strip();
            if (trimmed.startsWith("[")) {
                applies = trimmed.equals("[all]") || trimmed.equals("[tryboot]");
            } else if (applies && trimmed.startsWith(KEY)) {
                String number = trimmed.substring(KEY.length());
                partition = number.matches("\\d{1,3}") ? OptionalInt.of(Integer.parseInt(number)) : partition;
            }
        }
        return partition;
    }
}
