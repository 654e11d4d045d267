package bootmend.tuning.resolve;

import bootmend.config.Condition;
import bootmend.config.Filter;
import bootmend.config.FilterFacts;
import bootmend.config.VisibleText;
import bootmend.tuning.Board;
import bootmend.tuning.Revision;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;

/**
 * What is known about the board that a card is for; what is left out is unknown, not absent.
 *
 * @param board which board
 * @param revision its decoded revision code
 * @param serial its serial number; the last eight hexadecimal digits count
 * @param pins levels of pins at start, by pin number; true is high
 * @param monitors names of the attached monitors; the empty set says that none is attached
 * @param tryboot whether it is started with its try-once flag
 * @param bootVariables values of boot variables, by name
 */
public record BoardFacts(
        Optional<Board> board,
        Optional<Revision> revision,
        OptionalLong serial,
        Map<Integer, Boolean> pins,
        Optional<Set<String>> monitors,
        Optional<Boolean> tryboot,
        Map<String, Long> bootVariables)
        implements FilterFacts {

    private static final long SERIAL_DIGITS = 0xFFFF_FFFFL;

    public BoardFacts {
        pins = Map.copyOf(pins);
        monitors = monitors.map(Set::copyOf);
        bootVariables = Map.copyOf(bootVariables);
    }

    /** Nothing is known. */
    public static BoardFacts none() {
        return new BoardFacts(
                Optional.empty(),
                Optional.empty(),
                OptionalLong.empty(),
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Map.of());
    }

    /** The board is known, nothing else. */
    public static BoardFacts of(Board board) {
        return new BoardFacts(
                Optional.of(board),
                Optional.empty(),
                OptionalLong.empty(),
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Map.of());
    }

    /** The same for this board. */
    public BoardFacts withBoard(Board known) {
        return new BoardFacts(Optional.of(known), revision, serial, pins, monitors, tryboot, bootVariables);
    }

    /**
     * The same with the revision code, and with the board that it names.
     *
     * @throws IllegalArgumentException if the code is another board's
     */
    public BoardFacts withRevision(Revision code) {
        if (board.isPresent() && code.board().isPresent() && !board.equals(code.board())) {
            throw new IllegalArgumentException("Revision code " + code.codeText() + " is a "
                    + code.board().get().id() + ", not a " + board.get().id()
                    + "; give only one of the two, or correct it.");
        }
        return new BoardFacts(
                code.board().or(() -> board), Optional.of(code), serial, pins, monitors, tryboot, bootVariables);
    }

    public BoardFacts withSerial(long number) {
        return new BoardFacts(board, revision, OptionalLong.of(number), pins, monitors, tryboot, bootVariables);
    }

    public BoardFacts withPin(int pin, boolean high) {
        Map<Integer, Boolean> more = new HashMap<>(pins);
        more.put(pin, high);
        return new BoardFacts(board, revision, serial, more, monitors, tryboot, bootVariables);
    }

    public BoardFacts withMonitors(Set<String> names) {
        return new BoardFacts(board, revision, serial, pins, Optional.of(names), tryboot, bootVariables);
    }

    public BoardFacts withTryboot(boolean flag) {
        return new BoardFacts(board, revision, serial, pins, monitors, Optional.of(flag), bootVariables);
    }

    public BoardFacts withBootVariable(String name, long value) {
        Map<String, Long> more = new HashMap<>(bootVariables);
        more.put(name, value);
        return new BoardFacts(board, revision, serial, pins, monitors, tryboot, more);
    }

    /** The number in the revision code, such as 4 for revision 1.4. */
    public OptionalInt revisionNumber() {
        return revision.map(Revision::number).orElse(OptionalInt.empty());
    }

    @Override
    public Condition test(Filter filter) {
        if (filter instanceof Filter.All) {
            return Condition.HOLDS;
        } else if (filter instanceof Filter.None) {
            return Condition.FAILS;
        } else if (filter instanceof Filter.Model model) {
            return known(board.map(known -> known.sees().contains(model.token())), "which board it is");
        } else if (filter instanceof Filter.BoardType type) {
            return known(hasType(type.type()), "the board's type number");
        } else if (filter instanceof Filter.Serial wanted) {
            return serial.isEmpty()
                    ? Condition.dependsOn("the board's serial number")
                    : Condition.of((serial.getAsLong() & SERIAL_DIGITS) == wanted.digits());
        } else if (filter instanceof Filter.Pin pin) {
            return known(
                    Optional.ofNullable(pins.get(pin.pin())).map(high -> high == pin.high()),
                    "the level of pin " + pin.pin());
        } else if (filter instanceof Filter.Monitor monitor) {
            return known(
                    monitors.map(names -> names.contains(monitor.name())),
                    "whether monitor " + VisibleText.of(monitor.name()) + " is attached");
        } else if (filter instanceof Filter.Hdmi hdmi) {
            // The source ties such lines to a display port; whether a key that is not about displays heeds it, it
            // does not say.
            return Condition.dependsOn("display port " + hdmi.port());
        } else if (filter instanceof Filter.Tryboot) {
            return known(tryboot, "whether the board starts with its try-once flag");
        } else if (filter instanceof Filter.BootVariable variable) {
            return known(
                    Optional.ofNullable(bootVariables.get(variable.name())).map(variable::holdsFor),
                    "boot variable " + variable.name());
        }
        return Condition.dependsOn("what the board makes of " + filter.text());
    }

    private Optional<Boolean> hasType(int type) {
        OptionalInt own = revision.map(Revision::type).orElse(OptionalInt.empty());
        if (own.isPresent()) {
            return Optional.of(own.getAsInt() == type);
        }
        return board.flatMap(
                known -> known.types().contains(type) && known.types().size() > 1
                        ? Optional.empty()
                        : Optional.of(known.types().contains(type)));
    }

    private static Condition known(Optional<Boolean> holds, String otherwise) {
        return holds.map(Condition::of).orElseGet(() -> Condition.dependsOn(otherwise));
    }
}
