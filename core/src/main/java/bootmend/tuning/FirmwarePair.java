package bootmend.tuning;

/**
 * A firmware file and the fixup file that belongs to it; the board needs both from the same release.
 *
 * <p>Source: "Boot options", config_txt/boot.adoc, commit f6839a6f.
 *
 * @param firmware file name, such as {@code start4.elf}
 * @param fixup file name, such as {@code fixup4.dat}
 */
public record FirmwarePair(String firmware, String fixup) {

    /** Reads {@code FIRMWARE+FIXUP}. */
    static FirmwarePair parse(String word, DataRow row) {
        String[] names = word.split("\\+");
        if (names.length != 2) {
            throw row.error("a firmware pair is written FIRMWARE+FIXUP, found " + word);
        }
        return new FirmwarePair(names[0], names[1]);
    }

    /** Both names in one phrase. */
    public String words() {
        return firmware + " with " + fixup;
    }
}
