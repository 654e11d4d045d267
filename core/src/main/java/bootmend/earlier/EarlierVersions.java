package bootmend.earlier;

import java.util.List;

/**
 * All that a search found.
 *
 * @param newestFirst those that surely or likely were written later come first
 * @param complete whether all of the free space was searched
 * @param searched bytes of free clusters that were read
 * @param dropped texts that were left out because there were too many
 */
public record EarlierVersions(List<EarlierVersion> newestFirst, boolean complete, long searched, int dropped) {

    public EarlierVersions {
        newestFirst = List.copyOf(newestFirst);
    }
}
