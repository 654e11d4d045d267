package bootmend.view;

import bootmend.CardException;
import bootmend.tuning.Board;
import bootmend.tuning.Revision;
import bootmend.tuning.RevisionFlag;
import bootmend.tuning.Source;
import bootmend.tuning.TuningTables;
import bootmend.tuning.WarrantyState;
import bootmend.workplace.Workplace;
import java.util.List;
import java.util.Optional;

/** Decodes a board's revision code. */
public final class BoardJob {

    private static final String SOURCE = "S3";
    private static final String FROM_MEMORY = "values from memory: ";

    private final TuningTables tables;

    public BoardJob(Workplace workplace) {
        this.tables = workplace.tables();
    }

    /**
     * @param code in hexadecimal, with or without {@code 0x}
     * @throws CardException of kind usage where it is no code, or an old-style one that is not in the table
     */
    public RevisionView run(String code) throws CardException {
        Revision revision;
        try {
            revision = tables.revisions().decode(code);
        } catch (IllegalArgumentException e) {
            throw CardException.usage(code + " is no revision code", e.getMessage());
        }
        if (!revision.newStyle() && revision.board().isEmpty()) {
            throw CardException.usage(
                    code + " is no known old-style revision code",
                    "Old-style codes run from 0002 to 0015; a new-style one has six digits or more, such as c03111.");
        }
        return new RevisionView(
                revision.codeText(),
                revision.newStyle() ? "new" : "old",
                revision.board().map(Board::id),
                revision.type().isPresent()
                        ? Optional.of(String.format("0x%02x", revision.type().getAsInt()))
                        : Optional.empty(),
                revision.name(),
                revision.chip(),
                revision.memoryMegabytes(),
                revision.maker(),
                revision.warranty() == WarrantyState.SET,
                revision.warranty().word(),
                revision.barred().stream().map(RevisionFlag::word).toList(),
                "0x" + Long.toHexString(revision.unknownBits()),
                sources(revision));
    }

    private List<String> sources(Revision revision) {
        String published = tables.sources().find(SOURCE).map(Source::citation).orElseThrow();
        return revision.newStyle()
                ? List.of(published, FROM_MEMORY + "chip numbers other than BCM2711, and writing revision N as 1.N")
                : List.of(FROM_MEMORY + "the table of old-style codes and their warranty bit");
    }
}
