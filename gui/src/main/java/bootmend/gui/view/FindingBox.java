package bootmend.gui.view;

import bootmend.finding.Finding;
import bootmend.finding.Rule;
import bootmend.gui.model.LinePlace;
import bootmend.page.CheckWords;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What one rule of a check found: where, what, what it means, what to do, and where that is published. */
final class FindingBox extends VBox {

    private final Kit kit;
    private final Consumer<LinePlace> takeTo;

    /**
     * @param findings those of {@code rule}, at least one
     * @param boards ids of all boards that the card was checked for
     * @param takeTo shows a line of the config file
     */
    FindingBox(Rule rule, List<Finding> findings, List<String> boards, Kit kit, Consumer<LinePlace> takeTo) {
        this.kit = kit;
        this.takeTo = takeTo;
        String severity = rule.heaviest().word();
        getStyleClass().addAll("finding-box", "finding-" + severity);
        Label mark =
                kit.words(kit.words().of("severity." + severity), "finding-severity", SheetCell.style(rule.heaviest()));
        HBox head = new HBox(8, mark, kit.words(rule.id(), "finding-rule"));
        head.getStyleClass().add("row");
        getChildren().add(head);
        findings.forEach(finding -> getChildren().add(item(finding, boards)));
        getChildren()
                .addAll(
                        kit.prose(rule.meaning()),
                        kit.prose(
                                kit.words().of("check.do", kit.steps().remedy(rule.remedy(), rule.steps())),
                                "finding-do"),
                        kit.prose(kit.words().of("check.source", rule.source()), "finding-source"));
    }

    private Node item(Finding finding, List<String> boards) {
        Prose what = kit.prose(
                finding.where().words() + ": " + finding.what() + CheckWords.boards(finding, boards), "finding-what");
        if (finding.where().line().isEmpty()) {
            return what;
        }
        LinePlace place =
                new LinePlace(finding.where().path(), finding.where().line().getAsInt());
        Hyperlink link = new Hyperlink(kit.words().of("check.line"));
        link.getStyleClass().add("finding-line");
        link.setAccessibleText(kit.words().of("check.line.accessible", place.file(), place.line()));
        link.setMinWidth(Region.USE_PREF_SIZE);
        link.setOnAction(event -> {
            link.setVisited(false);
            takeTo.accept(place);
        });
        HBox.setHgrow(what, Priority.ALWAYS);
        return new HBox(8, what, link);
    }
}
