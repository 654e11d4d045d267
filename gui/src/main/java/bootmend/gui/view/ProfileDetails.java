package bootmend.gui.view;

import bootmend.gui.model.ProfileWords;
import bootmend.gui.model.ProfilesModel;
import bootmend.gui.model.Reading;
import bootmend.record.ProfileListing;
import bootmend.record.ProfileView;
import bootmend.record.SettingDifference;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** One profile: what it sets, what backs it, and what can be done with it. */
final class ProfileDetails extends VBox {

    private final ProfilesModel model;
    private final Kit kit;
    private final ProfileWords words;
    private final VBox about = new VBox(8);
    private final VBox whether = new VBox(8);
    private final VBox differences = new VBox(6);
    private final VBox cautions = new VBox();
    private final VBox asking = new VBox(8);
    private final CheckBox otherBoard = new CheckBox();
    private final CheckBox despite = new CheckBox();
    private final Button put;
    private final Button compare;
    private Optional<ProfileView> shown = Optional.empty();

    ProfileDetails(ProfilesModel model, Kit kit, Dialogs dialogs) {
        super(12);
        this.model = model;
        this.kit = kit;
        this.words = new ProfileWords(kit.words());
        setId("profile-details");
        put = kit.button(
                "profile.put",
                () -> model.put(
                        otherBoard.isVisible() && otherBoard.isSelected(),
                        despite.isVisible() && despite.isSelected()));
        put.getStyleClass().add("accent");
        compare = kit.button("profile.compare", model::compare);
        option(otherBoard, "profile.otherboard");
        option(despite, "profile.despite");
        Button export = kit.button(
                "profile.export",
                () -> model.chosen()
                        .get()
                        .ifPresent(name -> dialogs.save(name + ".yaml").ifPresent(model::exportTo)));
        Button delete = kit.button("profile.delete", this::ask);
        getChildren()
                .addAll(
                        about,
                        Form.row(put, compare),
                        whether,
                        differences,
                        cautions,
                        Form.row(export, delete),
                        asking);
        List.of(whether, differences, cautions, asking).forEach(Kit::takesRoomWhenFilled);
        model.chosen().watch(name -> show());
        model.profiles().watch(reading -> show());
        model.putting().watch(putting -> whether(putting));
        model.comparison().watch(this::compared);
    }

    private void option(CheckBox box, String key) {
        box.setId(key.replace('.', '-'));
        box.setText(kit.words().of(key));
        box.setMnemonicParsing(true);
        box.setWrapText(true);
    }

    private void show() {
        Optional<ProfileView> profile = model.profile();
        if (!profile.equals(shown)) {
            otherBoard.setSelected(false);
            despite.setSelected(false);
            asking.getChildren().clear();
        }
        shown = profile;
        setVisible(profile.isPresent());
        about.getChildren().clear();
        profile.ifPresent(this::show);
        cautions.getChildren().clear();
        model.profiles()
                .get()
                .value()
                .map(ProfileListing::cautions)
                .filter(all -> !all.isEmpty())
                .ifPresent(all -> cautions.getChildren().add(new CautionsPane(kit, all)));
    }

    private void show(ProfileView profile) {
        Node name = kit.fact(profile.name(), "title");
        name.setId("profile-name");
        FlowPane facts = new FlowPane(18, 4);
        fact(facts, "profile.board", profile.board());
        fact(facts, "profile.cooling", profile.cooling());
        fact(facts, "profile.supply", profile.supply());
        Node settings = new Prose(ProfileWords.settings(profile, "\n"), "code");
        settings.setId("profile-settings");
        VBox evidence = new VBox(
                4, kit.prose(words.standing(profile), "notice", profile.knownGood() ? "notice-good" : "notice-warn"));
        evidence.setId("profile-evidence");
        profile.evidence().forEach(trial -> evidence.getChildren().add(kit.prose(words.evidence(trial), "muted")));
        about.getChildren().addAll(name, facts, settings, evidence);
        if (!profile.notes().isBlank()) {
            about.getChildren().add(kit.prose(profile.notes()));
        }
    }

    private void fact(FlowPane facts, String key, String value) {
        if (!value.isBlank()) {
            facts.getChildren().add(new VBox(kit.words(kit.words().of(key), "fact-name"), kit.fact(value)));
        }
    }

    private void whether(ProfilesModel.Putting putting) {
        put.setDisable(!putting.whyNot().isEmpty());
        compare.setDisable(model.readCard().isEmpty());
        otherBoard.setVisible(putting.forAnotherBoard());
        despite.setVisible(putting.metBlockers());
        whether.getChildren().clear();
        if (!putting.whyNot().isEmpty()) {
            Node why = kit.text(putting.whyNot(), "muted");
            why.setId("profile-whynot");
            whether.getChildren().add(why);
            return;
        }
        if (putting.forAnotherBoard()) {
            String wanted = model.readCard().flatMap(card -> card.board().get()).orElse("");
            whether.getChildren()
                    .addAll(
                            kit.text(
                                    kit.words()
                                            .of(
                                                    "profile.anotherboard",
                                                    model.profile()
                                                            .map(ProfileView::board)
                                                            .orElse(""),
                                                    wanted),
                                    "notice",
                                    "notice-warn"),
                            otherBoard);
        }
        if (putting.metBlockers()) {
            whether.getChildren().add(despite);
        }
    }

    private void compared(Reading<List<SettingDifference>> reading) {
        differences.getChildren().clear();
        if (reading instanceof Reading.Waiting) {
            differences.getChildren().add(kit.label("profile.comparing", "muted"));
        }
        reading.error().ifPresent(error -> differences.getChildren().add(kit.problem(error)));
        reading.value()
                .ifPresent(all -> differences
                        .getChildren()
                        .add(all.isEmpty() ? kit.label("profile.same", "notice", "notice-good") : table(all)));
    }

    private Node table(List<SettingDifference> all) {
        GridPane grid = new GridPane();
        grid.setId("profile-differences");
        grid.getStyleClass().add("compare");
        grid.addRow(
                0,
                kit.label("profile.key", "fact-name"),
                kit.label("profile.here", "fact-name"),
                kit.label("profile.oncard", "fact-name"));
        for (SettingDifference each : all) {
            grid.addRow(grid.getRowCount(), kit.fact(each.key(), "code"), value(each.left()), value(each.right()));
        }
        return grid;
    }

    private Node value(Optional<String> value) {
        return value.<Node>map(text -> kit.fact(text, "code")).orElseGet(() -> kit.label("profile.stock", "muted"));
    }

    private void ask() {
        String name = model.chosen().get().orElse("");
        Button yes = kit.button("profile.delete.yes", () -> {
            asking.getChildren().clear();
            model.delete();
        });
        Button no = kit.button("profile.delete.no", () -> asking.getChildren().clear());
        VBox question = new VBox(8, kit.text(kit.words().of("profile.delete.ask", name)), Form.row(yes, no));
        question.getStyleClass().addAll("notice", "notice-warn");
        asking.getChildren().setAll(question);
        no.requestFocus();
    }
}
