package bootmend.gui;

import bootmend.CardException;
import bootmend.gui.model.DeskModel;
import bootmend.gui.model.Services;
import bootmend.gui.model.WindowSettings;
import bootmend.gui.model.WorkQueue;
import bootmend.gui.text.Words;
import bootmend.gui.view.Desk;
import bootmend.view.CardsJob;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.stage.Stage;

/** Puts the window together on this computer. */
public final class WindowApp extends Application {

    /** Where this is set, the window says how long its first paint took and closes. */
    private static final String MEASURE = "bootmend.first.paint";

    private final ExecutorService worker = Executors.newSingleThreadExecutor(task -> new Thread(task, "bench"));
    private DeskModel model;

    @Override
    public void start(Stage stage) throws CardException, IOException {
        StartWish wish = StartWish.of(getParameters().getRaw());
        List<Path> cards = wish.paths();
        Workplace workplace;
        if (wish.demo()) {
            DemoWorkplace made = DemoWorkplace.in(wish.demoFolder());
            workplace = made.workplace();
            cards = made.cards();
        } else {
            workplace = Workplace.ofThisComputer(System.getenv());
        }
        Words words = new Words(Locale.getDefault());
        WorkQueue queue = new WorkQueue(worker, Platform::runLater);
        workplace = workplace.stoppable(queue::isStopping);
        Services services = new Services(workplace, queue, Platform::runLater, words);
        CardsJob readers = new CardsJob(workplace);
        DeskModel desk = new DeskModel(
                services, readers::run, WindowSettings.load(workplace.home().resolve("window.properties")));
        model = desk;
        Desk window = new Desk(desk, stage);
        if (Boolean.getBoolean(MEASURE)) {
            FirstPaint.measure(stage.getScene(), took -> {
                System.out.println("first paint after " + took.toMillis() + " ms");
                stage.close();
            });
        }
        window.show();
        if (wish.demo()) {
            desk.offer(cards);
            desk.look(cards.get(0));
        } else if (!cards.isEmpty()) {
            desk.open(cards);
        }
    }

    @Override
    public void stop() {
        // However the window came to its end, a change under way is finished and no other is begun.
        if (model != null) {
            model.close(() -> {});
        }
        worker.shutdown();
    }
}
