package bootmend.check;

import bootmend.tuning.resolve.Candidate;
import java.util.List;

/**
 * What a board needs from the card to start.
 *
 * @param files every file, each once
 * @param prefixesToNowhere the lines whose {@code os_prefix} leads to no kernel and device tree
 */
record BoardNeeds(List<BootFile> files, List<Candidate> prefixesToNowhere) {

    BoardNeeds {
        files = List.copyOf(files);
        prefixesToNowhere = List.copyOf(prefixesToNowhere);
    }
}
