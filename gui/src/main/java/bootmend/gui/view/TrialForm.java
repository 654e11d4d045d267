package bootmend.gui.view;

import bootmend.NextStep;
import bootmend.gui.model.Reading;
import bootmend.gui.model.TrialDraft;
import bootmend.gui.model.TrialsModel;
import bootmend.record.TrialAdded;
import bootmend.trial.Outcome;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;

/** What is to be told of a trial to keep it. */
final class TrialForm extends VBox {

    private static final double SHORT = 112;

    private final Kit kit;
    private final TextField label;
    private final ComboBox<String> board;
    private final TextField clock;
    private final TextField step;
    private final TextField others;
    private final CheckBox fromCard;
    private final CheckBox onceStarted;
    private final CheckBox despite;
    private final ComboBox<String> outcome;
    private final TextField minutes;
    private final CheckBox fullLoad;
    private final TextField peak;
    private final TextField loadClock;
    private final TextField mask;
    private final TextField cooling;
    private final TextField supply;
    private final TextField ambient;
    private final TextField notes;
    private final TextField log;
    private final VBox result = new VBox(8);

    TrialForm(TrialsModel model, Kit kit, Dialogs dialogs) {
        super(9);
        this.kit = kit;
        setId("trial-form");
        Form which = new Form(kit);
        label = which.text("adding.label", 150);
        board = which.choice("adding.board", 110, model.boards());
        Form settings = new Form(kit);
        clock = settings.text("adding.clock", SHORT);
        step = settings.text("adding.step", SHORT);
        others = settings.text("adding.others", 220);
        fromCard = settings.check("adding.fromcard");
        onceStarted = settings.check("adding.once");
        Form how = new Form(kit);
        outcome = how.choice(
                "adding.outcome",
                130,
                Arrays.stream(Outcome.values()).map(Outcome::word).toList());
        minutes = how.text("adding.minutes", SHORT);
        peak = how.text("adding.peak", SHORT);
        loadClock = how.text("adding.loadclock", SHORT);
        mask = how.text("adding.mask", SHORT);
        fullLoad = how.check("adding.fullload");
        log = how.text("adding.log", 220);
        how.getChildren()
                .add(bottom(kit.button(
                        "adding.browse",
                        () -> dialogs.file().map(Path::toString).ifPresent(log::setText))));
        Form around = new Form(kit);
        cooling = around.text("adding.cooling", 170);
        supply = around.text("adding.supply", 170);
        ambient = around.text("adding.ambient", SHORT);
        notes = around.text("adding.notes", 300);
        result.setId("adding-result");
        Form whether = new Form(kit);
        despite = whether.check("adding.despite");
        despite.setVisible(false);
        whether.visibleProperty().bind(despite.visibleProperty());
        whether.managedProperty().bind(despite.visibleProperty());
        Button keep = kit.button("adding.keep", () -> model.add(draft()));
        keep.getStyleClass().add("accent");
        getChildren()
                .addAll(
                        kit.heading("adding.title"),
                        which,
                        part("adding.part.settings"),
                        settings,
                        part("adding.part.run"),
                        how,
                        part("adding.part.around"),
                        around,
                        result,
                        whether,
                        Form.row(keep));
        label.focusedProperty().addListener((observed, before, focused) -> {
            if (!focused) {
                model.boardOf(label.getText()).ifPresent(board::setValue);
            }
        });
        model.label()
                .watch(chosen -> chosen.ifPresent(text -> {
                    label.setText(text);
                    model.boardOf(text).ifPresent(board::setValue);
                }));
        Kit.takesRoomWhenFilled(result);
        model.adding().watch(this::show);
        model.staging().watch(staging -> {
            fromCard.setDisable(model.readCard().isEmpty());
            onceStarted.setDisable(!staging.staged());
        });
    }

    private javafx.scene.control.Label part(String key) {
        return kit.label(key, "card-title");
    }

    private static VBox bottom(Button button) {
        VBox cell = new VBox(button);
        cell.setAlignment(javafx.geometry.Pos.BOTTOM_LEFT);
        return cell;
    }

    private TrialDraft draft() {
        return new TrialDraft(
                label.getText(),
                value(board),
                !fromCard.isDisabled() && fromCard.isSelected(),
                !onceStarted.isDisabled() && onceStarted.isSelected(),
                clock.getText(),
                step.getText(),
                others.getText(),
                value(outcome),
                minutes.getText(),
                fullLoad.isSelected(),
                peak.getText(),
                loadClock.getText(),
                mask.getText(),
                cooling.getText(),
                supply.getText(),
                ambient.getText(),
                notes.getText(),
                log.getText(),
                despite.isVisible() && despite.isSelected());
    }

    private static String value(ComboBox<String> box) {
        return box.getValue() == null ? "" : box.getValue();
    }

    private void show(Reading<TrialAdded> reading) {
        result.getChildren().clear();
        reading.error().ifPresent(error -> result.getChildren().add(kit.problem(error)));
        despite.setVisible(reading.error()
                .filter(error -> error.isRefusedFor(NextStep.Allow.CONTRADICTED))
                .isPresent());
        reading.value().ifPresent(this::kept);
    }

    private void kept(TrialAdded added) {
        result.getChildren().add(kit.prose(kit.words().of("adding.kept", added.file()), "notice", "notice-good"));
        added.log()
                .ifPresent(summary -> result.getChildren()
                        .add(kit.prose(
                                kit.words().of("adding.fromlog", summary.rows(), summary.badRows(), summary.gaps()),
                                "muted")));
        added.notes().forEach(note -> result.getChildren().add(kit.prose(note, "notice", "notice-warn")));
        // The next trial is of the same board in the same place, but nothing that was measured is true of it.
        List.of(clock, step, others, minutes, peak, loadClock, mask, notes, log).forEach(TextField::clear);
        outcome.setValue(null);
        fullLoad.setSelected(false);
        fromCard.setSelected(false);
        onceStarted.setSelected(false);
        despite.setSelected(false);
    }
}
