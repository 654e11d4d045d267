package bootmend.check;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A kind of file that may be left on a boot partition and should not go out with it.
 *
 * @param name fits the file's or folder's name in lower case
 * @param anywhere whether it counts in every folder; else in the root alone
 * @param rule the rule for it
 * @param what what such a file holds, to follow "holds"; never the content itself
 * @param text what its text must hold for the rule to count; empty where the name alone tells
 */
record LeftFile(Pattern name, boolean anywhere, String rule, String what, Optional<Pattern> text) {

    boolean fits(CardFiles.Entry entry) {
        boolean there = anywhere || entry.parent().isEmpty();
        return there && name.matcher(entry.name().toLowerCase(Locale.ROOT)).matches();
    }
}
