package bootmend.operation;

import bootmend.CardException;
import java.util.Objects;
import java.util.Optional;

/**
 * What became of a change that had been worked out; a closed set, which front ends go through with {@link #match}, so that
 * each says of a card what is true of that kind and nothing else.
 */
public sealed interface ChangeOutcome {

    /** One answer for each outcome. */
    interface Cases<R> {

        R written(Written outcome);

        R nothingToDo(NothingToDo outcome);

        R notMade(NotMade outcome);

        R refused(Refused outcome);

        R interrupted(Interrupted outcome);
    }

    /** The answer for this outcome. */
    <R> R match(Cases<R> cases);

    /** The change as it was worked out. */
    ProposedChange change();

    /**
     * This, where nothing went wrong.
     *
     * @throws CardException what went wrong
     */
    default ChangeOutcome orThrow() throws CardException {
        if (this instanceof Refused refused) {
            throw refused.error();
        }
        if (this instanceof Interrupted cut) {
            throw cut.error();
        }
        return this;
    }

    /** How it was made; empty where it was not. */
    default Optional<Made> ifMade() {
        return this instanceof Written written ? Optional.of(written.made()) : Optional.empty();
    }

    /** The change was written, synced and read back. */
    record Written(ProposedChange change, Made made) implements ChangeOutcome {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.written(this);
        }
    }

    /** The card was as wanted already; nothing was written. */
    record NothingToDo(ProposedChange change) implements ChangeOutcome {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.nothingToDo(this);
        }
    }

    /** It was only worked out, or the user did not want it made; nothing was written. */
    record NotMade(ProposedChange change) implements ChangeOutcome {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.notMade(this);
        }
    }

    /** It was found unsafe at the last moment; nothing was written. */
    record Refused(ProposedChange change, CardException error) implements ChangeOutcome {

        public Refused {
            Objects.requireNonNull(error);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.refused(this);
        }
    }

    /** It was begun and could not be finished; an undo record is open. */
    record Interrupted(ProposedChange change, CardException error) implements ChangeOutcome {

        public Interrupted {
            Objects.requireNonNull(error);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.interrupted(this);
        }
    }
}
