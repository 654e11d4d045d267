package bootmend.view;

import static org.assertj.core.api.Assertions.assertThat;

import bootmend.CardException;
import bootmend.boot.BootChain;
import bootmend.boot.BootDiagnosis;
import bootmend.boot.Cause;
import bootmend.boot.Remedy;
import bootmend.boot.Verdict;
import bootmend.fixtures.DamagedCards;
import bootmend.fixtures.SparseDisk;
import bootmend.operation.ChangeRequest;
import bootmend.operation.TriedChange;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.MemoryWorkplace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What a diagnosis says of a repair is what the repair, made, comes to. */
class RepairOutlookTest {

    private static final String CARD = "/card.img";

    @ParameterizedTest
    @ValueSource(
            strings = {
                "fat-first-copy-behind",
                "fat-first-copy-sector-zeroed",
                "chain-loop",
                "chain-into-free",
                "chain-out-of-range",
                "chain-shorter-than-size",
                "entry-noise",
                "config-utf16"
            })
    void aRepairIsTheRemedyExactlyWhereItGetsTheBoardFurther(String damage) throws CardException, IOException {
        SparseDisk disk = DamagedCards.card(damage).disk();
        try (MemoryWorkplace place = new MemoryWorkplace()) {
            place.insert(CARD, disk);
            Cause before = cause(place).orElseThrow();
            repair(place);
            Optional<Cause> after = cause(place);
            boolean further = after.isEmpty() || after.get().link().compareTo(before.link()) > 0;
            assertThat(before.remedy() instanceof Remedy.RepairCard).isEqualTo(further);
        }
    }

    private static void repair(MemoryWorkplace place) throws CardException, IOException {
        TriedChange repair =
                TriedChange.of(place.workplace(), CardRequest.of(Path.of(CARD)), ChangeRequest.Repair.PLAIN);
        if (!repair.change().isNothing()) {
            repair.apply();
        }
    }

    private static Optional<Cause> cause(MemoryWorkplace place) throws CardException {
        BootDiagnosis found =
                new DiagnoseJob(place.workplace()).run(CardRequest.of(Path.of(CARD)), BoardRequest.of("pi4"));
        BootChain chain = found.boards().get(0).chain();
        return chain.verdict() instanceof Verdict.Stops stops ? Optional.of(stops.cause()) : Optional.empty();
    }
}
