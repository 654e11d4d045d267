package bootmend.gui.view;

import bootmend.boot.BootLink;
import bootmend.boot.BootOutcome;
import bootmend.boot.Remedy;
import bootmend.boot.Verdict;
import bootmend.gui.model.ChangeModel;
import bootmend.gui.model.RemedyPlaces;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.page.BootWords;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** What the boot chain comes to on boards that fare alike: the answer, its links, the cause and the next step. */
final class BootOutcomeBox extends VBox {

    private final BootOutcome outcome;
    private final ChangeModel change;
    private final Kit kit;
    private final VBox detail = new VBox(2);

    BootOutcomeBox(BootOutcome outcome, ChangeModel change, Kit kit) {
        this.outcome = outcome;
        this.change = change;
        this.kit = kit;
        getStyleClass().add("boot-outcome");
        Prose answer = kit.prose(
                Kit.sentence(BootWords.verdict(outcome.verdict())), "notice", style(outcome.verdict()), "verdict");
        getChildren().addAll(kit.text(BootWords.boards(outcome), "boot-boards"), answer, links(), detail);
        next();
    }

    private static String style(Verdict verdict) {
        if (verdict instanceof Verdict.Boots boots) {
            return boots.aboveStock().isEmpty() ? "notice-good" : "notice-tuned";
        }
        return verdict instanceof Verdict.Stops ? "notice-problem" : "notice-warn";
    }

    private Node links() {
        FlowPane row = new FlowPane(6, 6);
        row.getStyleClass().add("boot-chain");
        ToggleGroup group = new ToggleGroup();
        for (BootLink link : outcome.first().links()) {
            ToggleButton tile = tile(link);
            tile.setToggleGroup(group);
            row.getChildren().add(tile);
            if (isWhereItEnds(link)) {
                group.selectToggle(tile);
            }
        }
        return row;
    }

    /** Its link is picked out at first; the sentences below say what is wrong with it. */
    private boolean isWhereItEnds(BootLink link) {
        return outcome.verdict() instanceof Verdict.Stops stops && stops.cause().link() == link.kind()
                || outcome.verdict() instanceof Verdict.Unknown unknown && unknown.link() == link.kind();
    }

    private ToggleButton tile(BootLink link) {
        String name = BootWords.name(link.kind());
        String state = kit.words().of("boot.state." + link.state().word());
        Label sign = kit.words(kit.words().of("boot.sign." + link.state().word()), "boot-sign");
        VBox text = new VBox(kit.words(name, "boot-link-name"), kit.words(state, "boot-link-state"));
        ToggleButton tile = new ToggleButton();
        HBox face = new HBox(7, sign, text);
        face.getStyleClass().add("row");
        tile.setGraphic(face);
        tile.setAccessibleText(name + ": " + state + ". " + BootWords.restsOn(link));
        tile.getStyleClass().addAll("boot-link", "boot-link-" + link.state().word());
        tile.setOnAction(event -> {
            if (tile.isSelected()) {
                tell(link);
            } else {
                detail.getChildren().clear();
            }
        });
        return tile;
    }

    private void tell(BootLink link) {
        detail.getChildren()
                .setAll(kit.prose(Kit.sentence(BootWords.name(link.kind()) + ": " + BootWords.restsOn(link)), "muted"));
    }

    private void next() {
        if (outcome.verdict() instanceof Verdict.Stops stops) {
            Remedy remedy = stops.cause().remedy();
            getChildren()
                    .addAll(
                            kit.prose(BootWords.cause(stops.cause())),
                            kit.prose(new RemedyPlaces(kit.words()).of(remedy), "boot-remedy"));
            RemedyPlaces.order(remedy).ifPresent(order -> getChildren().add(button(order)));
        } else if (outcome.verdict() instanceof Verdict.Boots boots
                && !boots.aboveStock().isEmpty()) {
            getChildren().add(button(ChangeOrder.of(ChangeRequest.ToStock.PLAIN)));
        }
    }

    private Button button(ChangeOrder order) {
        boolean repair = order.request() instanceof ChangeRequest.Repair;
        return kit.button(repair ? "boot.repair" : "boot.reset", () -> change.choose(order));
    }
}
