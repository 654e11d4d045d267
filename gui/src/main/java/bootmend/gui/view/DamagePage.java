package bootmend.gui.view;

import bootmend.NextStep;
import bootmend.finding.Finding;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.ChangeState;
import bootmend.gui.model.DamageReport;
import bootmend.gui.model.Reading;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.ProposedChange;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** What is damaged on the card, and what a repair would do. */
final class DamagePage extends VBox {

    private final CardModel model;
    private final Kit kit;
    private final VBox body = new VBox(10);
    private final CheckBox freeLost;
    private final Button repair;

    DamagePage(CardModel model, Kit kit) {
        this.model = model;
        this.kit = kit;
        setId("damage-page");
        getStyleClass().add("page");
        freeLost = new CheckBox(kit.words().of("damage.freelost"));
        freeLost.setId("damage-freelost");
        freeLost.setWrapText(true);
        freeLost.setOnAction(event -> again());
        repair = kit.button("damage.repair", this::repair);
        body.getStyleClass().add("scrolled");
        ScrollPane scroll = Kit.scrolled(body, "page-scroll");
        getChildren().add(scroll);
        model.health().watch(reading -> show());
        model.sheet().watch(reading -> show());
    }

    private void show() {
        Reading<ProposedChange> reading = model.health().get();
        body.getChildren().clear();
        if (model.interrupted().isPresent()) {
            body.getChildren().add(notice("damage.interrupted", "notice-warn"));
            return;
        }
        if (reading instanceof Reading.Waiting) {
            body.getChildren().add(kit.label("damage.waiting", "muted"));
        }
        reading.error().ifPresent(error -> {
            body.getChildren().add(kit.problem(error));
            if (error.isRefusedFor(NextStep.Allow.IN_PLACE)) {
                body.getChildren().add(repair);
            }
        });
        reading.value().map(look -> DamageReport.of(look.findings())).ifPresent(this::show);
    }

    private void show(DamageReport report) {
        if (report.isSound()) {
            body.getChildren()
                    .addAll(
                            notice("damage.sound", "notice-good"),
                            kit.prose(kit.words().of("damage.looked"), "muted"));
            return;
        }
        body.getChildren()
                .addAll(
                        kit.text(
                                kit.words().of("damage.found", report.findings().size() + report.unshown()), "heading"),
                        kit.label("damage.copy"));
        report.findings().forEach(row -> body.getChildren().add(row(row)));
        if (report.unshown() > 0) {
            body.getChildren().add(kit.text(kit.words().of("damage.more", report.unshown()), "muted"));
        }
        if (report.leaves()) {
            body.getChildren().add(notice("damage.left", "notice-warn"));
        }
        if (report.hasLost()) {
            body.getChildren().add(new VBox(4, freeLost, kit.label("damage.freelost.meaning", "muted")));
        }
        body.getChildren().add(report.canRepair() ? repair : kit.label("strip.nothing.repair"));
    }

    private Node notice(String key, String style) {
        Label notice = kit.label(key, "notice", style);
        notice.setMaxWidth(Double.MAX_VALUE);
        return notice;
    }

    private Node row(Finding finding) {
        String fate = finding.isRepaired() ? "repaired" : DamageReport.isAsked(finding) ? "asked" : "left";
        Node what = kit.prose(finding.where().words() + ": " + finding.words(), "damage-what");
        HBox.setHgrow(what, Priority.ALWAYS);
        HBox box = new HBox(
                10,
                what,
                kit.words(
                        kit.words().of("damage.fate." + fate),
                        "mark",
                        finding.isRepaired() ? "mark-good" : "mark-warn"));
        box.getStyleClass().addAll("damage-row", "damage-" + fate);
        return box;
    }

    private void repair() {
        model.change().choose(ChangeOrder.of(new ChangeRequest.Repair(freeLost.isSelected())));
    }

    /** A repair that is already shown is worked out anew, so that what is shown is what was chosen. */
    private void again() {
        ChangeState state = model.change().state().get();
        if (state instanceof ChangeState.Proposed proposed
                        && proposed.change().order().request() instanceof ChangeRequest.Repair
                || state instanceof ChangeState.Nothing nothing
                        && nothing.change().order().request() instanceof ChangeRequest.Repair) {
            repair();
        }
    }
}
