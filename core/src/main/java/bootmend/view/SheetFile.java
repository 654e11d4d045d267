package bootmend.view;

import java.util.List;

/**
 * A config file or one that it includes, line by line.
 *
 * @param path from the boot partition's root
 * @param lines the first of them, at most {@value SheetJob#MOST_LINES}
 * @param unshown how many more it has
 */
public record SheetFile(String path, List<SheetLine> lines, int unshown) {

    public SheetFile {
        lines = List.copyOf(lines);
    }
}
