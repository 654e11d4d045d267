package bootmend.gui.view;

import bootmend.CardException;
import bootmend.gui.model.DeskModel;
import bootmend.gui.model.Services;
import bootmend.gui.model.WindowSettings;
import bootmend.gui.model.WorkQueue;
import bootmend.gui.text.Words;
import bootmend.view.AttachedCard;
import bootmend.workplace.Workplace;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import javafx.application.Platform;
import javafx.scene.image.WritableImage;
import javafx.stage.Stage;
import org.testfx.api.FxToolkit;

/** A window over cards in a folder, drawn in memory; files are chosen in the user's place. */
final class WindowOverFolder implements AutoCloseable {

    private static final long PATIENCE_SECONDS = 30;

    private final ExecutorService worker = Executors.newSingleThreadExecutor();
    private volatile List<AttachedCard> attached = List.of();
    private final Answers answers = new Answers();
    private final DeskModel model;
    private final Desk desk;
    private final Stage stage;
    private volatile boolean readersFail;

    /** What the user answers to dialogs. */
    static final class Answers implements Dialogs {

        List<Path> images = List.of();
        List<Path> folder = List.of();
        Optional<Path> save = Optional.empty();
        Optional<Path> file = Optional.empty();

        @Override
        public List<Path> images() {
            return images;
        }

        @Override
        public List<Path> folder() {
            return folder;
        }

        @Override
        public Optional<Path> save(String name) {
            return save;
        }

        @Override
        public Optional<Path> file() {
            return file;
        }
    }

    /** @param home the window's data folder */
    WindowOverFolder(Path home) throws Exception {
        this(Workplace.ofThisComputer(home), 1280, 800);
    }

    /** A window of that size in pixels. */
    WindowOverFolder(Workplace workplace, int width, int height) throws Exception {
        FxToolkit.registerPrimaryStage();
        Services services = new Services(
                workplace, new WorkQueue(worker, Platform::runLater), Platform::runLater, new Words(Locale.ENGLISH));
        this.model = onScreen(() -> new DeskModel(
                services, this::attached, WindowSettings.load(workplace.home().resolve("window.properties"))));
        this.stage = onScreen(Stage::new);
        this.desk = onScreen(() -> new Desk(model, stage, answers));
        onScreen(() -> {
            // At the corner, so that the largest picture still fits on the screen that is drawn in memory.
            stage.setX(0);
            stage.setY(0);
            stage.setWidth(width);
            stage.setHeight(height);
            desk.show();
            return null;
        });
    }

    DeskModel model() {
        return model;
    }

    Desk desk() {
        return desk;
    }

    Stage stage() {
        return stage;
    }

    Answers answers() {
        return answers;
    }

    /** What is attached to the computer from now on. */
    void attach(List<AttachedCard> cards) throws Exception {
        onScreen(() -> {
            attached = List.copyOf(cards);
            model.lookAtReaders();
            return null;
        });
        settle();
    }

    /** Lets the next look at the readers fail. */
    void failReaders() throws Exception {
        readersFail = true;
        onScreen(() -> {
            model.lookAtReaders();
            return null;
        });
        settle();
    }

    private List<AttachedCard> attached() throws CardException {
        if (readersFail) {
            throw CardException.unreadable("the readers could not be listed", "Look again.");
        }
        return List.copyOf(attached);
    }

    /** Waits until nothing is in work. */
    void settle() throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
        while (!onScreen(() -> model.services().queue().isIdle())) {
            if (System.nanoTime() > end) {
                throw new TimeoutException("the window did not come to rest");
            }
            Thread.sleep(10);
        }
        onScreen(() -> null);
    }

    WritableImage picture() throws Exception {
        return onScreen(() -> desk.scene().snapshot(null));
    }

    static <T> T onScreen(Callable<T> action) throws Exception {
        FutureTask<T> task = new FutureTask<>(action);
        Platform.runLater(task);
        try {
            return task.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (ExecutionException e) {
            throw e.getCause() instanceof Exception cause ? cause : e;
        }
    }

    @Override
    public void close() throws Exception {
        onScreen(() -> {
            stage.hide();
            return null;
        });
        worker.shutdown();
        worker.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS);
    }
}
