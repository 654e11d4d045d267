package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.gui.model.CardEntry;
import bootmend.gui.model.DeskModel;
import bootmend.gui.text.Words;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.application.Platform;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.SelectionMode;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The left part: every card that can be looked at, by where it comes from. */
final class CardsPane extends VBox {

    private final DeskModel desk;
    private final Kit kit;
    private final ListView<Row> list = new ListView<>();
    private boolean showing;

    /** A heading or a card. */
    private sealed interface Row {

        record Heading(CardEntry.Group group) implements Row {
        }

        record Card(CardEntry entry) implements Row {
        }
    }

    /**
     * @param chooseImages lets the user name image files
     * @param chooseFolder lets the user name a folder
     */
    CardsPane(DeskModel desk, Kit kit, Runnable chooseImages, Runnable chooseFolder) {
        this.desk = desk;
        this.kit = kit;
        setId("cards-pane");
        getStyleClass().add("cards-pane");
        list.setId("cards");
        list.setAccessibleRole(AccessibleRole.LIST_VIEW);
        list.setAccessibleText(kit.words().of("cards.list"));
        list.getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
        list.setCellFactory(view -> new Cell());
        list.setPlaceholder(kit.label("cards.none", "muted"));
        VBox.setVgrow(list, Priority.ALWAYS);
        list.getSelectionModel().getSelectedItems().addListener(
                (javafx.collections.ListChangeListener<Row>) change -> Platform.runLater(this::selected));
        list.setOnKeyPressed(event -> {
            if (event.getCode() == KeyCode.ENTER) {
                selected();
            }
        });
        getChildren().addAll(kit.heading("cards.title"), list, wide(kit.button("cards.open", chooseImages)),
                wide(kit.button("cards.folder", chooseFolder)), wide(kit.button("cards.again", desk::lookAtReaders)));
        desk.cards().watch(this::show);
        desk.current().watch(model -> show(desk.cards().get()));
    }

    private static javafx.scene.control.Button wide(javafx.scene.control.Button button) {
        button.setMaxWidth(Double.MAX_VALUE);
        return button;
    }

    private void show(List<CardEntry> cards) {
        List<Row> rows = new ArrayList<>();
        for (CardEntry.Group group : CardEntry.Group.values()) {
            List<CardEntry> members = cards.stream().filter(card -> card.group() == group).toList();
            if (!members.isEmpty() || group == CardEntry.Group.READER) {
                rows.add(new Row.Heading(group));
                members.forEach(card -> rows.add(new Row.Card(card)));
            }
        }
        Optional<Path> current = desk.current().get().map(model -> model.card().card());
        List<Path> together = desk.batch().get().map(batch -> batch.cards()).orElse(List.of());
        showing = true;
        list.getItems().setAll(rows);
        list.getSelectionModel().clearSelection();
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i) instanceof Row.Card card && (current.filter(card.entry().path()::equals).isPresent()
                    || together.contains(card.entry().path()))) {
                list.getSelectionModel().select(i);
            }
        }
        showing = false;
    }

    private void selected() {
        if (showing) {
            return;
        }
        List<Path> chosen = new ArrayList<>();
        for (Row row : list.getSelectionModel().getSelectedItems()) {
            if (row instanceof Row.Card card) {
                chosen.add(card.entry().path());
            }
        }
        boolean same = chosen.size() == 1
                ? desk.current().get().filter(model -> model.card().card().equals(chosen.get(0))).isPresent()
                : desk.batch().get().filter(batch -> batch.cards().equals(chosen)).isPresent();
        if (same) {
            return;
        }
        if (chosen.size() == 1) {
            desk.look(chosen.get(0));
        } else if (chosen.size() > 1) {
            desk.together(chosen);
        }
    }

    private final class Cell extends WideCell<Row> {

        @Override
        protected void updateItem(Row row, boolean empty) {
            super.updateItem(row, empty);
            setText(null);
            setGraphic(null);
            setDisable(false);
            getStyleClass().removeAll("group-cell");
            if (empty || row == null) {
                return;
            }
            Words words = kit.words();
            if (row instanceof Row.Heading heading) {
                getStyleClass().add("group-cell");
                setDisable(true);
                boolean none = heading.group() == CardEntry.Group.READER && getIndex() + 1 < list.getItems().size()
                        && list.getItems().get(getIndex() + 1) instanceof Row.Heading
                        || heading.group() == CardEntry.Group.READER && list.getItems().size() == 1;
                Label name = kit.words(words.of("cards.group." + heading.group().name().toLowerCase(Locale.ROOT)), "group");
                show(none ? new VBox(name, kit.label("cards.noreader", "muted")) : new VBox(name));
            } else if (row instanceof Row.Card card) {
                CardEntry entry = card.entry();
                Label title = new Label(VisibleText.of(entry.title()));
                title.getStyleClass().add("card-title");
                Label detail = new Label(VisibleText.of(detail(entry)));
                detail.getStyleClass().add("muted");
                VBox box = new VBox(title, detail);
                if (!entry.note().isEmpty()) {
                    box.getChildren().add(kit.text(Kit.sentence(entry.note()), "muted"));
                }
                show(box);
                setAccessibleText(title.getText() + ", " + detail.getText());
            }
        }

        private String detail(CardEntry entry) {
            if (entry.group() == CardEntry.Group.READER) {
                return entry.path().toString();
            }
            Path folder = entry.path().toAbsolutePath().getParent();
            return folder == null ? "" : folder.toString();
        }
    }
}
