package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.MadeChange;
import bootmend.gui.model.Reading;
import bootmend.operation.HistoryEntry;
import bootmend.operation.HistoryView;
import bootmend.view.RecordedChange;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** The changes made to the card from this computer, to go back to any. */
final class ChangesPage extends VBox {

    /** As many as are shown at once, and how many more each time more are asked for. */
    private static final int SOME = 20;

    private final CardModel model;
    private final Kit kit;
    private final VBox body = new VBox(10);
    private final HBox foot = new HBox();
    private int shown = SOME;

    ChangesPage(CardModel model, Kit kit) {
        this.model = model;
        this.kit = kit;
        setId("changes-page");
        getStyleClass().add("page");
        body.getStyleClass().add("scrolled");
        ScrollPane scroll = Kit.scrolled(body, "page-scroll");
        getChildren().addAll(scroll, foot);
        model.history().watch(reading -> {
            shown = SOME;
            show();
        });
    }

    private void show() {
        Reading<HistoryView> reading = model.history().get();
        body.getChildren().clear();
        foot.getChildren().clear();
        if (reading instanceof Reading.Waiting) {
            body.getChildren().add(kit.label("changes.waiting", "muted"));
        }
        reading.error().ifPresent(error -> body.getChildren().add(kit.problem(error)));
        reading.value().ifPresent(this::show);
    }

    private void show(HistoryView history) {
        List<HistoryEntry> entries = history.changes();
        history.waiting().words().stream()
                .limit(SOME)
                .forEach(words -> body.getChildren().add(kit.prose(words, "notice", "notice-warn", "waiting")));
        untold(history.untold());
        if (entries.isEmpty() && !history.untold().isEmpty()) {
            body.getChildren().add(kit.label("changes.only", "muted"));
            return;
        }
        if (entries.isEmpty()) {
            body.getChildren()
                    .addAll(
                            kit.label("changes.none", "heading"),
                            kit.label("changes.soon"),
                            kit.label("changes.only", "muted"));
            return;
        }
        body.getChildren().add(kit.label("changes.how", "muted"));
        entries.stream()
                .limit(shown)
                .map(entry -> MadeChange.of(entry, ZoneId.systemDefault(), kit.words()))
                .forEach(change -> body.getChildren().add(box(change)));
        if (entries.size() > shown) {
            body.getChildren().add(kit.button("changes.more", () -> {
                shown += SOME;
                show();
            }));
        }
        body.getChildren().add(kit.label("changes.only", "muted"));
        foot.getChildren().add(kit.button("changes.first", () -> model.change().choose(MadeChange.beforeTheFirst())));
    }

    private void untold(List<RecordedChange> changes) {
        if (changes.isEmpty()) {
            return;
        }
        VBox box = new VBox(4, kit.label("changes.untold"));
        changes.stream()
                .limit(SOME)
                .forEach(each -> box.getChildren()
                        .add(kit.prose(kit.words()
                                .of("strip.recorded", each.title(), kit.time(each.began()), each.card(), each.id()))));
        if (changes.size() > SOME) {
            box.getChildren().add(kit.text(kit.words().of("changes.untold.more", changes.size() - SOME), "muted"));
        }
        box.setId("changes-untold");
        box.getStyleClass().addAll("notice", "notice-warn");
        body.getChildren().add(box);
    }

    private Node box(MadeChange change) {
        HBox head = new HBox(
                10,
                kit.words(kit.words().of("changes.number", change.number()), "change-number"),
                kit.words(change.when(), "muted"));
        if (change.undone()) {
            head.getChildren().add(kit.words(kit.words().of("changes.takenback"), "mark", "mark-plain"));
        }
        Button back = kit.button("changes.to", () -> model.change().choose(change.goBack()));
        back.setId("changes-to-" + change.number());
        back.setAccessibleText(kit.words().of("changes.to.accessible", change.number()));
        head.getChildren().addAll(Kit.spacer(), back);
        head.getStyleClass().add("row");
        VBox box = new VBox(4, head, kit.prose(Kit.sentence(change.title()), "change-title"));
        if (!change.lines().isEmpty()) {
            box.getChildren()
                    .add(new Prose(
                            change.lines().stream().map(VisibleText::of).collect(Collectors.joining("\n")),
                            "change-lines"));
        }
        box.getChildren()
                .add(kit.prose(kit.words().of("changes.record", change.size(), change.undoRecord()), "change-record"));
        box.getStyleClass().add("change-box");
        return box;
    }
}
