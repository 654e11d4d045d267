package bootmend.view;

/**
 * What becomes of a line on the board that was asked about.
 *
 * @param effect {@code set}, {@code depends}, {@code shadowed}, {@code ignored}, {@code not for this board} or
 *     {@code never applies}
 * @param words the same with what it depends on, what shadows it, or why it is ignored
 */
public record LineEffectView(String effect, String words) {}
