package bootmend.boot;

import java.util.Optional;

/**
 * Why a board does or does not start from a card.
 *
 * @param board board id
 * @param because why the card can be meant for it, in a clause
 * @param chain of the start that was asked for, which is the ordinary one unless the board's facts say otherwise
 * @param tryOnce of the try-once start, where the card has other files or another partition for it
 */
public record BoardDiagnosis(String board, String because, BootChain chain, Optional<BootChain> tryOnce) {}
