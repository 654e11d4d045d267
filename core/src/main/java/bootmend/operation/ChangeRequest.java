package bootmend.operation;

import bootmend.request.CardRequest;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What a user wants done to a card; a closed set, which front ends and the operation go through with {@link #match}, so
 * that a new kind does not compile before each of them has an answer to it.
 */
public sealed interface ChangeRequest {

    /** One answer for each kind of request. */
    interface Cases<R> {

        R toStock(ToStock request);

        R toProfile(ToProfile request);

        R toSettings(ToSettings request);

        R toEarlier(ToEarlier request);

        R undo(Undo request);

        R repair(Repair request);

        R fromGood(FromGood request);

        R stage(Stage request);

        R adopt(Adopt request);

        R unstage(Unstage request);

        R edit(Edit request);
    }

    /** The answer for this kind. */
    <R> R match(Cases<R> cases);

    /**
     * Tuning lines back to stock.
     *
     * @param remove whether lines are taken out rather than commented out
     * @param also keys whose lines are shown only, to be reset as well, such as {@code arm_boost}
     */
    record ToStock(boolean remove, Set<String> also) implements ChangeRequest {

        /** Commenting out, and nothing beyond what resets. */
        public static final ToStock PLAIN = new ToStock(false, Set.of());

        public ToStock {
            also = Set.copyOf(also);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.toStock(this);
        }
    }

    /**
     * A profile's settings.
     *
     * @param name the profile's
     * @param board the board that the card is for, where it is not the profile's
     */
    record ToProfile(String name, Optional<String> board) implements ChangeRequest {

        public ToProfile {
            Objects.requireNonNull(name);
            Objects.requireNonNull(board);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.toProfile(this);
        }
    }

    /**
     * The tuning settings of another card.
     *
     * @param name the other card's, to be shown
     * @param board the board that both are for
     * @param settings key to value as written; none where the other card is at stock
     */
    record ToSettings(String name, String board, Map<String, String> settings) implements ChangeRequest {

        public ToSettings {
            Objects.requireNonNull(name);
            Objects.requireNonNull(board);
            settings = Collections.unmodifiableMap(new LinkedHashMap<>(settings));
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.toSettings(this);
        }
    }

    /**
     * An earlier version of the config file put back, as far as it still stands on the card.
     *
     * @param which its number in the list of what is found, the newest being 1, or the beginning of its hash
     * @param whole whether the whole file is put back rather than its tuning lines alone
     * @param board the board for which its tuning lines are put back; empty for whatever board the lines are for
     */
    record ToEarlier(String which, boolean whole, Optional<String> board) implements ChangeRequest {

        public ToEarlier {
            Objects.requireNonNull(which);
            Objects.requireNonNull(board);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.toEarlier(this);
        }
    }

    /**
     * Changes that were made to the card undone.
     *
     * @param to the change after which the card is to be as it was then, 0 for before the first; empty undoes the last
     */
    record Undo(OptionalInt to) implements ChangeRequest {

        /** The last change undone. */
        public static final Undo LAST = new Undo(OptionalInt.empty());

        /** Back to how the card was after a change of its history. */
        public static Undo to(int number) {
            return new Undo(OptionalInt.of(number));
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.undo(this);
        }
    }

    /**
     * Damage repaired, as far as that needs no guess.
     *
     * @param freeLost whether clusters that belong to no file are freed
     */
    record Repair(boolean freeLost) implements ChangeRequest {

        /** Nothing freed that may hold a piece of a file. */
        public static final Repair PLAIN = new Repair(false);

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.repair(this);
        }
    }

    /**
     * Boot files that are missing or damaged, from a card where they are whole.
     *
     * @param good a card, an image, a folder of boot files or kept files
     * @param board the board that the card is for; empty for every board that it can be meant for
     * @param files paths of files that are taken whatever they are, the card's own among them
     */
    record FromGood(CardRequest good, Optional<String> board, List<String> files) implements ChangeRequest {

        public FromGood {
            Objects.requireNonNull(good);
            Objects.requireNonNull(board);
            files = List.copyOf(files);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.fromGood(this);
        }
    }

    /**
     * Settings laid beside the config file, for one try.
     *
     * @param board the board that the card is for
     * @param settings each {@code KEY=NUMBER}; what the card sets on that board besides stays
     */
    record Stage(String board, List<String> settings) implements ChangeRequest {

        public Stage {
            settings = List.copyOf(settings);
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.stage(this);
        }
    }

    /** The staged settings made the config file's. */
    record Adopt() implements ChangeRequest {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.adopt(this);
        }
    }

    /** The staged settings taken away. */
    record Unstage() implements ChangeRequest {

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.unstage(this);
        }
    }

    /**
     * Single settings given their values, and single lines commented out or made live.
     *
     * @param settings each {@code KEY=VALUE}, as a line of the config file says it
     * @param section the section that they are meant for, with or without brackets; empty leaves it to the boards
     * @param board the board that the card is for; empty for every board that it can be meant for
     * @param commentOut lines by number, by a file's path, a colon and a number, or by what they say
     * @param uncomment the same of lines that are commented out
     */
    record Edit(
            List<String> settings,
            Optional<String> section,
            Optional<String> board,
            List<String> commentOut,
            List<String> uncomment)
            implements ChangeRequest {

        public Edit {
            settings = List.copyOf(settings);
            Objects.requireNonNull(section);
            Objects.requireNonNull(board);
            commentOut = List.copyOf(commentOut);
            uncomment = List.copyOf(uncomment);
        }

        /** Settings alone, for every board that the card can be meant for. */
        public static Edit of(String... settings) {
            return new Edit(List.of(settings), Optional.empty(), Optional.empty(), List.of(), List.of());
        }

        @Override
        public <R> R match(Cases<R> cases) {
            return cases.edit(this);
        }
    }
}
