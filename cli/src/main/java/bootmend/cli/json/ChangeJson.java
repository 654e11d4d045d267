package bootmend.cli.json;

import bootmend.cli.text.RemedyWords;
import bootmend.finding.Finding;
import bootmend.operation.ChangeOutcome;
import bootmend.operation.FileBody;
import bootmend.operation.FileEdit;
import bootmend.operation.LineChange;
import bootmend.operation.Made;
import bootmend.operation.NotRepaired;
import bootmend.operation.PlanView;
import bootmend.operation.ProposedChange;
import bootmend.view.CardView;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.util.List;
import java.util.Locale;

/**
 * A change as a JSON document: the card as it was before, what a repair found, the lines, the plan, and, once it was made,
 * the change; field names are part of the interface.
 */
public record ChangeJson(
        @JsonUnwrapped CardView before,
        List<FindingJson> findings,
        List<BroughtJson> brings,
        List<FileJson> files,
        List<LineJson> lines,
        List<String> notes,
        List<NotRepairedJson> notRepaired,
        PlanView plan,
        @JsonInclude(JsonInclude.Include.NON_NULL) MadeJson change) {

    /** One line; {@code before} is null for a new line, {@code after} for one that is taken out. */
    public record LineJson(String file, int line, String before, String after) {

        public static LineJson of(LineChange line) {
            return new LineJson(
                    line.file(),
                    line.line(),
                    line.before().orElse(null),
                    line.after().orElse(null));
        }
    }

    /** One thing that a repair found; {@code repaired} tells whether this repair repairs it. */
    public record FindingJson(String id, String where, String what, boolean repaired) {

        static FindingJson of(Finding finding) {
            return new FindingJson(finding.id(), finding.where().words(), finding.words(), finding.isRepaired());
        }
    }

    /** One thing that a check finds once the change is made and not before. */
    public record BroughtJson(String id, String severity, String where, String what) {

        static BroughtJson of(Finding finding) {
            return new BroughtJson(
                    finding.id(), finding.severity().word(), finding.where().words(), finding.words());
        }
    }

    /** Why boards do not start from the card where a repair does not put that right, and whose it is. */
    public record NotRepairedJson(List<String> boards, String link, String sentence, String remedy) {

        static NotRepairedJson of(String card, NotRepaired left) {
            return new NotRepairedJson(
                    left.boards(),
                    left.cause().link().word(),
                    left.cause().sentence(),
                    new RemedyWords(card).of(left.cause().remedy()));
        }
    }

    /**
     * How a change was made.
     *
     * @param undoRecord null where none is kept
     * @param verified whether every sector was synced to the card and read back; not so in a mounted folder
     * @param secondReader whether the second reader, too, found the files as planned
     * @param mounted whether the card is mounted and must be ejected before it is taken out
     */
    public record MadeJson(String undoRecord, boolean verified, boolean secondReader, boolean mounted) {

        public static MadeJson of(Made made) {
            return made.match(new Made.Cases<>() {
                @Override
                public MadeJson onCard(Made.OnCard done) {
                    return new MadeJson(done.record(), true, done.secondReader(), false);
                }

                @Override
                public MadeJson inFolder(Made.InFolder done) {
                    return new MadeJson(done.record(), false, false, true);
                }

                @Override
                public MadeJson inFile(Made.InFile done) {
                    return new MadeJson(null, true, false, false);
                }

                @Override
                public MadeJson closed(Made.Closed done) {
                    return new MadeJson(done.record(), true, false, false);
                }
            });
        }
    }

    /**
     * What becomes of a file: {@code changed}, {@code added}, {@code removed}, {@code rewritten} or {@code replaced}.
     *
     * @param bytes its size, where it is no text with lines; else null
     * @param sha256 of its new content, likewise
     */
    public record FileJson(String path, String kind, String against, Long bytes, String sha256) {

        static FileJson of(FileEdit file) {
            return new FileJson(
                    file.path(),
                    file.kind().name().toLowerCase(Locale.ROOT),
                    file.against().orElse(null),
                    file.body().map(FileBody::size).orElse(null),
                    file.body().map(FileBody::sha256).orElse(null));
        }
    }

    public static ChangeJson of(ChangeOutcome outcome) {
        ProposedChange change = outcome.change();
        return new ChangeJson(
                change.before(),
                change.findings().stream().map(FindingJson::of).toList(),
                change.brings().stream().map(BroughtJson::of).toList(),
                change.files().stream().map(FileJson::of).toList(),
                change.lines().stream().map(LineJson::of).toList(),
                change.notes(),
                change.notRepaired().stream()
                        .map(each -> NotRepairedJson.of(change.before().card(), each))
                        .toList(),
                change.plan(),
                outcome.ifMade().map(MadeJson::of).orElse(null));
    }
}
