package bootmend.gui.view;

import bootmend.gui.model.BoardTrials;
import bootmend.gui.model.ChartWords;
import bootmend.gui.model.TrialsModel;
import bootmend.trial.search.Advice;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.layout.VBox;

/** What to try next with a board, why, and the way to get it onto the card. */
final class NextTrial extends VBox {

    private final TrialsModel model;
    private final Kit kit;
    private final ChartWords words;
    private final VBox advice = new VBox(6);
    private final VBox more = new VBox(6);
    private final VBox stagedNow = new VBox(8);
    private final VBox whether = new VBox(8);
    private final VBox cautions = new VBox();
    private final CheckBox despite;
    private final Button stage;

    NextTrial(TrialsModel model, Kit kit) {
        super(10);
        this.model = model;
        this.kit = kit;
        this.words = new ChartWords(kit.words());
        setId("next-trial");
        getStyleClass().add("next-trial");
        despite = new CheckBox(kit.words().of("stage.despite"));
        despite.setId("stage-despite");
        despite.setMnemonicParsing(true);
        despite.setWrapText(true);
        stage = kit.button("stage.put", () -> model.stage(despite.isVisible() && despite.isSelected()));
        stage.getStyleClass().add("accent");
        advice.setId("next-advice");
        more.setId("next-more");
        // What is to be done and the way to do it stay together, above all that it rests on.
        getChildren().addAll(kit.heading("next.title"), advice, whether, stagedNow, more, cautions);
        List.of(whether, stagedNow, cautions).forEach(Kit::takesRoomWhenFilled);
        model.board().watch(reading -> reading.value().ifPresent(this::show));
        model.staging().watch(staging -> whether());
    }

    private void show(BoardTrials board) {
        Advice now = board.report().advice();
        advice.getChildren().setAll(kit.prose(words.next(now), "next-what"), kit.prose(now.why()));
        if (!now.change().isEmpty()) {
            advice.getChildren().add(kit.prose(now.change()));
        }
        more.getChildren().clear();
        words.outlooks(now).forEach(outlook -> more.getChildren().add(kit.prose(outlook)));
        now.stops().forEach(stop -> more.getChildren().add(kit.prose(stop, "muted")));
        words.peak(now).ifPresent(peak -> more.getChildren().add(kit.prose(peak)));
        more.getChildren().add(kit.prose(words.best(now), "next-best"));
        words.notes(board.report()).forEach(note -> more.getChildren().add(kit.prose(note, "notice", "notice-warn")));
        cautions.getChildren().setAll(new CautionsPane(kit, board.report().cautions()));
        whether();
    }

    private void whether() {
        TrialsModel.Staging staging = model.staging().get();
        whether.getChildren().clear();
        stagedNow.getChildren().clear();
        despite.setVisible(staging.metBlockers());
        if (model.suggested().isPresent()) {
            stage.setDisable(!staging.whyNot().isEmpty());
            whether.getChildren().add(Form.row(stage));
            if (!staging.whyNot().isEmpty()) {
                Node why = kit.text(staging.whyNot(), "muted");
                why.setId("stage-whynot");
                whether.getChildren().add(why);
            } else if (staging.metBlockers()) {
                whether.getChildren().add(despite);
            } else {
                whether.getChildren().add(kit.label("stage.what", "muted"));
            }
        }
        if (staging.staged()) {
            staged(!staging.whyNot().isEmpty());
        }
    }

    private void staged(boolean notNow) {
        Button keep = kit.button("stage.keep", model::keepStaged);
        Button away = kit.button("stage.away", model::takeStagedAway);
        keep.setDisable(notNow);
        away.setDisable(notNow);
        Node command = kit.fact(model.restartCommand(), "code");
        command.setId("stage-command");
        VBox box = new VBox(8, kit.label("stage.staged"), command, kit.label("stage.then"), Form.row(keep, away));
        box.setId("stage-staged");
        box.getStyleClass().add("notice");
        stagedNow.getChildren().add(box);
    }
}
