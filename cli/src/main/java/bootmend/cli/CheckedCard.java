package bootmend.cli;

import bootmend.CardException;
import bootmend.job.CheckView;
import java.util.Optional;

/**
 * A card and what became of checking it: exactly one of a view and an error.
 *
 * @param name the card as the user named it
 */
record CheckedCard(String name, Optional<CheckView> view, Optional<CardException> error) {

    static CheckedCard of(CheckView view, String name) {
        return new CheckedCard(name, Optional.of(view), Optional.empty());
    }

    static CheckedCard failed(String name, CardException error) {
        return new CheckedCard(name, Optional.empty(), Optional.of(error));
    }

    int exitCode() {
        return error.map(ExitCode::of)
                .orElseGet(() -> view.orElseThrow().hasBlocker() ? ExitCode.BLOCKER : ExitCode.DONE);
    }
}
