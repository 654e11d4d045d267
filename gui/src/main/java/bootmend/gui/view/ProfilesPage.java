package bootmend.gui.view;

import bootmend.CardException;
import bootmend.config.VisibleText;
import bootmend.gui.model.DeskModel;
import bootmend.gui.model.ProfileWords;
import bootmend.gui.model.ProfilesModel;
import bootmend.record.ProfileListing;
import bootmend.record.ProfileView;
import java.nio.file.Path;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** Known-good profiles and others, to pick from. */
final class ProfilesPage extends VBox {

    private final ProfilesModel model;
    private final Kit kit;
    private final ListView<ProfileView> list = new ListView<>();
    private final VBox notices = new VBox(8);
    private final StackPane body = new StackPane();
    private final ScrollPane right = new ScrollPane();
    private final HBox both = new HBox(14, list, right);
    private final ProfileDetails details;
    private boolean showing;

    ProfilesPage(DeskModel desk, Kit kit, Dialogs dialogs) {
        this.model = new ProfilesModel(desk);
        this.kit = kit;
        this.details = new ProfileDetails(model, kit, dialogs);
        setId("profiles-page");
        setMinHeight(0);
        Kit.takesRoomWhenFilled(notices);
        getStyleClass().add("page");
        Button save = kit.button("profiles.save", this::save);
        Button take =
                kit.button("profiles.import", () -> dialogs.file().ifPresent(file -> model.importFrom(file, false)));
        list.setId("profiles");
        list.setAccessibleText(kit.words().of("profiles.list"));
        list.setCellFactory(view -> new Cell());
        list.getStyleClass().add("side-list");
        list.prefWidthProperty().bind(widthProperty().multiply(0.33));
        list.getSelectionModel().selectedItemProperty().addListener((observed, before, profile) -> {
            if (!showing && profile != null) {
                showDetails();
                model.choose(profile.name());
            }
        });
        right.setFitToWidth(true);
        right.getStyleClass().add("plain-scroll");
        HBox.setHgrow(right, Priority.ALWAYS);
        VBox.setVgrow(body, Priority.ALWAYS);
        getChildren().addAll(Form.row(save, take), notices, body);
        showDetails();
        model.profiles().watch(reading -> show());
        model.chosen().watch(name -> select());
        model.done().watch(done -> notices());
        model.putting().watch(putting -> save.setDisable(model.readCard().isEmpty()));
    }

    /** Reads the profiles anew. */
    void read() {
        model.read();
    }

    private void show() {
        model.profiles().get().error().ifPresent(error -> body.getChildren().setAll(kit.problem(error)));
        model.profiles().get().value().ifPresent(this::show);
        notices();
    }

    private void show(ProfileListing listing) {
        showing = true;
        list.getItems().setAll(listing.profiles());
        showing = false;
        boolean saving = right.getContent() instanceof ProfileForm;
        body.getChildren().setAll(listing.profiles().isEmpty() && !saving ? empty() : both);
        select();
    }

    private void select() {
        showing = true;
        model.profile().ifPresentOrElse(list.getSelectionModel()::select, list.getSelectionModel()::clearSelection);
        showing = false;
    }

    private Node empty() {
        VBox box = new VBox(
                10,
                kit.heading("profiles.empty"),
                kit.label("profiles.empty.how"),
                kit.label("profiles.empty.proof", "muted"));
        box.getStyleClass().add("empty");
        box.setId("profiles-empty");
        return box;
    }

    private void notices() {
        ProfilesModel.Done done = model.done().get();
        notices.getChildren().clear();
        done.words().ifPresent(words -> {
            notices.getChildren().add(kit.prose(words, "notice", "notice-good"));
            right.setContent(details);
        });
        done.error().ifPresent(error -> notices.getChildren().add(kit.problem(error)));
        done.replaceable().ifPresent(file -> notices.getChildren().add(replace(file)));
        model.profiles().get().value().map(ProfileListing::problems).ifPresent(problems -> {
            for (CardException problem : problems) {
                notices.getChildren().add(kit.problem(problem));
            }
        });
    }

    private Node replace(Path file) {
        return Form.row(kit.button("profiles.replace", () -> model.importFrom(file, true)));
    }

    private void save() {
        if (model.readCard().isPresent()) {
            right.setContent(new ProfileForm(model.saving(), kit, this::showDetails));
            body.getChildren().setAll(both);
        }
    }

    private void showDetails() {
        right.setContent(details);
        model.profiles().get().value().ifPresent(this::show);
    }

    private final class Cell extends WideCell<ProfileView> {

        @Override
        protected void updateItem(ProfileView profile, boolean empty) {
            super.updateItem(profile, empty);
            setText(null);
            setGraphic(null);
            setAccessibleText(null);
            if (empty || profile == null) {
                return;
            }
            Label name = new Label(VisibleText.of(profile.name()));
            name.getStyleClass().add("card-title");
            Label mark = kit.words(
                    kit.words().of(profile.knownGood() ? "profile.mark.good" : "profile.mark.unproven"),
                    "mark",
                    profile.knownGood() ? "mark-good" : "mark-warn");
            Label board = new Label(VisibleText.of(profile.board() + ": " + ProfileWords.settings(profile, " ")));
            board.getStyleClass().add("muted");
            VBox box = new VBox(3, name, mark, board);
            show(box);
            setAccessibleText(name.getText() + ", " + mark.getText() + ", " + board.getText());
        }
    }
}
