package bootmend.view;

import bootmend.request.CardRequest;

/** What can be compared; a closed set. */
public sealed interface CompareSource {

    /** A card, or a config file on its own. */
    record OfCard(CardRequest request) implements CompareSource {}

    /** A profile of that name, which stands for a card with its settings and no other. */
    record OfProfile(String name) implements CompareSource {}
}
