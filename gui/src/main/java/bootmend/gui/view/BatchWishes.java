package bootmend.gui.view;

import bootmend.finding.Purpose;
import bootmend.gui.model.BatchModel;
import bootmend.gui.model.BatchState;
import bootmend.gui.model.Reading;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.record.ProfileListing;
import bootmend.record.ProfileView;
import bootmend.view.CautionView;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** What can be done with all of the cards, of which one is chosen and worked out. */
final class BatchWishes extends VBox {

    private final BatchModel model;
    private final Kit kit;
    private final ToggleGroup group = new ToggleGroup();
    private final RadioButton stock;
    private final RadioButton profile;
    private final RadioButton repair;
    private final RadioButton check;
    private final ComboBox<ProfileView> profiles = new ComboBox<>();
    private final ComboBox<Purpose> purposes = new ComboBox<>();
    private final VBox notes = new VBox(6);
    private final Button workOut;

    BatchWishes(BatchModel model, Kit kit) {
        super(8);
        this.model = model;
        this.kit = kit;
        stock = choice("stock");
        profile = choice("profile");
        repair = choice("repair");
        check = choice("check");
        combo(
                profiles,
                "batch-profiles",
                "batch.profile.accessible",
                each -> kit.words().of("batch.profile.of", each.name(), each.board()));
        combo(
                purposes,
                "batch-purposes",
                "batch.check.accessible",
                purpose -> kit.words().of("batch.for." + purpose.word()));
        purposes.getItems().setAll(Purpose.values());
        purposes.setValue(Purpose.SHIP);
        workOut = kit.button("batch.workout", this::begin);
        workOut.setMaxWidth(Double.MAX_VALUE);
        getChildren().addAll(stock, row(profile, profiles), repair, row(check, purposes), notes, workOut);
        stock.setSelected(true);
        group.selectedToggleProperty().addListener((observed, before, chosen) -> show());
        profiles.setOnAction(event -> show());
        model.profiles().watch(reading -> fill());
        model.state().watch(state -> show());
    }

    private RadioButton choice(String key) {
        RadioButton button = new RadioButton(kit.words().of("batch.choice." + key));
        button.setId("batch-choice-" + key);
        button.setMnemonicParsing(true);
        button.setToggleGroup(group);
        button.setMinWidth(USE_PREF_SIZE);
        return button;
    }

    private <T> void combo(ComboBox<T> combo, String id, String accessible, Function<T, String> text) {
        combo.setId(id);
        combo.setAccessibleText(kit.words().of(accessible));
        combo.setMinWidth(0);
        combo.setPrefWidth(1);
        combo.setMaxWidth(Double.MAX_VALUE);
        combo.setConverter(new StringConverter<>() {
            @Override
            public String toString(T value) {
                return value == null ? "" : text.apply(value);
            }

            @Override
            public T fromString(String typed) {
                return null;
            }
        });
    }

    private static Node row(RadioButton choice, ComboBox<?> combo) {
        HBox.setHgrow(combo, Priority.ALWAYS);
        HBox row = new HBox(8, choice, combo);
        row.getStyleClass().add("row");
        return row;
    }

    private void fill() {
        List<ProfileView> all =
                model.profiles().get().value().map(ProfileListing::profiles).orElse(List.of());
        profiles.getItems().setAll(all);
        if (!all.isEmpty()) {
            profiles.setValue(all.get(0));
        }
        show();
    }

    private void show() {
        boolean working = model.state().get() instanceof BatchState.Working;
        boolean putsProfile = profile.isSelected();
        List.of(stock, profile, repair, check).forEach(each -> each.setDisable(working));
        profiles.setDisable(working || !putsProfile || profiles.getItems().isEmpty());
        purposes.setDisable(working || !check.isSelected());
        workOut.setText(kit.words().of(check.isSelected() ? "batch.checkthem" : "batch.workout"));
        workOut.setDisable(working || putsProfile && profiles.getValue() == null);
        notes.getChildren().clear();
        if (putsProfile) {
            profileNotes();
        }
    }

    private void profileNotes() {
        Reading<ProfileListing> reading = model.profiles().get();
        reading.error().ifPresent(error -> notes.getChildren().add(kit.problem(error)));
        if (reading.value().filter(listing -> listing.profiles().isEmpty()).isPresent()) {
            notes.getChildren().add(kit.label("batch.noprofile", "muted"));
        }
        reading.value()
                .map(ProfileListing::cautions)
                .filter(all -> !all.isEmpty() && profiles.getValue() != null)
                .ifPresent(all -> notes.getChildren().add(cautions(all)));
    }

    private Node cautions(List<CautionView> all) {
        CautionsPane pane = new CautionsPane(kit, all);
        pane.setText(kit.words().of("batch.cautions", all.size()));
        pane.setId("batch-cautions");
        pane.setMinWidth(0);
        return pane;
    }

    private void begin() {
        if (check.isSelected()) {
            model.check(purposes.getValue());
        } else if (profile.isSelected()) {
            model.workOut(ChangeOrder.of(
                    new ChangeRequest.ToProfile(profiles.getValue().name(), Optional.empty())));
        } else {
            model.workOut(
                    repair.isSelected()
                            ? ChangeOrder.of(ChangeRequest.Repair.PLAIN)
                            : ChangeOrder.of(ChangeRequest.ToStock.PLAIN));
        }
    }
}
