package bootmend.gui.view;

import bootmend.config.VisibleText;
import bootmend.finding.Finding;
import bootmend.finding.Severity;
import bootmend.gui.model.SheetRow;
import java.util.Locale;
import java.util.stream.Collectors;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One row of the sheet: number, text, what becomes of it, and below it what a check says. */
final class SheetCell extends WideCell<SheetRow> {

    private static final double BESIDE = 0.42;

    private final Kit kit;

    SheetCell(Kit kit) {
        this.kit = kit;
    }

    @Override
    protected void updateItem(SheetRow row, boolean empty) {
        super.updateItem(row, empty);
        setText(null);
        setGraphic(null);
        setAccessibleText(null);
        getStyleClass().removeIf(style -> style.startsWith("tone-"));
        if (empty || row == null) {
            return;
        }
        if (row instanceof SheetRow.File file) {
            show(kit.text(file.path(), "file-name"));
        } else if (row instanceof SheetRow.Rest rest) {
            show(kit.text(kit.words().of("sheet.rest", rest.lines()), "muted"));
        } else if (row instanceof SheetRow.Line line) {
            line(line);
        }
    }

    private void line(SheetRow.Line row) {
        getStyleClass().add("tone-" + row.tone().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        Label number = new Label(Integer.toString(row.line().number()));
        number.getStyleClass().add("line-number");
        number.setMinWidth(Region.USE_PREF_SIZE);
        Label text = new Label(row.line().text());
        text.getStyleClass().add("line-text");
        text.setMinWidth(0);
        text.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(text, Priority.ALWAYS);
        HBox both = new HBox(10, number, text);
        if (!row.beside().isEmpty()) {
            Label beside = new Label(VisibleText.of(row.beside()));
            beside.getStyleClass().add("line-beside");
            beside.setWrapText(true);
            beside.maxWidthProperty().bind(getListView().widthProperty().multiply(BESIDE));
            both.getChildren().add(beside);
        }
        VBox box = new VBox(2, both);
        row.findings().forEach(finding -> box.getChildren().add(finding(finding)));
        show(box);
        setAccessibleText(kit.words()
                        .of(
                                "sheet.line.accessible",
                                row.line().number(),
                                row.line().text(),
                                row.beside())
                + row.findings().stream()
                        .map(each -> ". " + each.severity().word() + ": " + each.what())
                        .collect(Collectors.joining()));
    }

    private Label finding(Finding finding) {
        Label label = kit.text(
                kit.words().of("severity." + finding.severity().word()) + ": " + finding.what(),
                "line-finding",
                style(finding.severity()));
        return label;
    }

    static String style(Severity severity) {
        return "severity-" + severity.word();
    }
}
