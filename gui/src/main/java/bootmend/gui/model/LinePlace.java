package bootmend.gui.model;

/**
 * A line of a file on the card.
 *
 * @param file its path on the boot partition
 * @param line counts from 1
 */
public record LinePlace(String file, int line) {}
