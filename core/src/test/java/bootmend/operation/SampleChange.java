package bootmend.operation;

import bootmend.change.CardId;
import bootmend.change.FileChange;
import bootmend.change.Plan;
import bootmend.config.LineEnd;
import bootmend.finding.Finding;
import bootmend.request.CardRequest;
import bootmend.view.CardView;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Changes as pages show them, made of values alone. */
public final class SampleChange {

    private SampleChange() {}

    /** @param made how it was made; empty where it was only worked out */
    public static ChangeOutcome of(
            CardView before, List<LineChange> lines, List<Finding> findings, Optional<Made> made) {
        Plan plan = new Plan(
                CardId.ofFolder(0, 0),
                Plan.Purpose.FOLDER,
                "sample",
                List.of(new FileChange("config.txt", new byte[] {1}, new byte[] {2})),
                List.of(),
                Map.of());
        Worked worked = Worked.of(before, plan)
                .shown(List.of(new FileEdit("config.txt", FileEdit.Kind.CHANGED, Optional.of("config.txt"), lines)))
                .finding(findings);
        ProposedChange change = new ProposedChange(
                CardRequest.of(Path.of("card")),
                ChangeOrder.of(ChangeRequest.ToStock.PLAIN),
                LocalDateTime.of(2026, 11, 25, 12, 0),
                worked,
                Path.of("records"));
        return made.<ChangeOutcome>map(how -> new ChangeOutcome.Written(change, how))
                .orElseGet(change::leave);
    }

    public static LineChange line(String file, int number, String before, String after) {
        return new LineChange(
                file,
                number,
                Optional.ofNullable(before).map(SampleChange::line),
                Optional.ofNullable(after).map(SampleChange::line));
    }

    private static LineChange.Line line(String text) {
        return new LineChange.Line(text.getBytes(StandardCharsets.UTF_8), LineEnd.LF);
    }
}
