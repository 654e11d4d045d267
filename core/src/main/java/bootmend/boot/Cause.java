package bootmend.boot;

/**
 * Why a board does not start from a card.
 *
 * @param link the link that breaks
 * @param sentence one plain sentence, safe to show
 * @param origin what it most likely came from
 * @param remedy what repairs it
 */
public record Cause(LinkKind link, String sentence, Origin origin, Remedy remedy) {}
