package bootmend.gui.view;

import bootmend.finding.Finding;
import bootmend.finding.Purpose;
import bootmend.finding.Severity;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.LinePlace;
import bootmend.gui.model.Reading;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.page.CheckWords;
import bootmend.page.SlipContent;
import bootmend.view.CheckView;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Whether the card is ready for a purpose, and its packing slip. */
final class PurposePage extends VBox {

    private final CardModel model;
    private final Kit kit;
    private final Dialogs dialogs;
    private final Consumer<LinePlace> takeTo;
    private final ToggleGroup choice = new ToggleGroup();
    private final Map<Purpose, RadioButton> purposes;
    private final VBox verdict = new VBox(6);
    private final HBox stock = new HBox(10);
    private final VBox slip = new VBox(6);
    private final VBox findings = new VBox(10);
    private final Button save;
    private final Button print;

    /** @param takeTo shows a line of the config file */
    public PurposePage(CardModel model, Kit kit, Dialogs dialogs, Consumer<LinePlace> takeTo) {
        this.model = model;
        this.kit = kit;
        this.dialogs = dialogs;
        this.takeTo = takeTo;
        setId("check-page");
        getStyleClass().add("page");
        purposes = Stream.of(Purpose.values()).collect(Collectors.toMap(purpose -> purpose, this::purpose));
        FlowPane choices = new FlowPane(14, 6, kit.words(kit.words().of("check.ready")));
        Stream.of(Purpose.values()).map(purposes::get).forEach(choices.getChildren()::add);
        choices.getStyleClass().add("row");
        save = kit.button("check.save", this::save);
        print = kit.button("check.print", this::print);
        verdict.setId("check-verdict");
        slip.setId("check-slip");
        findings.setId("check-findings");
        findings.getStyleClass().add("scrolled");
        ScrollPane scroll = Kit.scrolled(findings, "page-scroll");
        getChildren()
                .addAll(
                        choices,
                        verdict,
                        stock,
                        new FlowPane(8, 8, save, print),
                        slip,
                        scroll,
                        kit.label("check.caution", "muted"));
        stock.getStyleClass().add("row");
        Stream.of(stock, slip).forEach(PurposePage::hideWhileEmpty);
        model.purpose().watch(purpose -> purposes.get(purpose).setSelected(true));
        model.check().watch(this::show);
        model.purpose().watch(purpose -> showStock());
        model.sheet().watch(sheet -> showStock());
        model.slip().saved().watch(this::showSaved);
    }

    private RadioButton purpose(Purpose purpose) {
        RadioButton button = new RadioButton(kit.words().of("check.for." + purpose.word()));
        button.setMnemonicParsing(true);
        button.setId("check-for-" + purpose.word());
        button.setToggleGroup(choice);
        button.setOnAction(event -> model.setPurpose(purpose));
        return button;
    }

    private static void hideWhileEmpty(Pane box) {
        box.managedProperty().bind(Bindings.isNotEmpty(box.getChildren()));
    }

    private void show(Reading<CheckView> reading) {
        verdict.getChildren().clear();
        findings.getChildren().clear();
        save.setDisable(reading.value().isEmpty());
        print.setDisable(reading.value().isEmpty());
        if (reading instanceof Reading.Waiting) {
            verdict.getChildren().add(kit.label("check.waiting", "muted"));
        }
        reading.error().ifPresent(error -> verdict.getChildren().add(kit.problem(error)));
        reading.value().ifPresent(this::show);
    }

    private void show(CheckView view) {
        String style =
                view.hasBlocker() ? "notice-problem" : view.count(Severity.WARNING) > 0 ? "notice-warn" : "notice-good";
        verdict.getChildren()
                .addAll(
                        kit.prose(CheckWords.verdict(view), "notice", style, "verdict"),
                        kit.prose(
                                kit.words().of("check.about", CheckWords.boards(view), kit.time(view.when())),
                                "muted"));
        if (view.findings().isEmpty()) {
            findings.getChildren().add(kit.text(SlipContent.NOTHING));
        }
        Finding.byRule(view.findings())
                .forEach((rule, all) ->
                        findings.getChildren().add(new FindingBox(rule, all, view.boards(), kit, takeTo)));
    }

    /** New boot firmware on a tuned board is the one case in which stock comes first. */
    private void showStock() {
        stock.getChildren().clear();
        boolean tuned = model.sheet()
                .get()
                .value()
                .filter(view -> !view.show().card().isStock())
                .isPresent();
        if (tuned && model.purpose().get() == Purpose.FIRMWARE_UPDATE) {
            Button choose =
                    kit.button("check.stock", () -> model.change().choose(ChangeOrder.of(ChangeRequest.ToStock.PLAIN)));
            choose.setMinWidth(Region.USE_PREF_SIZE);
            stock.getChildren().addAll(choose, kit.label("check.stock.why"));
        }
    }

    private void save() {
        dialogs.save(model.slip().suggestedName()).ifPresent(model.slip()::save);
    }

    private void showSaved(Reading<Path> saved) {
        slip.getChildren().clear();
        if (saved instanceof Reading.Waiting) {
            slip.getChildren().add(kit.label("check.saving", "muted"));
        }
        saved.error().ifPresent(error -> slip.getChildren().add(kit.problem(error)));
        saved.value()
                .ifPresent(file -> slip.getChildren()
                        .add(kit.prose(kit.words().of("check.saved", file.toString()), "notice", "notice-good")));
    }

    private void print() {
        model.slip().content().ifPresent(content -> {
            SlipPrinter printer =
                    new SlipPrinter(getScene().getWindow(), kit.words().of("check.print.job"));
            Optional<Node> told =
                    switch (printer.print(content)) {
                        case STOPPED -> Optional.empty();
                        case SENT -> Optional.of(kit.label("check.print.sent", "notice", "notice-good"));
                        case NO_PRINTER -> Optional.of(noPrinter("check.print.none"));
                        case FAILED -> Optional.of(noPrinter("check.print.failed"));
                    };
            slip.getChildren().clear();
            told.ifPresent(slip.getChildren()::add);
        });
    }

    private Node noPrinter(String key) {
        Label what = kit.label(key);
        Button instead = kit.button("check.save.instead", this::save);
        VBox box = new VBox(6, what, instead);
        box.getStyleClass().addAll("notice", "notice-warn");
        return box;
    }
}
