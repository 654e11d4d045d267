package bootmend.config;

/**
 * What a line of the config file is, as the board reads its first {@value ConfigLine#LIMIT} bytes.
 *
 * <p>Source: "File format", config_txt/what_is_config_txt.adoc, commit 57ad5821; blanks and letter case: a Linux
 * distributor's boards documentation, "Edit the boot configuration", section on format.
 */
public sealed interface LineKind {

    /** Nothing, or blanks alone. */
    record Blank() implements LineKind {}

    /** A line that starts with {@code #}. */
    record Comment() implements LineKind {}

    /** A comment that would be a setting without its {@code #}: {@code #key=value}. */
    record CommentedSetting(String key, String value) implements LineKind {}

    /** A line that starts with a square bracket; {@code raw} is the line without its outer blanks. */
    record Section(String raw) implements LineKind {}

    /**
     * {@code key=value}.
     *
     * @param key everything between the leading blanks and the first {@code =}, a blank before {@code =} included
     * @param value what the board reads of the value: from {@code =} to the line's end, cut at the line limit
     * @param keyBytes where {@code key} stands in the line
     * @param valueBytes where the whole value stands in the line, up to the line's end even past the limit
     */
    record Setting(String key, String value, ByteRange keyBytes, ByteRange valueBytes) implements LineKind {

        /** The key without outer blanks: what the writer of the line meant, not what the board reads. */
        public String trimmedKey() {
            return Blanks.trim(key);
        }

        /** Whether a blank stands just before or just after {@code =}; the board does not skip it. */
        public boolean hasBlankBesideEquals() {
            return endsWithBlank(key) || startsWithBlank(value);
        }

        private static boolean endsWithBlank(String text) {
            return !text.isEmpty() && Blanks.is(text.charAt(text.length() - 1));
        }

        private static boolean startsWithBlank(String text) {
            return !text.isEmpty() && Blanks.is(text.charAt(0));
        }
    }

    /** {@code include FILE}: that file's text stands in this line's place. */
    record Include(String file) implements LineKind {}

    /** Anything else, such as {@code initramfs NAME ADDRESS} or bytes without meaning. */
    record Other() implements LineKind {}
}
