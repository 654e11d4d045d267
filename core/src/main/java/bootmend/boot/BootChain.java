package bootmend.boot;

import java.util.List;

/**
 * What one board needs from a card to start, link by link, and what that comes to.
 *
 * @param board board id
 * @param start which start it is of
 * @param links one of each kind, in the order in which a board comes to them
 * @param verdict what they come to
 */
public record BootChain(String board, Start start, List<BootLink> links, Verdict verdict) {

    /** Which start of a board. */
    public enum Start {
        ORDINARY("ordinary"),
        /** With the board's try-once flag. */
        TRY_ONCE("try-once");

        private final String word;

        Start(String word) {
            this.word = word;
        }

        public String word() {
            return word;
        }
    }

    public BootChain {
        links = List.copyOf(links);
    }

    /** The link of that kind. */
    public BootLink link(LinkKind kind) {
        return links.stream().filter(link -> link.kind() == kind).findFirst().orElseThrow();
    }
}
