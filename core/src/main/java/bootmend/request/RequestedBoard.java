package bootmend.request;

import bootmend.CardException;
import bootmend.NextStep;
import bootmend.config.Filter;
import bootmend.tuning.Board;
import bootmend.tuning.Revision;
import bootmend.tuning.TuningTables;
import bootmend.tuning.resolve.BoardFacts;
import java.util.HashSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads what a user said about a board. */
public final class RequestedBoard {

    private static final int LAST_PIN = 255;
    private static final long LAST_NUMBER = 0xFFFF_FFFFL;
    private static final int HEX = 16;
    private static final Pattern PIN = Pattern.compile("([0-9]{1,3})=([01])");
    private static final Pattern SERIAL = Pattern.compile("(?:0[xX])?([0-9a-fA-F]{1,16})");
    private static final Pattern VARIABLE = Pattern.compile("([a-z0-9_]+)=(?:0[xX]([0-9a-fA-F]{1,8})|([0-9]{1,10}))");

    private final TuningTables tables;

    public RequestedBoard(TuningTables tables) {
        this.tables = tables;
    }

    /**
     * The facts, the board among them where the request names one.
     *
     * @throws CardException of kind usage, which says what would be allowed
     */
    public BoardFacts facts(BoardRequest request) throws CardException {
        BoardFacts facts = BoardFacts.none();
        if (request.board().isPresent()) {
            facts = facts.withBoard(board(request.board().get()));
        }
        if (request.revision().isPresent()) {
            facts = revision(facts, request.revision().get());
        }
        if (request.serial().isPresent()) {
            facts = facts.withSerial(serial(request.serial().get()));
        }
        for (String pin : request.pins()) {
            facts = pin(facts, pin);
        }
        if (request.monitors().isPresent()) {
            facts = facts.withMonitors(new HashSet<>(request.monitors().get()));
        }
        if (request.tryboot().isPresent()) {
            facts = facts.withTryboot(request.tryboot().get());
        }
        for (String variable : request.bootVariables()) {
            facts = variable(facts, variable);
        }
        return facts;
    }

    private Board board(String id) throws CardException {
        return tables.boards()
                .find(id)
                .orElseThrow(() -> CardException.usage(
                        "bootmend knows no board " + id,
                        "Boards are named by the config file's own words: "
                                + tables.boards().all().stream().map(Board::id).collect(Collectors.joining(", "))
                                + "."));
    }

    private BoardFacts revision(BoardFacts facts, String text) throws CardException {
        Revision code;
        BoardFacts known;
        try {
            code = tables.revisions().decode(text);
            known = facts.withRevision(code);
        } catch (IllegalArgumentException e) {
            throw CardException.usage(text + " cannot be taken as the revision code", e.getMessage());
        }
        if (known.board().isEmpty()) {
            throw CardException.usage(
                    "bootmend does not know which board revision code " + code.codeText() + " is",
                    "",
                    NextStep.Plain.GIVE_BOARD);
        }
        return known;
    }

    private static long serial(String text) throws CardException {
        Matcher matcher = SERIAL.matcher(text);
        if (!matcher.matches()) {
            throw CardException.usage(
                    text + " is no serial number",
                    "A serial number has up to 16 hexadecimal digits, such as 10000000a1b2c3d4.");
        }
        return Long.parseUnsignedLong(matcher.group(1), HEX);
    }

    private static BoardFacts pin(BoardFacts facts, String text) throws CardException {
        Matcher matcher = PIN.matcher(text);
        if (!matcher.matches() || Integer.parseInt(matcher.group(1)) > LAST_PIN) {
            throw CardException.usage(
                    text + " is no level of a pin",
                    "Write PIN=0 for low or PIN=1 for high, with a pin number from 0 to " + LAST_PIN
                            + ", such as 4=1.");
        }
        return facts.withPin(
                Integer.parseInt(matcher.group(1)), matcher.group(2).equals("1"));
    }

    private static BoardFacts variable(BoardFacts facts, String text) throws CardException {
        Matcher matcher = VARIABLE.matcher(text);
        if (!matcher.matches()
                || !Filter.BootVariable.NAMES.contains(matcher.group(1))
                || number(matcher) > LAST_NUMBER) {
            throw CardException.usage(
                    text + " is no boot variable with its value",
                    "Write NAME=NUMBER, such as partition=2, with a number of up to 32 bits, decimal or with 0x; the "
                            + "names are " + String.join(", ", Filter.BootVariable.NAMES) + ".");
        }
        return facts.withBootVariable(matcher.group(1), number(matcher));
    }

    private static long number(Matcher matcher) {
        return matcher.group(2) != null ? Long.parseLong(matcher.group(2), HEX) : Long.parseLong(matcher.group(3));
    }
}
