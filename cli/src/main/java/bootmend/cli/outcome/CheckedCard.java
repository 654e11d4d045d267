package bootmend.cli.outcome;

import bootmend.CardException;
import bootmend.batch.CardResult;
import bootmend.view.CheckView;
import java.util.Optional;

/**
 * A card and what became of checking it: exactly one of a view and an error.
 *
 * @param name the card as the user named it
 */
public record CheckedCard(String name, Optional<CheckView> view, Optional<CardException> error) {

    public static CheckedCard of(CheckView view, String name) {
        return new CheckedCard(name, Optional.of(view), Optional.empty());
    }

    public static CheckedCard of(CardResult<CheckView> result) {
        return new CheckedCard(result.card().toString(), result.view(), result.error());
    }

    public static CheckedCard failed(String name, CardException error) {
        return new CheckedCard(name, Optional.empty(), Optional.of(error));
    }
}
