package bootmend.gui.view;

import bootmend.gui.model.BatchModel;
import bootmend.gui.model.BatchState;
import bootmend.gui.model.BatchTask;
import bootmend.gui.model.BatchWords;
import bootmend.gui.model.Reading;
import bootmend.gui.model.RequestKey;
import bootmend.gui.text.Words;
import bootmend.page.CardState;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.VBox;
import javafx.util.Duration;

/** The right part of several cards: what to do with all of them, what that comes to, and a button to do it. */
final class BatchStrip extends VBox {

    private static final Duration TICK = Duration.millis(500);
    private static final long NANOS = 1_000_000_000L;
    private static final int MINUTE = 60;
    private static final int MOST_REASONS = 4;

    private final BatchModel model;
    private final Kit kit;
    private final Dialogs dialogs;
    private final BatchWords says;
    private final BatchWishes wishes;
    private final VBox body = new VBox(10);
    private final VBox foot = new VBox(8);
    private final Button make;
    private final Button stop;
    private final Button slips;
    private final Button report;
    private final Label count = new Label();
    private final Label time = new Label();
    private final ProgressBar bar = new ProgressBar();
    private final Timeline clock = new Timeline(new KeyFrame(TICK, event -> tick()));
    private Class<?> shown = Object.class;

    BatchStrip(BatchModel model, Kit kit, Dialogs dialogs) {
        this.model = model;
        this.kit = kit;
        this.dialogs = dialogs;
        this.says = new BatchWords(kit.words());
        this.wishes = new BatchWishes(model, kit);
        setId("batch-strip");
        getStyleClass().addAll("change-strip", "batch-strip");
        make = wide("batch.make", model::make);
        make.getStyleClass().add("accent");
        stop = wide("batch.stop", model::stop);
        slips = wide("batch.slips", () -> save("packing-slips.html", (batch, file) -> batch.saveSlips(file)));
        report = wide(
                "batch.report",
                () -> save(
                        "report.html",
                        (batch, file) -> batch.saveReport(
                                file, says.task(batch.state().get().task()))));
        count.setId("batch-count");
        time.setId("batch-time");
        bar.setMaxWidth(Double.MAX_VALUE);
        bar.setAccessibleText(kit.words().of("batch.progress"));
        ScrollPane scroll = Kit.scrolled(body, "strip-scroll");
        body.setId("batch-body");
        getChildren().addAll(kit.heading("batch.title"), wishes, scroll, foot);
        clock.setCycleCount(Animation.INDEFINITE);
        model.state().watch(state -> show());
        model.agreed().watch(agreed -> make.setDisable(!model.canMake()));
        model.saved().watch(saved -> showRest());
    }

    private Button wide(String key, Runnable action) {
        Button button = kit.button(key, action);
        button.setMaxWidth(Double.MAX_VALUE);
        return button;
    }

    private void show() {
        if (model.state().get() instanceof BatchState.Working working) {
            if (shown != BatchState.Working.class) {
                begin(working);
            }
            progress(working);
        } else {
            clock.stop();
            showRest();
        }
        shown = model.state().get().getClass();
    }

    private void begin(BatchState.Working working) {
        foot.getChildren().setAll(stop);
        body.getChildren().setAll(title(working.task()), count, bar, time);
        body.getChildren().add(kit.label(model.isWriting() ? "batch.working.make" : "batch.working.read", "muted"));
        if (model.isWriting()) {
            body.getChildren()
                    .add(kit.prose(
                            kit.words().of("batch.record", model.records().toString()), "strip-plan"));
        }
        clock.play();
    }

    private Label title(BatchTask task) {
        String words = says.task(task);
        return kit.text(Character.toUpperCase(words.charAt(0)) + words.substring(1), "strip-wish");
    }

    private void progress(BatchState.Working working) {
        count.setText(kit.words().of("batch.count", working.done(), working.all()));
        bar.setProgress(working.all() == 0 ? 1 : (double) working.done() / working.all());
        stop.setDisable(working.stopping());
        tick();
    }

    private void tick() {
        if (model.state().get() instanceof BatchState.Working working) {
            String took = clock(System.nanoTime() - working.since());
            time.setText(kit.words().of(working.stopping() ? "batch.stopping" : "batch.time", took));
        }
    }

    private static String clock(long nanos) {
        long seconds = nanos / NANOS;
        return String.format("%d:%02d", seconds / MINUTE, seconds % MINUTE);
    }

    private void showRest() {
        if (!(model.state().get() instanceof BatchState.Rest rest)) {
            return;
        }
        body.getChildren().setAll(title(rest.task()));
        foot.getChildren().clear();
        if (rest.task() instanceof BatchTask.Look) {
            looked(rest);
        } else if (rest.task() instanceof BatchTask.WorkOut workOut) {
            workedOut(rest, workOut);
        } else if (rest.task() instanceof BatchTask.Make) {
            made(rest);
        } else {
            checked(rest);
        }
        saved();
    }

    private void looked(BatchState.Rest rest) {
        failures(rest, "batch.unread");
        notStarted(rest);
        body.getChildren().add(kit.label("batch.how", "muted"));
    }

    private void workedOut(BatchState.Rest rest, BatchTask.WorkOut workOut) {
        Words words = kit.words();
        int changes = rest.tally().count(CardState.PLANNED);
        int nothing = rest.tally().count(CardState.NOTHING);
        if (changes > 0) {
            notice(
                    "notice-tuned",
                    words.of("batch.change", changes) + " "
                            + words.of(
                                    "batch.change.size",
                                    rest.tally().lines(),
                                    rest.tally().sectors()));
            model.questions().forEach(this::question);
        }
        if (nothing > 0) {
            notice("notice-good", words.of("batch.nothing", nothing));
        }
        damaged(rest);
        failures(rest, "batch.cannot");
        notStarted(rest);
        if (changes > 0) {
            body.getChildren()
                    .add(kit.prose(words.of("batch.record", model.records().toString()), "strip-plan"));
            make.setText(words.of("batch.make." + RequestKey.of(workOut.order().request()), changes));
            make.setDisable(!model.canMake());
            foot.getChildren().addAll(make, kit.label("batch.canback", "muted"));
        }
        foot.getChildren().add(report);
    }

    private void question(String question) {
        CheckBox box = new CheckBox(kit.words().of("strip.agree", question));
        box.setId("batch-agree");
        box.setWrapText(true);
        box.setSelected(model.agreed().get().contains(question));
        box.selectedProperty().addListener((observed, before, yes) -> model.agree(question, yes));
        VBox notice = new VBox(box);
        notice.getStyleClass().addAll("notice", "notice-warn");
        body.getChildren().add(notice);
    }

    private void made(BatchState.Rest rest) {
        Words words = kit.words();
        int done = rest.tally().count(CardState.CHANGED);
        int nothing = rest.tally().count(CardState.NOTHING);
        notice(
                done > 0 ? "notice-good" : "notice-warn",
                words.of("batch.done", done)
                        + (rest.took().toNanos() < NANOS
                                ? ""
                                : " " + words.of("batch.took", clock(rest.took().toNanos()))));
        if (nothing > 0) {
            notice("notice-good", words.of("batch.done.nothing", nothing));
        }
        damaged(rest);
        failures(rest, "batch.done.failed");
        notStarted(rest);
        if (done > 0) {
            body.getChildren()
                    .addAll(
                            kit.prose(words.of("batch.records", model.records().toString()), "strip-plan"),
                            kit.label("batch.back.one", "muted"));
        }
        foot.getChildren().add(report);
    }

    private void checked(BatchState.Rest rest) {
        Words words = kit.words();
        int ready = rest.tally().count(CardState.READY);
        int not = rest.tally().count(CardState.NOT_READY);
        if (ready > 0) {
            notice("notice-good", words.of("batch.ready", ready));
        }
        if (not > 0) {
            notice("notice-problem", words.of("batch.notready", not));
        }
        failures(rest, "batch.unchecked");
        notStarted(rest);
        body.getChildren().add(kit.label("batch.checked", "muted"));
        foot.getChildren().addAll(slips, report);
    }

    private void damaged(BatchState.Rest rest) {
        if (rest.tally().damaged() > 0) {
            notice("notice-warn", kit.words().of("batch.damaged", rest.tally().damaged()));
        }
    }

    private void notStarted(BatchState.Rest rest) {
        int left = rest.tally().count(CardState.NOT_STARTED);
        if (left > 0) {
            notice("notice-warn", kit.words().of("batch.left.over", left));
        }
    }

    private void failures(BatchState.Rest rest, String key) {
        int failed = rest.tally().count(CardState.FAILED);
        if (failed == 0) {
            return;
        }
        VBox box = new VBox(4, kit.text(kit.words().of(key, failed), "problem-what"));
        rest.tally().reasons().entrySet().stream()
                .limit(MOST_REASONS)
                .forEach(reason -> box.getChildren()
                        .add(kit.text(
                                kit.words().of("batch.reason", reason.getValue(), Kit.sentence(reason.getKey())))));
        int over = rest.tally().reasons().size() - MOST_REASONS;
        if (over > 0) {
            box.getChildren().add(kit.text(kit.words().of("batch.reasons", over)));
        }
        box.getStyleClass().addAll("notice", "notice-problem");
        body.getChildren().add(box);
    }

    private void notice(String style, String text) {
        body.getChildren().add(kit.prose(text, "notice", style));
    }

    private void save(String name, BiConsumer<BatchModel, Path> saving) {
        Optional<Path> file = dialogs.save(name);
        file.ifPresent(path -> saving.accept(model, path));
    }

    private void saved() {
        Reading<Path> saved = model.saved().get();
        saved.value().ifPresent(file -> notice("notice-good", kit.words().of("batch.saved", file.toString())));
        saved.error().ifPresent(error -> body.getChildren().add(kit.problem(error)));
    }
}
