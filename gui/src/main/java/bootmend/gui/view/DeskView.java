package bootmend.gui.view;

import bootmend.batch.CutBatch;
import bootmend.gui.model.BatchModel;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.DeskModel;
import bootmend.page.CutBatchWords;
import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.animation.Animation;
import javafx.animation.PauseTransition;
import javafx.geometry.Orientation;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TabPane;
import javafx.scene.input.DragEvent;
import javafx.scene.input.TransferMode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import javafx.util.Duration;

/** The whole window's content: cards, the card that is looked at, and the change strip. */
final class DeskView extends BorderPane {

    private static final Duration PATIENCE = Duration.millis(300);

    private final DeskModel desk;
    private final Kit kit;
    private final Pages pages;
    private final SplitPane parts = new SplitPane();
    private final TabPane tabs = new TabPane();
    private final VBox middle = new VBox();
    private final Node banner;
    private final VBox cutBatches = new VBox();
    private final VBox closing = new VBox();
    private double cardsWidth = 250;
    private double stripWidth = 370;

    DeskView(DeskModel desk, Kit kit, Dialogs dialogs, Node menu) {
        this.desk = desk;
        this.kit = kit;
        this.pages = new Pages(desk, kit, dialogs);
        this.banner = banner();
        getStyleClass().add("desk");
        CardsPane cards =
                new CardsPane(desk, kit, () -> desk.open(dialogs.images()), () -> desk.open(dialogs.folder()));
        tabs.setTabClosingPolicy(TabPane.TabClosingPolicy.UNAVAILABLE);
        tabs.setId("pages");
        VBox.setVgrow(tabs, javafx.scene.layout.Priority.ALWAYS);
        pages.all().forEach(page -> tabs.getTabs().add(page));
        parts.setOrientation(Orientation.HORIZONTAL);
        parts.getItems().addAll(cards, middle);
        SplitPane.setResizableWithParent(cards, false);
        parts.widthProperty().addListener((observed, before, width) -> {
            if (before.doubleValue() <= 0) {
                divide();
            }
        });
        setTop(new VBox(menu, banner, cutBatches, closing));
        setCenter(parts);
        setBottom(status());
        desk.current().watch(card -> refresh());
        desk.batch().watch(batch -> refresh());
        desk.problem().watch(problem -> refresh());
        desk.leftOut().watch(note -> refresh());
        desk.cutBatches().watch(batches -> tell(batches));
        Kit.takesRoomWhenFilled(cutBatches);
        Kit.takesRoomWhenFilled(closing);
        setOnDragOver(this::dragged);
        setOnDragDropped(this::dropped);
    }

    /** Shows a page by its key, such as {@code profiles}. */
    void showPage(String key) {
        tabs.getTabs().stream()
                .filter(tab -> tab.getId().equals("tab-" + key) && !tab.isDisable())
                .findFirst()
                .ifPresent(tab -> tabs.getSelectionModel().select(tab));
    }

    private Node banner() {
        HBox box = new HBox(kit.label("banner.erase"));
        box.setId("erase-banner");
        box.getStyleClass().add("banner");
        return box;
    }

    private Node status() {
        Label words = new Label();
        words.setId("status");
        ProgressBar bar = new ProgressBar();
        bar.setPrefWidth(120);
        Button stop = kit.button("status.stop", desk::stop);
        HBox box = new HBox(10, words, Kit.spacer(), stop, bar);
        box.getStyleClass().add("status");
        bar.setVisible(false);
        stop.setVisible(false);
        stop.managedProperty().bind(stop.visibleProperty());
        // Work that is over in a blink needs no word; anything longer says what it is.
        PauseTransition pause = new PauseTransition(PATIENCE);
        pause.setOnFinished(event -> {
            Optional<String> busy = desk.services().queue().busy().get();
            words.setText(busy.map(text -> kit.words().of("status.busy", text)).orElse(""));
            bar.setVisible(busy.isPresent());
            stop.setVisible(
                    busy.isPresent() && desk.services().queue().canStop().get());
        });
        desk.services().queue().busy().watch(busy -> {
            if (busy.isPresent()) {
                // One piece of work that follows another does not begin the wait anew.
                if (pause.getStatus() != Animation.Status.RUNNING && !bar.isVisible()) {
                    pause.playFromStart();
                } else if (bar.isVisible()) {
                    pause.getOnFinished().handle(null);
                }
            } else {
                pause.stop();
                words.setText("");
                bar.setVisible(false);
                stop.setVisible(false);
            }
        });
        return box;
    }

    private void refresh() {
        middle.getChildren().clear();
        desk.problem().get().ifPresent(problem -> middle.getChildren().add(kit.problem(problem)));
        desk.leftOut().get().ifPresent(note -> middle.getChildren().add(notice("left-out", note)));
        if (desk.batch().get().isPresent()) {
            setStrip(Optional.empty());
            middle.getChildren().add(pages.batch(desk.batch().get().get()));
        } else {
            show(desk.current().get());
        }
    }

    private void show(Optional<CardModel> card) {
        pages.show(card);
        if (card.isPresent()) {
            desk.beside().ifPresent(batch -> middle.getChildren().add(back(batch)));
            middle.getChildren().add(new CardHeader(card.get(), kit));
            setStrip(Optional.of(
                    new ChangeStrip(card.get(), kit, desk.services().workplace().home(), () -> showPage("profiles"))));
        } else {
            setStrip(Optional.empty());
        }
        middle.getChildren().add(tabs);
    }

    private Node notice(String id, String text) {
        Node words = kit.prose(text, "notice");
        words.setId(id);
        return words;
    }

    private Node back(BatchModel batch) {
        Button back = kit.button("batch.back", desk::backTogether);
        back.setText(kit.words().of("batch.back", batch.cards().size()));
        HBox row = new HBox(back);
        row.getStyleClass().add("batch-back");
        return row;
    }

    private void setStrip(Optional<Node> strip) {
        double[] before = parts.getDividerPositions();
        double width = parts.getWidth();
        if (width > 0) {
            cardsWidth = before[0] * width;
            stripWidth = before.length > 1 ? (1 - before[1]) * width : stripWidth;
        }
        if (parts.getItems().size() > 2) {
            parts.getItems().remove(2);
        }
        strip.ifPresent(node -> {
            parts.getItems().add(node);
            SplitPane.setResizableWithParent(node, false);
        });
        divide();
    }

    /** The outer parts keep their width in pixels; what is over goes to the middle. */
    private void divide() {
        double width = parts.getWidth();
        if (width <= 0) {
            return;
        }
        if (parts.getItems().size() > 2) {
            parts.setDividerPositions(cardsWidth / width, 1 - stripWidth / width);
        } else {
            parts.setDividerPositions(cardsWidth / width);
        }
    }

    /** Batches that were cut, the oldest first, each until whoever is at the window says that it was read. */
    private void tell(List<CutBatch> batches) {
        cutBatches.getChildren().clear();
        for (CutBatch batch : batches.subList(0, Math.min(1, batches.size()))) {
            List<String> sentences = new ArrayList<>(CutBatchWords.of(batch, desk.kept(batch)));
            sentences.add(kit.words().of("cutbatch.next"));
            // Each is safe to show as it is; a line's end between them is meant.
            Prose words = new Prose(String.join("\n", sentences), "cut-batch");
            Button read = kit.button("cutbatch.read", () -> desk.told(batch));
            VBox box = new VBox(8, words, read);
            box.setId("cut-batch");
            box.getStyleClass().addAll("notice", "notice-warn");
            cutBatches.getChildren().add(box);
        }
    }

    /**
     * Asks how what is under way is to end before the window closes. It is never left half done, and while nobody answers
     * the window stays.
     *
     * @param close closes the window
     */
    void askClosing(Runnable close) {
        if (!closing.getChildren().isEmpty()) {
            return;
        }
        boolean batch = desk.isBatchInHand();
        boolean check = batch && !desk.isWriting();
        List<Button> choices = new ArrayList<>();
        choices.add(kit.button(
                batch ? "closing.all" : "closing.finish", () -> waitFor(() -> desk.whenOver(closing(close)))));
        if (batch) {
            choices.add(kit.button(
                    check ? "closing.stop" : "closing.these", () -> waitFor(() -> desk.close(closing(close)))));
        }
        choices.add(kit.button("closing.stay", () -> closing.getChildren().clear()));
        HBox row = new HBox(8);
        row.getChildren().addAll(choices);
        ask(kit.label(check ? "closing.check" : batch ? "closing.batch" : "closing.change"), row);
        choices.get(0).requestFocus();
        desk.whenOver(() -> {
            if (closing.getChildren().contains(row.getParent())) {
                closing.getChildren().clear();
            }
        });
    }

    private void ask(Node words, Node choices) {
        VBox box = new VBox(8, words, choices);
        box.setId("closing");
        box.getStyleClass().addAll("notice", "notice-warn");
        closing.getChildren().setAll(box);
    }

    /** Closes unless whoever is at the window thought better of it meanwhile. */
    private Runnable closing(Runnable close) {
        return () -> {
            if (!closing.getChildren().isEmpty()) {
                close.run();
            }
        };
    }

    private void waitFor(Runnable begin) {
        ask(
                kit.label("closing.waiting"),
                kit.button("closing.stay", () -> closing.getChildren().clear()));
        begin.run();
    }

    private void dragged(DragEvent event) {
        if (event.getDragboard().hasFiles()) {
            event.acceptTransferModes(TransferMode.LINK, TransferMode.COPY);
        }
        event.consume();
    }

    private void dropped(DragEvent event) {
        List<Path> files =
                event.getDragboard().getFiles().stream().map(File::toPath).toList();
        dropped(files);
        event.setDropCompleted(!files.isEmpty());
        event.consume();
    }

    /** Opens what was dropped: files, devices and folders. */
    void dropped(List<Path> files) {
        if (!files.isEmpty()) {
            desk.open(files);
        }
    }
}
