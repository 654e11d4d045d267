package bootmend.gui.view;

import bootmend.gui.model.DeskModel;
import bootmend.gui.model.WindowSettings;
import bootmend.gui.text.Words;
import java.util.List;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.scene.Scene;
import javafx.stage.Stage;
import javafx.util.Duration;

/** The desktop window itself: its menu, its place on the screen, its look, and its watch over the readers. */
public final class Desk {

    private static final double WIDTH = 1280;
    private static final double HEIGHT = 800;
    private static final Duration READERS = Duration.seconds(3);

    private final DeskModel model;
    private final Stage stage;
    private final Scene scene;
    private final Look look;
    private final DeskView view;

    public Desk(DeskModel model, Stage stage) {
        this(model, stage, new SystemDialogs(stage, model.services().words()));
    }

    /** @param dialogs asks the user for files */
    Desk(DeskModel model, Stage stage, Dialogs dialogs) {
        this.model = model;
        this.stage = stage;
        Words words = model.services().words();
        Kit kit = new Kit(words);
        DeskMenu menu = new DeskMenu(model, kit, dialogs, this::setDark, page -> showPage(page), this::close);
        this.view = new DeskView(model, kit, dialogs, menu);
        this.scene = new Scene(view, WIDTH, HEIGHT);
        this.look = new Look(scene);
        look.set(model.settings().isDark());
        stage.setTitle(words.of("window.title"));
        stage.setScene(scene);
        stage.setMinWidth(900);
        stage.setMinHeight(560);
        place();
    }

    /** Shows the window and begins to watch the readers. */
    public void show() {
        stage.show();
        model.lookForCutBatches();
        model.lookAtReaders();
        Timeline watch = new Timeline(new KeyFrame(READERS, event -> {
            if (stage.isFocused() && model.services().queue().isIdle()) {
                model.lookAtReaders();
            }
        }));
        watch.setCycleCount(Animation.INDEFINITE);
        watch.play();
        stage.setOnCloseRequest(event -> {
            event.consume();
            close();
        });
        stage.setOnHidden(event -> {
            watch.stop();
            remember();
        });
    }

    /** Closes the window; while a change or a batch is under way, asks first how that is to end. */
    public void close() {
        if (!model.isInHand()) {
            model.close(stage::hide);
        } else {
            view.askClosing(stage::hide);
        }
    }

    /** Shows a page by its key, such as {@code profiles}. */
    public void showPage(String key) {
        view.showPage(key);
    }

    /** Light or dark, from now on. */
    public void setDark(boolean dark) {
        look.set(dark);
        model.settings().setDark(dark);
        model.settings().save();
    }

    Scene scene() {
        return scene;
    }

    private void place() {
        WindowSettings settings = model.settings();
        settings.measure("width").ifPresent(stage::setWidth);
        settings.measure("height").ifPresent(stage::setHeight);
        List<javafx.stage.Screen> screens =
                settings.measure("x").isPresent() && settings.measure("y").isPresent()
                        ? javafx.stage.Screen.getScreensForRectangle(
                                settings.measure("x").getAsDouble(),
                                settings.measure("y").getAsDouble(),
                                100,
                                100)
                        : List.of();
        // A place on a screen that is not there any more would hide the window.
        if (!screens.isEmpty()) {
            stage.setX(settings.measure("x").getAsDouble());
            stage.setY(settings.measure("y").getAsDouble());
        }
        stage.setMaximized(settings.measure("maximized").orElse(0) > 0);
    }

    private void remember() {
        WindowSettings settings = model.settings();
        settings.setMeasure("maximized", stage.isMaximized() ? 1 : 0);
        if (!stage.isMaximized()) {
            settings.setMeasure("x", stage.getX());
            settings.setMeasure("y", stage.getY());
            settings.setMeasure("width", stage.getWidth());
            settings.setMeasure("height", stage.getHeight());
        }
        settings.save();
    }
}
