package bootmend.gui.view;

import bootmend.boot.BootDiagnosis;
import bootmend.boot.Verdict;
import bootmend.card.PartitionView;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.Reading;
import bootmend.gui.text.Words;
import bootmend.operation.ProposedChange;
import bootmend.page.Amount;
import bootmend.page.BootWords;
import bootmend.view.CardView;
import bootmend.view.InterruptedChange;
import bootmend.view.SheetView;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Which card it is and how it stands, in what a glance takes in. */
final class CardHeader extends VBox {

    private final CardModel model;
    private final Kit kit;
    private final FlowPane facts = new FlowPane(18, 4);
    private final FlowPane marks = new FlowPane(8, 6);
    private final VBox notes = new VBox();

    CardHeader(CardModel model, Kit kit) {
        this.model = model;
        this.kit = kit;
        getStyleClass().add("card-header");
        setMinHeight(Region.USE_PREF_SIZE);
        Path name = model.card().card().getFileName();
        Node title = kit.fact(name == null ? model.card().card().toString() : name.toString(), "title");
        title.setId("card-name");
        marks.setId("card-marks");
        getChildren().addAll(title, facts, marks, notes);
        model.sheet().watch(reading -> show());
        model.boot().watch(reading -> show());
        model.health().watch(reading -> show());
        model.gone().watch(reading -> show());
        model.ejected().watch(said -> show());
    }

    private void show() {
        facts.getChildren().clear();
        marks.getChildren().clear();
        notes.getChildren().clear();
        model.ejected().get().ifPresent(said -> notes.getChildren().add(kit.prose(said, "notice")));
        if (model.gone().get()) {
            mark("mark.gone", "mark-bad");
            return;
        }
        Reading<SheetView> sheet = model.sheet().get();
        sheet.value().ifPresent(view -> facts(view.show().card()));
        if (sheet instanceof Reading.Failed) {
            mark("mark.unread", "mark-bad");
        } else if (sheet instanceof Reading.Waiting) {
            mark("mark.reading", "mark-plain");
        }
        model.boot().get().value().ifPresent(this::boots);
        sheet.value().ifPresent(this::tuned);
        model.health().get().value().ifPresent(this::damage);
    }

    private void facts(CardView card) {
        PartitionView partition = card.partition();
        Words words = kit.words();
        fact("fact.label", partition.label().isEmpty() ? words.of("fact.nolabel") : partition.label());
        if (!partition.serial().isEmpty()) {
            fact("fact.serial", partition.serial());
        }
        fact("fact.volume", volume(partition));
        fact("fact.kind", words.of("fact.kind.value", card.kind(), Amount.size(card.bytes())));
    }

    private String volume(PartitionView partition) {
        if (partition.isMounted()) {
            return partition.fatType();
        }
        String size = Amount.size(partition.bytes());
        return partition.number() == 0
                ? kit.words().of("fact.volume.whole", partition.fatType(), size)
                : kit.words().of("fact.volume.value", partition.fatType(), size, partition.number());
    }

    private void fact(String key, String value) {
        VBox fact = new VBox(kit.words(kit.words().of(key), "fact-name"), kit.fact(value));
        facts.getChildren().add(fact);
    }

    private void tuned(SheetView view) {
        CardView card = view.show().card();
        long lines = card.tuning().stream()
                .filter(line -> line.active() && line.resets())
                .count();
        if (card.configProblem().isPresent()) {
            mark("mark.noconfig", "mark-bad");
        } else if (lines == 0) {
            mark("mark.stock", "mark-good");
        } else {
            mark("mark.tuned", "mark-tuned", lines);
        }
        if (view.staged()) {
            mark("mark.staged", "mark-tuned");
        }
        if (view.waiting().own().isPresent() || view.waiting() instanceof InterruptedChange.Unclear) {
            mark("mark.interrupted", "mark-bad");
        }
    }

    /** The answer to the first question; whether the card is ready for a purpose is said on the page that asks for one. */
    private void boots(BootDiagnosis diagnosis) {
        List<Verdict> verdicts = diagnosis.boards().stream()
                .map(board -> board.chain().verdict())
                .toList();
        long boots = verdicts.stream().filter(Verdict.Boots.class::isInstance).count();
        Optional<Verdict.Stops> stops = verdicts.stream()
                .filter(Verdict.Stops.class::isInstance)
                .map(Verdict.Stops.class::cast)
                .findFirst();
        if (boots == verdicts.size()) {
            mark("mark.boots", "mark-good");
        } else if (boots > 0) {
            mark("mark.bootsome", "mark-warn");
        } else if (stops.isPresent()) {
            mark("mark.stops", "mark-bad", BootWords.name(stops.get().cause().link()));
        } else {
            mark("mark.unknown", "mark-warn");
        }
    }

    private void damage(ProposedChange look) {
        if (look.findings().isEmpty()) {
            mark("mark.sound", "mark-good");
        } else {
            mark("mark.damaged", "mark-bad", look.findings().size());
        }
    }

    private void mark(String key, String style, Object... arguments) {
        Label mark = new Label(kit.words().of(key, arguments));
        mark.getStyleClass().addAll("mark", style);
        marks.getChildren().add(mark);
    }
}
