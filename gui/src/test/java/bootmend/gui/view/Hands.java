package bootmend.gui.view;

import java.nio.file.Path;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.control.TextInputControl;
import org.testfx.api.FxRobot;

/** What a user does with a window and reads on it. */
final class Hands {

    private static final long PULSES_MS = 60;

    private final WindowOverFolder window;
    private final FxRobot robot = new FxRobot();

    Hands(WindowOverFolder window) {
        this.window = window;
    }

    void look(Path card) throws Exception {
        act(() -> window.model().look(card));
    }

    void page(String key) throws Exception {
        act(() -> window.desk().showPage(key));
    }

    void click(String id) throws Exception {
        robot.clickOn(id);
        window.settle();
        Thread.sleep(PULSES_MS);
    }

    /** Presses a button that may be out of sight. */
    void press(String id) throws Exception {
        act(() -> ((ButtonBase) robot.lookup(id).query()).fire());
    }

    void type(String id, String text) throws Exception {
        act(() -> ((TextInputControl) robot.lookup(id).query()).setText(text));
    }

    void choose(String id, String value) throws Exception {
        act(() -> {
            ComboBox<String> box = robot.lookup(id).queryComboBox();
            box.setValue(value);
        });
    }

    void act(Runnable action) throws Exception {
        WindowOverFolder.onScreen(() -> {
            action.run();
            return null;
        });
        window.settle();
        // What a scroll pane shows is there after the next pulse.
        Thread.sleep(PULSES_MS);
    }

    Node find(String id) throws Exception {
        return WindowOverFolder.onScreen(() -> robot.lookup(id).query());
    }

    boolean isThere(String id) throws Exception {
        return WindowOverFolder.onScreen(() -> robot.lookup(id).tryQuery().isPresent());
    }

    /** Every text below a node, as a user reads it. */
    String texts(String id) throws Exception {
        return WindowOverFolder.onScreen(() -> {
            Node root = robot.lookup(id).query();
            root.applyCss();
            if (root instanceof Parent parent) {
                parent.layout();
            }
            return robot
                    .from(root)
                    .lookup((Node node) ->
                            node instanceof Label || node instanceof TextInputControl || node instanceof Labeled)
                    .queryAll()
                    .stream()
                    .map(node -> node instanceof Labeled label ? label.getText() : ((TextInputControl) node).getText())
                    .collect(Collectors.joining("\n"));
        });
    }
}
