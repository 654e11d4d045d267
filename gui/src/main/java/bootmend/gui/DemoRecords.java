package bootmend.gui;

import bootmend.CardException;
import bootmend.record.ProfileJob;
import bootmend.record.TrialAddJob;
import bootmend.record.TrialRequest;
import bootmend.request.BoardRequest;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;

/** The demo's trials, and profiles that some of them back. */
final class DemoRecords {

    private static final String TRIALS = "demo-trials.csv";
    private static final int COLUMNS = 12;

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
        for (String line : lines()) {
            String[] cells = line.split(",", COLUMNS);
            latest.put(
                    cells[2],
                    new TrialAddJob(workplace).run(request(cells)).trial().id());
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

    private static List<String> lines() throws IOException {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(DemoRecords.class.getResourceAsStream(TRIALS)), StandardCharsets.UTF_8))) {
            return in.lines().filter(line -> !line.startsWith("#")).toList();
        }
    }

    private static TrialRequest request(String[] cells) {
        return new TrialRequest(
                cells[2],
                BoardRequest.of(cells[1]),
                Optional.empty(),
                List.of(cells[3].split(" ")),
                Optional.empty(),
                cells[4],
                new TrialRequest.Measured(
                        number(cells[5]),
                        cells[6].equals("full"),
                        number(cells[7]),
                        OptionalDouble.empty(),
                        Optional.of(cells[8]).filter(mask -> !mask.isEmpty()),
                        List.of()),
                cells[9],
                "the lab's bench supply",
                number(cells[10]),
                Optional.of(cells[0]),
                cells[11]);
    }

    private static OptionalDouble number(String cell) {
        return cell.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(Double.parseDouble(cell));
    }
}
