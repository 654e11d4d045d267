package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.gui.model.ProfileSaving;
import bootmend.gui.model.Reading;
import bootmend.record.ProfileJob;
import bootmend.trial.Trial;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;

/** What is to be told to save a card's settings as a profile. */
final class ProfileForm extends VBox {

    private final ProfileSaving model;
    private final Kit kit;
    private final TextField name;
    private final ComboBox<String> board;
    private final TextField cooling;
    private final TextField supply;
    private final TextField notes;
    private final VBox trials = new VBox(6);
    private final VBox problem = new VBox(8);
    private final Map<String, CheckBox> chosen = new LinkedHashMap<>();

    /** @param close goes back to where the form was opened */
    ProfileForm(ProfileSaving model, Kit kit, Runnable close) {
        super(10);
        this.model = model;
        this.kit = kit;
        setId("profile-form");
        Form form = new Form(kit);
        name = form.text("saving.name", 200);
        board = form.choice("saving.board", 120, model.boards());
        cooling = form.text("saving.cooling", 200);
        supply = form.text("saving.supply", 200);
        notes = form.text("saving.notes", 330);
        trials.setId("saving-trials");
        problem.setId("saving-problem");
        board.valueProperty().addListener((observed, before, id) -> model.lookForTrials(id == null ? "" : id));
        Button save = kit.button("saving.save", () -> save(false));
        save.getStyleClass().add("accent");
        getChildren()
                .addAll(
                        kit.heading("saving.title"),
                        kit.text(
                                kit.words()
                                        .of(
                                                "saving.what",
                                                model.card()
                                                        .map(card -> card.card().toString())
                                                        .orElse("")),
                                "muted"),
                        form,
                        trials,
                        problem,
                        Form.row(save, kit.button("saving.close", close)));
        List.of(trials, problem).forEach(Kit::takesRoomWhenFilled);
        model.backing().watch(this::backing);
        model.problem().watch(error -> problem());
        model.likelyBoard().ifPresent(board::setValue);
    }

    private void backing(Reading<List<Trial>> reading) {
        trials.getChildren().clear();
        chosen.clear();
        reading.error().ifPresent(error -> trials.getChildren().add(kit.problem(error)));
        reading.value().ifPresent(this::backing);
    }

    private void backing(List<Trial> all) {
        trials.getChildren()
                .add(kit.label(
                        all.isEmpty() ? "saving.notrials" : "saving.trials", all.isEmpty() ? "muted" : "form-name"));
        for (Trial trial : all) {
            CheckBox box = new CheckBox(VisibleText.of(kit.words()
                    .of(
                            "saving.trial",
                            trial.id(),
                            trial.unit().label(),
                            trial.outcome().word(),
                            trial.standing().why())));
            box.setWrapText(true);
            box.setSelected(trial.isKnownGood());
            chosen.put(trial.id(), box);
            trials.getChildren().add(box);
        }
    }

    private void problem() {
        problem.getChildren().clear();
        model.problem().get().ifPresent(error -> problem.getChildren().add(kit.problem(error)));
        if (model.isNameTaken()) {
            problem.getChildren().add(Form.row(kit.button("saving.replace", () -> save(true))));
        }
    }

    private void save(boolean replace) {
        model.save(new ProfileJob.Save(
                name.getText().strip(),
                board.getValue() == null ? "" : board.getValue(),
                cooling.getText().strip(),
                supply.getText().strip(),
                notes.getText().strip(),
                chosen.entrySet().stream()
                        .filter(each -> each.getValue().isSelected())
                        .map(Map.Entry::getKey)
                        .toList(),
                replace));
    }
}
