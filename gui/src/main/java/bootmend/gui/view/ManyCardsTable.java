package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.gui.model.BatchModel;
import bootmend.gui.model.BatchRow;
import bootmend.gui.model.BatchState;
import bootmend.gui.model.BatchWords;
import bootmend.gui.model.Watched;
import bootmend.page.CardState;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.collections.FXCollections;
import javafx.collections.transformation.FilteredList;
import javafx.collections.transformation.SortedList;
import javafx.scene.control.TableCell;
import javafx.scene.control.TableColumn;
import javafx.scene.control.TableView;

/** One row a card; a card that becomes another row's worth of news changes the cells of that row alone. */
final class ManyCardsTable extends TableView<ObjectProperty<BatchRow>> {

    private static final List<String> TONES = List.of("batch-good", "batch-tuned", "batch-bad", "batch-quiet");

    private final BatchWords says;
    private final FilteredList<ObjectProperty<BatchRow>> shown;
    private boolean attentionOnly;

    public ManyCardsTable(BatchModel model, Kit kit) {
        this.says = new BatchWords(kit.words());
        List<ObjectProperty<BatchRow>> rows = new ArrayList<>();
        for (Watched<BatchRow> row : model.rows()) {
            ObjectProperty<BatchRow> property = new SimpleObjectProperty<>(row.get());
            row.watch(property::set);
            rows.add(property);
        }
        shown = new FilteredList<>(FXCollections.observableArrayList(rows));
        SortedList<ObjectProperty<BatchRow>> sorted = new SortedList<>(shown);
        sorted.comparatorProperty().bind(comparatorProperty());
        setId("batch-table");
        setMinWidth(0);
        setItems(sorted);
        setAccessibleText(kit.words().of("batch.table"));
        setPlaceholder(kit.label("batch.noneleft", "muted"));
        setColumnResizePolicy(CONSTRAINED_RESIZE_POLICY_LAST_COLUMN);
        getStyleClass().add("batch-table");
        getColumns().add(column(kit, "name", 155, BatchRow::name, row -> ""));
        getColumns().add(column(kit, "identity", 145, says::identity, row -> ""));
        getColumns().add(column(kit, "tuning", 85, says::tuning, ManyCardsTable::tuningTone));
        getColumns().add(column(kit, "state", 130, says::state, ManyCardsTable::stateTone));
        getColumns().add(column(kit, "detail", 175, says::detail, ManyCardsTable::stateTone));
        model.state().watch(state -> {
            if (attentionOnly && state instanceof BatchState.Rest) {
                filter();
            }
        });
    }

    /** The card that is chosen. */
    Optional<ObjectProperty<BatchRow>> chosen() {
        return Optional.ofNullable(getSelectionModel().getSelectedItem());
    }

    void showAttentionOnly(boolean only) {
        attentionOnly = only;
        filter();
    }

    /** Which cards want attention is settled when no card is in work; rows that come and go meanwhile cannot be read. */
    private void filter() {
        shown.setPredicate(attentionOnly ? row -> row.get().wantsAttention() : row -> true);
    }

    private TableColumn<ObjectProperty<BatchRow>, BatchRow> column(
            Kit kit, String key, double width, Function<BatchRow, String> text, Function<BatchRow, String> tone) {
        TableColumn<ObjectProperty<BatchRow>, BatchRow> column =
                new TableColumn<>(kit.words().of("batch.column." + key));
        column.setId("batch-column-" + key);
        column.setPrefWidth(width);
        column.setReorderable(false);
        column.setCellValueFactory(features -> features.getValue());
        column.setComparator(Comparator.comparing(text));
        column.setCellFactory(of -> new Cell(text, tone));
        return column;
    }

    private static String tuningTone(BatchRow row) {
        return row.now()
                .map(was -> was.config().isPresent() && !was.stock() ? "batch-tuned" : "")
                .orElse("");
    }

    private static String stateTone(BatchRow row) {
        if (row.waiting() || row.outcome().isEmpty()) {
            return "batch-quiet";
        }
        CardState state = row.outcome().get().state();
        return switch (state) {
            case FAILED, NOT_READY -> "batch-bad";
            case PLANNED -> "batch-tuned";
            case CHANGED, READY -> row.wantsAttention() ? "batch-tuned" : "batch-good";
            case NOTHING, NOT_STARTED -> "batch-quiet";
            case SEEN -> row.wantsAttention() ? "batch-bad" : "";
        };
    }

    private static final class Cell extends TableCell<ObjectProperty<BatchRow>, BatchRow> {

        private final Function<BatchRow, String> text;
        private final Function<BatchRow, String> tone;

        Cell(Function<BatchRow, String> text, Function<BatchRow, String> tone) {
            this.text = text;
            this.tone = tone;
        }

        @Override
        protected void updateItem(BatchRow row, boolean empty) {
            super.updateItem(row, empty);
            getStyleClass().removeAll(TONES);
            if (empty || row == null) {
                setText(null);
                return;
            }
            setText(VisibleText.of(text.apply(row)));
            if (!tone.apply(row).isEmpty()) {
                getStyleClass().add(tone.apply(row));
            }
        }
    }
}
