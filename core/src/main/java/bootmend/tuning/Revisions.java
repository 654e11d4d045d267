package bootmend.tuning;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Decodes revision codes.
 *
 * <p>Source: "Revision codes", revision-codes.adoc, commit 0456a78c. Values from memory: the table of old-style codes,
 * bit 24 as their warranty bit, and writing revision number N as 1.N.
 */
public final class Revisions {

    private static final long NEW_STYLE = 1L << 23;
    private static final long NEW_STYLE_WARRANTY = 1L << 25;
    private static final long OLD_STYLE_WARRANTY = 1L << 24;
    private static final long NEW_STYLE_FIELDS = 0x00FF_FFFFL;
    private static final int NIBBLE = 0xF;
    private static final int BYTE = 0xFF;
    private static final int SMALLEST_MEMORY = 256;
    private static final int OTHER_MEMORY = 7;
    private static final int HEX = 16;
    private static final Pattern CODE = Pattern.compile("(?:0[xX])?([0-9a-fA-F]{1,8})");

    private final Map<Integer, String> chips;
    private final Map<Long, OldRevision> oldCodes;
    private final Boards boards;

    private Revisions(Map<Integer, String> chips, Map<Long, OldRevision> oldCodes, Boards boards) {
        this.chips = chips;
        this.oldCodes = oldCodes;
        this.boards = boards;
    }

    /** One row of the table of old-style codes. */
    private record OldRevision(long code, Board board, String name, OptionalInt memoryMegabytes) {}

    /** One row of the table of processor numbers. */
    private record Processor(int number, String chip) {}

    static Revisions read(DataFile processors, DataFile oldCodes, Boards boards) {
        List<Processor> chips = processors
                .withColumns("number", "chip", "source")
                .map(row -> new Processor(row.number("number", 0, NIBBLE), row.required("chip")), Processor::number);
        List<OldRevision> old = oldCodes.withColumns("code", "board", "revision", "memory_mb", "source")
                .map(row -> oldRevision(row, boards), OldRevision::code);
        return new Revisions(
                chips.stream().collect(Collectors.toMap(Processor::number, Processor::chip)),
                old.stream().collect(Collectors.toMap(OldRevision::code, Function.identity())),
                boards);
    }

    private static OldRevision oldRevision(DataRow row, Boards boards) {
        Board board = boards.find(row.text("board")).orElseThrow(() -> row.error("unknown board " + row.text("board")));
        OptionalInt memory = row.text("memory_mb").isEmpty()
                ? OptionalInt.empty()
                : OptionalInt.of(row.number("memory_mb", 1, Integer.MAX_VALUE));
        return new OldRevision(row.number("code"), board, row.required("revision"), memory);
    }

    /**
     * Decodes a code written in hexadecimal, with or without {@code 0x}.
     *
     * @throws IllegalArgumentException if it is no hexadecimal number of at most eight digits
     */
    public Revision decode(String code) {
        var matcher = CODE.matcher(code);
        if (!matcher.matches()) {
            throw new IllegalArgumentException("A revision code is a hexadecimal number of up to eight digits, such as"
                    + " c03111; type it as the board prints it.");
        }
        long number = Long.parseLong(matcher.group(1), HEX);
        return (number & NEW_STYLE) != 0 ? newStyle(number) : oldStyle(number);
    }

    private Revision newStyle(long code) {
        int number = field(code, 0, NIBBLE);
        int type = field(code, 4, BYTE);
        int memory = field(code, 20, OTHER_MEMORY);
        Optional<Board> board = boards.byType(type);
        List<RevisionFlag> barred =
                Stream.of(RevisionFlag.values()).filter(flag -> flag.isIn(code)).toList();
        long known = barred.stream()
                .mapToLong(RevisionFlag::mask)
                .reduce(NEW_STYLE_FIELDS | NEW_STYLE_WARRANTY, (mask, flag) -> mask | flag);
        return new Revision(
                code,
                true,
                board,
                OptionalInt.of(type),
                OptionalInt.of(number),
                "1." + number,
                Optional.ofNullable(chips.get(field(code, 12, NIBBLE))),
                memory == OTHER_MEMORY ? OptionalInt.empty() : OptionalInt.of(SMALLEST_MEMORY << memory),
                OptionalInt.of(field(code, 16, NIBBLE)),
                warranty(board, (code & NEW_STYLE_WARRANTY) != 0),
                barred,
                code & ~known);
    }

    private Revision oldStyle(long code) {
        long plain = code & ~OLD_STYLE_WARRANTY;
        Optional<OldRevision> row = Optional.ofNullable(oldCodes.get(plain));
        Optional<Board> board = row.map(OldRevision::board);
        return new Revision(
                code,
                false,
                board,
                OptionalInt.empty(),
                OptionalInt.empty(),
                row.map(OldRevision::name).orElse("unknown"),
                board.map(Board::chip),
                row.map(OldRevision::memoryMegabytes).orElse(OptionalInt.empty()),
                OptionalInt.empty(),
                warranty(board, plain != code),
                List.of(),
                row.isPresent() ? 0 : plain);
    }

    private static WarrantyState warranty(Optional<Board> board, boolean set) {
        if (set) {
            return WarrantyState.SET;
        }
        return switch (board.map(Board::warrantyBit).orElse(WarrantyBit.NOT_PUBLISHED)) {
            case TRACKED -> WarrantyState.NOT_SET;
            case NEVER_SET -> WarrantyState.NEVER_SET;
            case NOT_PUBLISHED -> WarrantyState.NOT_PUBLISHED;
        };
    }

    private static int field(long code, int shift, int mask) {
        return (int) (code >>> shift) & mask;
    }
}
