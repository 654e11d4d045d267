package bootmend.gui.view;

import bootmend.boot.BootDiagnosis;
import bootmend.boot.BootOutcome;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.Reading;
import java.util.stream.Collectors;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;

/** Whether the card boots, link by link, and the next step. */
final class BootPage extends VBox {

    private final CardModel model;
    private final Kit kit;
    private final VBox body = new VBox(12);

    BootPage(CardModel model, Kit kit) {
        this.model = model;
        this.kit = kit;
        setId("boot-page");
        getStyleClass().add("page");
        body.getStyleClass().add("scrolled");
        ScrollPane scroll = Kit.scrolled(body, "page-scroll");
        getChildren().add(scroll);
        model.boot().watch(this::show);
    }

    private void show(Reading<BootDiagnosis> reading) {
        body.getChildren().clear();
        if (reading instanceof Reading.Waiting) {
            body.getChildren().add(kit.label("boot.waiting", "muted"));
        }
        reading.error().ifPresent(error -> body.getChildren().add(kit.problem(error)));
        reading.value().ifPresent(this::show);
    }

    private void show(BootDiagnosis diagnosis) {
        if (diagnosis.meantForNone()) {
            Label none = kit.label("boot.nonetold", "notice");
            none.setMaxWidth(Double.MAX_VALUE);
            body.getChildren().add(none);
        }
        BootOutcome.of(diagnosis)
                .forEach(outcome -> body.getChildren().add(new BootOutcomeBox(outcome, model.change(), kit)));
        if (!diagnosis.versions().isEmpty()) {
            body.getChildren().add(kit.heading("boot.versions"));
            body.getChildren()
                    .add(kit.prose(diagnosis.versions().stream()
                            .map(version -> version.file() + ": " + version.words())
                            .collect(Collectors.joining("\n"))));
        }
        if (!diagnosis.notTold().isEmpty()) {
            body.getChildren().add(kit.heading("boot.nottold"));
            diagnosis.notTold().forEach(told -> body.getChildren().add(kit.prose(told, "muted")));
        }
    }
}
