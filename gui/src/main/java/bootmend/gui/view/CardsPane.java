package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.gui.model.BatchModel;
import bootmend.gui.model.CardEntry;
import bootmend.gui.model.DeskModel;
import bootmend.gui.text.Words;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.IntStream;
import javafx.application.Platform;
import javafx.scene.AccessibleRole;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.SelectionMode;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The left part: every card that can be looked at, by where it comes from. */
final class CardsPane extends VBox {

    private static final Set<KeyCode> MOVES =
            EnumSet.of(KeyCode.UP, KeyCode.DOWN, KeyCode.PAGE_UP, KeyCode.PAGE_DOWN, KeyCode.HOME, KeyCode.END);

    private final DeskModel desk;
    private final Kit kit;
    private final ListView<Row> list = new ListView<>();
    private boolean showing;
    private boolean asked;
    private boolean moving;

    /** A heading or a card. */
    private sealed interface Row {

        record Heading(CardEntry.Group group) implements Row {}

        record Card(CardEntry entry) implements Row {}
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
        list.getSelectionModel().getSelectedIndices().addListener((javafx.collections.ListChangeListener<Integer>)
                change -> ask());
        list.setOnKeyPressed(this::pressed);
        getChildren()
                .addAll(
                        kit.heading("cards.title"),
                        list,
                        wide(kit.button("cards.open", chooseImages)),
                        wide(kit.button("cards.folder", chooseFolder)),
                        wide(kit.button("cards.again", desk::lookAtReaders)));
        desk.cards().watch(this::show);
        desk.current().watch(model -> follow());
        desk.batch().watch(model -> follow());
    }

    private static Button wide(Button button) {
        button.setMaxWidth(Double.MAX_VALUE);
        return button;
    }

    private void show(List<CardEntry> cards) {
        List<Row> rows = new ArrayList<>();
        for (CardEntry.Group group : CardEntry.Group.values()) {
            List<CardEntry> members =
                    cards.stream().filter(card -> card.group() == group).toList();
            if (!members.isEmpty() || group == CardEntry.Group.READER) {
                rows.add(new Row.Heading(group));
                members.forEach(card -> rows.add(new Row.Card(card)));
            }
        }
        // The same rows are left alone, and with them where a selection with shift began.
        if (!rows.equals(list.getItems())) {
            showing = true;
            list.getItems().setAll(rows);
            showing = false;
            follow();
        }
    }

    /** Selects what is in view. */
    private void follow() {
        List<Path> inView = inView();
        Set<Path> wanted = Set.copyOf(inView);
        if (wanted.isEmpty() || wanted.equals(Set.copyOf(chosen()))) {
            return;
        }
        int[] places = IntStream.range(0, list.getItems().size())
                .filter(index -> list.getItems().get(index) instanceof Row.Card card
                        && wanted.contains(card.entry().path()))
                .toArray();
        showing = true;
        list.getSelectionModel().clearSelection();
        if (places.length > 0) {
            list.getSelectionModel().selectIndices(places[0], places);
            list.getFocusModel().focus(places[0]);
            list.scrollTo(places[0]);
        }
        showing = false;
    }

    private List<Path> inView() {
        return desk.batch()
                .get()
                .map(BatchModel::cards)
                .orElseGet(() -> desk.current()
                        .get()
                        .map(model -> List.of(model.card().card()))
                        .orElse(List.of()));
    }

    private List<Path> chosen() {
        return list.getSelectionModel().getSelectedIndices().stream()
                .sorted()
                .map(list.getItems()::get)
                .filter(Row.Card.class::isInstance)
                .map(row -> ((Row.Card) row).entry().path())
                .toList();
    }

    /** One key or click changes a selection in several steps; only what they come to counts. */
    private void ask() {
        if (!showing && !asked) {
            asked = true;
            Platform.runLater(() -> {
                asked = false;
                selected();
            });
        }
    }

    private void selected() {
        List<Path> chosen = chosen();
        if (chosen.isEmpty() || Set.copyOf(chosen).equals(Set.copyOf(inView()))) {
            return;
        }
        if (desk.isWriting()) {
            follow();
        } else if (chosen.size() == 1) {
            desk.look(chosen.get(0));
        } else {
            desk.together(chosen);
        }
    }

    /** After the list itself has moved on: a heading is no place to stay at. */
    private void pressed(KeyEvent event) {
        if (event.getCode() == KeyCode.ENTER) {
            selected();
        } else if (MOVES.contains(event.getCode()) && atHeading()) {
            boolean up = event.getCode() == KeyCode.UP || event.getCode() == KeyCode.PAGE_UP;
            move(event, up ? KeyCode.UP : KeyCode.DOWN);
            move(event, up ? KeyCode.DOWN : KeyCode.UP);
        }
    }

    /** Moves on as that key would, past headings, as far as the list goes. */
    private void move(KeyEvent event, KeyCode code) {
        int before = -1;
        while (atHeading() && list.getFocusModel().getFocusedIndex() != before && !moving) {
            before = list.getFocusModel().getFocusedIndex();
            moving = true;
            list.fireEvent(new KeyEvent(
                    KeyEvent.KEY_PRESSED,
                    "",
                    "",
                    code,
                    event.isShiftDown(),
                    event.isControlDown(),
                    event.isAltDown(),
                    event.isMetaDown()));
            moving = false;
        }
    }

    private boolean atHeading() {
        return list.getFocusModel().getFocusedItem() instanceof Row.Heading;
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
                boolean none = heading.group() == CardEntry.Group.READER
                                && getIndex() + 1 < list.getItems().size()
                                && list.getItems().get(getIndex() + 1) instanceof Row.Heading
                        || heading.group() == CardEntry.Group.READER
                                && list.getItems().size() == 1;
                Label name = kit.words(
                        words.of("cards.group." + heading.group().name().toLowerCase(Locale.ROOT)), "group");
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
