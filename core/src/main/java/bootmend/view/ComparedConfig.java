package bootmend.view;

import bootmend.card.ConfigFiles;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One side of a comparison: config files, wherever they were read.
 *
 * @param name as the user named it
 * @param files the config file and what it includes
 * @param boards ids of the boards that it can be meant for; empty where nothing tells one
 * @param tuningAlone whether it says nothing of anything but tuning, as a profile does
 * @param listing the other files beside it; empty where there are none to compare
 */
record ComparedConfig(
        String name, ConfigFiles files, Set<String> boards, boolean tuningAlone, Optional<CompareFiles> listing) {

    ComparedConfig {
        boards = Set.copyOf(boards);
    }

    List<String> warnings() {
        return files.warnings().stream().map(warning -> name + ": " + warning).toList();
    }
}
