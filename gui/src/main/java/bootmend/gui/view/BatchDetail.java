package bootmend.gui.view;

import bootmend.finding.Finding;
import bootmend.gui.model.BatchModel;
import bootmend.gui.model.BatchRow;
import bootmend.gui.model.OutcomeWords;
import bootmend.gui.text.Words;
import bootmend.operation.LineChange;
import bootmend.operation.Made;
import bootmend.page.CardOutcome;
import bootmend.page.CardState;
import javafx.beans.property.ObjectProperty;
import javafx.beans.value.ChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** What is known of the card that is chosen in the table, in full, and the way to look at it alone. */
final class BatchDetail extends VBox {

    private static final double HEIGHT = 190;
    private static final int MOST_LINES = 40;

    private final BatchModel model;
    private final Kit kit;
    private final ManyCardsTable table;
    private final VBox body = new VBox(6);
    private final Button look;
    private final ChangeListener<BatchRow> follow = (observed, before, row) -> show();

    BatchDetail(BatchModel model, Kit kit, ManyCardsTable table) {
        this.model = model;
        this.kit = kit;
        this.table = table;
        setId("batch-detail");
        look = kit.button("batch.look", this::look);
        ScrollPane scroll = new ScrollPane(body);
        scroll.setFitToWidth(true);
        scroll.getStyleClass().add("batch-scroll");
        body.setId("batch-detail-body");
        setSpacing(8);
        setMinHeight(HEIGHT);
        setPrefHeight(HEIGHT);
        setMaxHeight(HEIGHT);
        VBox.setVgrow(scroll, javafx.scene.layout.Priority.ALWAYS);
        getChildren().addAll(scroll, new HBox(look));
        table.getSelectionModel()
                .selectedItemProperty()
                .addListener((observed, before, chosen) -> choose(before, chosen));
        table.setOnKeyPressed(event -> {
            if (event.getCode() == KeyCode.ENTER) {
                look();
            }
        });
        table.setOnMouseClicked(event -> {
            if (event.getClickCount() == 2 && event.getTarget() instanceof Node node && isOnRow(node)) {
                look();
            }
        });
        model.state().watch(state -> look.setDisable(table.chosen().isEmpty() || model.isWriting()));
        show();
    }

    private void look() {
        if (!model.isWriting()) {
            table.chosen().ifPresent(row -> model.look(row.get().card()));
        }
    }

    private static boolean isOnRow(Node target) {
        for (Node node = target; node != null; node = node.getParent()) {
            if (node instanceof javafx.scene.control.TableRow<?> row) {
                return !row.isEmpty();
            }
        }
        return false;
    }

    private void choose(ObjectProperty<BatchRow> before, ObjectProperty<BatchRow> chosen) {
        if (before != null) {
            before.removeListener(follow);
        }
        if (chosen != null) {
            chosen.addListener(follow);
        }
        show();
    }

    private void show() {
        body.getChildren().clear();
        look.setDisable(table.chosen().isEmpty() || model.isWriting());
        if (table.chosen().isEmpty()) {
            body.getChildren().add(kit.label("batch.choose", "muted"));
            return;
        }
        BatchRow row = table.chosen().get().get();
        body.getChildren().add(kit.fact(row.card().toString(), "batch-card"));
        if (!row.waiting()) {
            row.outcome().ifPresent(this::outcome);
        }
    }

    private void outcome(CardOutcome came) {
        Words words = kit.words();
        came.error()
                .filter(error -> came.state() != CardState.NOT_STARTED)
                .ifPresent(error -> body.getChildren().add(kit.problem(error)));
        if (came.state() == CardState.NOTHING) {
            body.getChildren().add(kit.label("batch.aswanted", "muted"));
        } else if (came.state() == CardState.NOT_STARTED) {
            body.getChildren().add(kit.label("batch.notstarted", "muted"));
        } else if (came.state() == CardState.SEEN && came.error().isEmpty()) {
            body.getChildren().add(kit.label("batch.seen", "muted"));
        } else if (came.state() == CardState.READY && came.findings().isEmpty()) {
            body.getChildren().add(kit.label("batch.nofinding", "muted"));
        }
        came.made()
                .ifPresent(made -> body.getChildren()
                        .addAll(
                                kit.prose(made(made), "batch-made"),
                                kit.prose(words.of("strip.recordis", made.record()), "strip-plan")));
        came.changed().stream()
                .limit(MOST_LINES)
                .forEach(line -> body.getChildren().add(line(line)));
        rest(came.changed().size());
        came.findings().stream()
                .limit(MOST_LINES)
                .forEach(finding -> body.getChildren().add(found(came, finding)));
        rest(came.findings().size());
    }

    private String made(Made made) {
        OutcomeWords.Said said = new OutcomeWords(kit.words()).of(made);
        return said.done() + " " + said.next();
    }

    private void rest(int all) {
        if (all > MOST_LINES) {
            body.getChildren().add(kit.text(kit.words().of("batch.more", all - MOST_LINES), "muted"));
        }
    }

    private Node line(LineChange line) {
        Words words = kit.words();
        HBox both = new HBox(8, kit.words(words.of("strip.line", line.file(), line.line()), "muted"));
        line.before().ifPresent(text -> both.getChildren().add(kit.fact(text, "line-before")));
        both.getChildren()
                .addAll(
                        kit.words(words.of("batch.becomes"), "muted"),
                        line.after()
                                .map(text -> kit.fact(text, "line-after"))
                                .orElseGet(() -> kit.fact(words.of("strip.takenout"), "line-gone")));
        both.getStyleClass().add("row");
        return both;
    }

    private Node found(CardOutcome came, Finding finding) {
        String severity = "severity." + finding.severity().word();
        String kind = came.isCheck() ? severity : finding.isRepaired() ? "batch.repaired" : "batch.left";
        String repaired = finding.isRepaired() ? "batch-good" : "severity-warning";
        return kit.text(
                kit.words()
                        .of("batch.found", kit.words().of(kind), finding.where().words(), came.told(finding)),
                came.isCheck() ? SheetCell.style(finding.severity()) : repaired);
    }
}
