package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.gui.model.BoardTile;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.LinePlace;
import bootmend.gui.model.Reading;
import bootmend.gui.model.SheetRow;
import bootmend.gui.model.SheetRows;
import bootmend.gui.text.Words;
import bootmend.view.CautionView;
import bootmend.view.SheetView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.SelectionMode;
import javafx.scene.control.TitledPane;
import javafx.scene.control.Tooltip;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The config file's lines, what each comes to on the chosen board, and what a check says about it. */
final class SheetPage extends VBox {

    private static final KeyCombination COPY = new KeyCodeCombination(KeyCode.C, KeyCombination.SHORTCUT_DOWN);

    /** Lines that stay visible above the one that the user is taken to. */
    private static final int ABOVE = 3;

    private final CardModel model;
    private final Kit kit;
    private final ComboBox<String> board = new ComboBox<>();
    private final FlowPane tiles = new FlowPane(8, 8);
    private final Label runs = new Label();
    private final ListView<SheetRow> lines = new ListView<>();
    private final VBox notices = new VBox(8);
    private final VBox cautions = new VBox();
    private final StackPane body = new StackPane();
    private boolean showing;

    SheetPage(CardModel model, Kit kit) {
        this.model = model;
        this.kit = kit;
        setId("sheet-page");
        getStyleClass().add("page");
        Label question = kit.words(kit.words().of("sheet.board"));
        question.setLabelFor(board);
        question.setMnemonicParsing(true);
        board.setId("board");
        board.setMinWidth(Region.USE_PREF_SIZE);
        board.setAccessibleText(kit.words().of("sheet.board.accessible"));
        board.setOnAction(event -> boardChosen());
        runs.getStyleClass().add("muted");
        runs.setWrapText(true);
        HBox.setHgrow(runs, Priority.ALWAYS);
        HBox row = new HBox(10, question, board, runs);
        row.getStyleClass().add("row");
        row.managedProperty().bind(row.visibleProperty());
        model.sheet().watch(reading -> row.setVisible(reading.error().isEmpty()));
        body.setAlignment(Pos.TOP_LEFT);
        tiles.setId("tiles");
        lines.setId("lines");
        lines.getStyleClass().add("sheet");
        lines.setAccessibleText(kit.words().of("sheet.lines"));
        lines.getSelectionModel().setSelectionMode(SelectionMode.MULTIPLE);
        lines.setCellFactory(view -> new SheetCell(kit));
        lines.setOnKeyPressed(event -> {
            if (COPY.match(event)) {
                copy();
                event.consume();
            }
        });
        VBox.setVgrow(body, Priority.ALWAYS);
        getChildren().addAll(row, tiles, notices, body, cautions);
        model.sheet().watch(reading -> show());
        model.check().watch(reading -> refreshRows());
        model.bootable().watch(boards -> show());
        model.pointedAt().watch(place -> place.ifPresent(this::point));
    }

    private void show() {
        Reading<SheetView> reading = model.sheet().get();
        notices.getChildren().clear();
        tiles.getChildren().clear();
        cautions.getChildren().clear();
        runs.setText("");
        if (reading instanceof Reading.Waiting) {
            body.getChildren().setAll(kit.label("sheet.reading", "muted"));
        }
        reading.error().ifPresent(error -> body.getChildren().setAll(kit.problem(error)));
        reading.value().ifPresent(this::show);
    }

    private void show(SheetView view) {
        showing = true;
        List<String> boards = new ArrayList<>(List.of(kit.words().of("sheet.anyboard")));
        boards.addAll(model.bootable().get());
        view.boards().stream().filter(each -> !boards.contains(each)).forEach(boards::add);
        board.getItems().setAll(boards);
        board.setValue(model.board().get().orElse(boards.get(0)));
        showing = false;
        view.show()
                .card()
                .configProblem()
                .ifPresent(error -> notices.getChildren().add(kit.problem(error)));
        view.show()
                .card()
                .notes()
                .forEach(note -> notices.getChildren().add(kit.prose(Kit.sentence(note), "notice", "notice-warn")));
        model.board()
                .get()
                .filter(each -> !model.bootable().get().isEmpty()
                        && !model.bootable().get().contains(each))
                .ifPresent(each -> notices.getChildren()
                        .add(kit.text(kit.words().of("sheet.noboot", each), "notice", "notice-warn")));
        List<BoardTile> all = BoardTile.of(view.show(), kit.words());
        all.forEach(tile -> tiles.getChildren().add(tile(tile)));
        String named = model.board().get().orElse("");
        Words words = kit.words();
        runs.setText(
                all.isEmpty()
                        ? words.of(named.isEmpty() ? "sheet.runs.allstock" : "sheet.runs.stock", named)
                        : words.of(named.isEmpty() ? "sheet.runs.any" : "sheet.runs.board", named));
        refreshRows();
        body.getChildren().setAll(lines);
        toFirstTuned();
        cautions(view.show().cautions());
    }

    private void refreshRows() {
        model.sheet()
                .get()
                .value()
                .ifPresent(view -> lines.getItems().setAll(new SheetRows(kit.words()).of(view, model::findingsAt)));
    }

    private void point(LinePlace place) {
        for (int i = 0; i < lines.getItems().size(); i++) {
            if (lines.getItems().get(i) instanceof SheetRow.Line line
                    && line.file().equals(place.file())
                    && line.line().number() == place.line()) {
                lines.getSelectionModel().clearAndSelect(i);
                lines.scrollTo(Math.max(0, i - ABOVE));
                lines.requestFocus();
            }
        }
    }

    /** What is tuned must be seen at once, however long the file's head is. */
    private void toFirstTuned() {
        List<SheetRow> rows = lines.getItems();
        for (int i = 0; i < rows.size(); i++) {
            if (rows.get(i) instanceof SheetRow.Line line && line.tone() == SheetRow.Tone.COUNTS) {
                lines.scrollTo(Math.max(0, i - ABOVE));
                return;
            }
        }
    }

    private void boardChosen() {
        if (!showing && board.getValue() != null) {
            int index = board.getSelectionModel().getSelectedIndex();
            model.setBoard(index <= 0 ? Optional.empty() : Optional.of(board.getValue()));
        }
    }

    private VBox tile(BoardTile tile) {
        Label value = new Label(VisibleText.of(tile.value()));
        value.getStyleClass().add("tile-value");
        Label detail = new Label(VisibleText.of(tile.detail()));
        detail.getStyleClass().add("tile-detail");
        detail.setMaxWidth(260);
        VBox box = new VBox(kit.words(tile.key(), "tile-key"), value, detail);
        box.getStyleClass()
                .addAll("tile", "tile-" + tile.state().replace(' ', '-').toLowerCase(Locale.ROOT));
        Tooltip.install(
                box, new Tooltip(VisibleText.of(tile.key() + ": " + tile.value() + " (" + tile.detail() + ")")));
        return box;
    }

    private void cautions(List<CautionView> all) {
        if (all.isEmpty()) {
            return;
        }
        VBox texts = new VBox(6);
        texts.setPadding(new Insets(4));
        all.forEach(caution -> texts.getChildren().add(kit.prose(caution.text())));
        TitledPane pane = new TitledPane(kit.words().of("sheet.cautions", all.size()), texts);
        pane.setId("cautions");
        pane.setExpanded(false);
        pane.setAnimated(false);
        cautions.getChildren().add(pane);
    }

    /** Copies the chosen lines as they stand in the file. */
    private void copy() {
        List<String> texts = lines.getSelectionModel().getSelectedItems().stream()
                .filter(SheetRow.Line.class::isInstance)
                .map(row -> ((SheetRow.Line) row).line().text())
                .toList();
        ClipboardContent content = new ClipboardContent();
        content.putString(String.join("\n", texts));
        Clipboard.getSystemClipboard().setContent(content);
    }
}
