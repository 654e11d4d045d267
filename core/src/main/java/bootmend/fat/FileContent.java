package bootmend.fat;

import java.util.List;

/**
 * The bytes of a file as far as they could be read.
 *
 * @param doubts sentences on what was missing or unlikely; empty for a healthy file
 */
public record FileContent(byte[] bytes, List<String> doubts) {

    public FileContent {
        doubts = List.copyOf(doubts);
    }

    /** Whether every byte that the folder entry promises was read without a doubt. */
    public boolean isWhole() {
        return doubts.isEmpty();
    }
}
