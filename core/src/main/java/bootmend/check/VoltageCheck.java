package bootmend.check;

import bootmend.finding.Place;
import bootmend.tuning.TuningKey;
import bootmend.tuning.TuningNumber;
import bootmend.tuning.Vocabulary;
import bootmend.tuning.WarrantyBit;
import bootmend.tuning.resolve.Candidate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Raised voltages: steps that count only with force_turbo, and what the two together do to the warranty bit.
 *
 * <p>Source: "Overclocking options", config_txt/overclocking.adoc, commit 6e5f9446; which boards track the bit:
 * "Revision codes", revision-codes.adoc, commit 0456a78c.
 */
record VoltageCheck(Vocabulary vocabulary) implements Check {

    /** The highest step of over_voltage that counts without force_turbo. */
    private static final long HIGHEST_WITHOUT_TURBO = 6;

    @Override
    public List<Remark> look(CardContent card) {
        List<Remark> remarks = new ArrayList<>();
        for (BoardReading board : card.boards()) {
            Optional<Candidate> turbo = above(board, "force_turbo", 0).stream().findFirst();
            if (turbo.isEmpty()) {
                above(board, "over_voltage", HIGHEST_WITHOUT_TURBO)
                        .forEach(line -> remarks.add(Remark.on(
                                board,
                                "over-voltage-needs-turbo",
                                Places.of(line),
                                "over_voltage=" + line.written() + " is above " + HIGHEST_WITHOUT_TURBO
                                        + " and no force_turbo=1 is in force.")));
            } else if (board.board().warrantyBit() != WarrantyBit.NEVER_SET) {
                warranty(board, turbo.get(), remarks);
            }
            raised(board, vocabulary)
                    .forEach(line -> remarks.add(Remark.on(
                            board,
                            "practice-lowest-voltage",
                            Places.of(line),
                            line.setBy() + "=" + line.written() + " raises a voltage.")));
        }
        return remarks;
    }

    private void warranty(BoardReading board, Candidate turbo, List<Remark> remarks) {
        String rule =
                board.board().warrantyBit() == WarrantyBit.TRACKED ? "warranty-bit" : "warranty-bit-not-published";
        for (Candidate line : raised(board, vocabulary)) {
            String unsure = turbo.condition().and(line.condition()).dependsOn().stream()
                    .findFirst()
                    .map(what -> " It depends on " + what + ".")
                    .orElse("");
            remarks.add(Remark.on(
                    board,
                    rule,
                    Places.of(turbo),
                    "force_turbo=" + turbo.written() + " stands with " + line.setBy() + "=" + line.written() + " ("
                            + Places.of(line).words() + ")." + unsure));
        }
    }

    /** Every line that raises a voltage on a board, each once. */
    static Set<Candidate> raised(BoardReading board, Vocabulary vocabulary) {
        Set<Candidate> raised = new LinkedHashSet<>();
        Set<Place> seen = new LinkedHashSet<>();
        vocabulary.keys().stream()
                .filter(TuningKey::setsVoltage)
                .map(TuningKey::key)
                .flatMap(key -> above(board, key, 0).stream())
                .filter(line -> seen.add(Places.of(line)))
                .forEach(raised::add);
        return raised;
    }

    private static List<Candidate> above(BoardReading board, String key, long limit) {
        return board.possible(key).stream()
                .filter(line -> TuningNumber.parse(line.value()).orElse(limit) > limit)
                .toList();
    }
}
