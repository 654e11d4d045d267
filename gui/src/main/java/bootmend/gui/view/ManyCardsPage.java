package bootmend.gui.view;

import bootmend.gui.model.BatchModel;
import bootmend.gui.model.BatchState;
import bootmend.gui.model.BatchTally;
import bootmend.page.CardState;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Several cards together: a row a card, what to do with all of them, and what is known of the chosen one. */
final class ManyCardsPage extends HBox {

    private static final double MARKS = 26;
    private static final double LEAST = 400;

    private final BatchModel model;
    private final Kit kit;
    private final FlowPane marks = new FlowPane(8, 6);

    ManyCardsPage(BatchModel model, Kit kit, Dialogs dialogs) {
        this.model = model;
        this.kit = kit;
        setId("batch-page");
        VBox.setVgrow(this, Priority.ALWAYS);
        Label title = kit.words(kit.words().of("batch.cards", model.cards().size()), "title");
        title.setId("batch-title");
        marks.setId("batch-marks");
        marks.setMinHeight(MARKS);
        ManyCardsTable table = new ManyCardsTable(model, kit);
        VBox.setVgrow(table, Priority.ALWAYS);
        CheckBox only = new CheckBox(kit.words().of("batch.only"));
        only.setId("batch-only");
        only.setOnAction(event -> table.showAttentionOnly(only.isSelected()));
        HBox head = new HBox(12, title, Kit.spacer(), only);
        head.getStyleClass().add("row");
        VBox cards = new VBox(head, marks, table, new BatchDetail(model, kit, table));
        cards.getStyleClass().add("page");
        // What is over beside the strip, however wide the columns would like to be.
        cards.setMinWidth(0);
        cards.setPrefWidth(LEAST);
        HBox.setHgrow(cards, Priority.ALWAYS);
        getChildren().addAll(cards, new BatchStrip(model, kit, dialogs));
        model.state().watch(this::show);
    }

    BatchModel model() {
        return model;
    }

    private void show(BatchState state) {
        marks.getChildren().clear();
        if (state instanceof BatchState.Rest rest) {
            BatchTally tally = rest.tally();
            mark("batch.mark.stock", "mark-good", tally.stock());
            mark("batch.mark.tuned", "mark-tuned", tally.tuned());
            mark("batch.mark.changed", "mark-good", tally.count(CardState.CHANGED));
            mark("batch.mark.ready", "mark-good", tally.count(CardState.READY));
            mark("batch.mark.notready", "mark-bad", tally.count(CardState.NOT_READY));
            mark("batch.mark.failed", "mark-bad", tally.count(CardState.FAILED));
            mark("batch.mark.notstarted", "mark-plain", tally.count(CardState.NOT_STARTED));
        }
    }

    private void mark(String key, String style, int count) {
        if (count > 0) {
            Label mark = new Label(kit.words().of(key, count));
            mark.getStyleClass().addAll("mark", style);
            marks.getChildren().add(mark);
        }
    }
}
