package bootmend.gui;

import bootmend.CardException;
import bootmend.record.ProfileJob;
import bootmend.record.TrialAddJob;
import bootmend.record.TrialRequest;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** The demo's trials, and profiles that some of them back. */
final class DemoRecords {

    private static final String TRIALS = "demo-trials.csv";

    private final Workplace workplace;

    DemoRecords(Workplace workplace) {
        this.workplace = workplace;
    }

    /**
     * Adds them all.
     *
     * @param cart the demo card that the known-good profile is saved from
     * @param mast the one that the unproven profile is saved from: its trial was too short
     */
    void add(Path cart, Path mast) throws CardException, IOException {
        Map<String, String> latest = new HashMap<>();
        try (CSVParser trials = trials()) {
            for (CSVRecord trial : trials) {
                latest.put(
                        trial.get("label"),
                        new TrialAddJob(workplace).run(request(trial)).trial().id());
            }
        }
        save("cart-3", cart, "pi4", "large heat sink", "Runs the arm carts of room 12.", latest.get("cart-3"));
        save("weather-mast", mast, "pi1", "none", "For the mast on the gym roof.", latest.get("mast"));
    }

    private void save(String name, Path card, String board, String cooling, String notes, String trial)
            throws CardException {
        new ProfileJob(workplace)
                .save(
                        CardRequest.of(card),
                        new ProfileJob.Save(
                                name, board, cooling, "the lab's bench supply", notes, List.of(trial), false));
    }

    private static CSVParser trials() throws IOException {
        InputStream in = Objects.requireNonNull(DemoRecords.class.getResourceAsStream(TRIALS));
        return CSVParser.builder()
                .setReader(new InputStreamReader(in, StandardCharsets.UTF_8))
                .setFormat(CSVFormat.RFC4180
                        .builder()
                        .setCommentMarker('#')
                        .setHeader()
                        .setSkipHeaderRecord(true)
                        .get())
                .get();
    }

    private static TrialRequest request(CSVRecord trial) {
        return new TrialRequest(
                trial.get("label"),
                BoardRequest.of(trial.get("board")),
                Optional.empty(),
                List.of(trial.get("settings").split(" ")),
                Optional.empty(),
                trial.get("outcome"),
                new TrialRequest.Measured(
                        number(trial.get("minutes")),
                        trial.get("load").equals("full"),
                        number(trial.get("peak")),
                        OptionalDouble.empty(),
                        Optional.of(trial.get("mask")).filter(mask -> !mask.isEmpty()),
                        List.of()),
                trial.get("cooling"),
                "the lab's bench supply",
                number(trial.get("ambient")),
                Optional.of(trial.get("when")),
                trial.get("notes"));
    }

    private static OptionalDouble number(String cell) {
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
    }
}
