package bootmend.view;

import bootmend.finding.Purpose;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;

/**
 * What a card is to be checked for.
 *
 * @param board what is known about the board that it is for; where that names none, every board that the card can be meant for
 */
public record CheckRequest(CardRequest card, Purpose purpose, BoardRequest board) {}
