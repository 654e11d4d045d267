package bootmend.config;

/**
 * A live line that the board comes to when it reads the config file and what it includes, in reading order.
 *
 * @param file the file's name, as the card or the include line has it
 * @param line the line; never blank, a comment or a section
 * @param condition whether the board heeds the line
 * @param none whether it stands under {@code [none]}
 */
public record ReachedLine(String file, ConfigLine line, Condition condition, boolean none) {}
