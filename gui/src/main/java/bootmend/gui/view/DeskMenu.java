package bootmend.gui.view;

import bootmend.gui.model.BatchModel;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.DeskModel;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import java.util.List;
import java.util.function.Consumer;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;

/** The menu: everything that can be done, by keyboard too. */
final class DeskMenu extends MenuBar {

    private static final List<String> PAGES =
            List.of("boot", "sheet", "check", "damage", "changes", "earlier", "profiles", "trials");

    private final DeskModel desk;
    private final Kit kit;

    DeskMenu(DeskModel desk, Kit kit, Dialogs dialogs, Consumer<Boolean> dark, Consumer<String> page, Runnable close) {
        this.desk = desk;
        this.kit = kit;
        Menu card = new Menu(
                kit.words().of("menu.card"),
                null,
                item("menu.open", KeyCode.O, () -> desk.open(dialogs.images())),
                item("menu.folder", KeyCode.M, () -> desk.open(dialogs.folder())),
                item("menu.read", KeyCode.R, this::read),
                item("menu.eject", KeyCode.E, () -> desk.current().get().ifPresent(CardModel::eject)),
                item("menu.readers", KeyCode.L, desk::lookAtReaders),
                new SeparatorMenuItem(),
                item("menu.close", KeyCode.Q, close));
        Menu change = new Menu(
                kit.words().of("menu.change"),
                null,
                item("menu.stock", KeyCode.B, this::backToStock),
                item("menu.profile", KeyCode.P, () -> page.accept("profiles")),
                item("menu.back", KeyCode.Z, () -> choose(ChangeOrder.of(ChangeRequest.Undo.LAST))),
                new SeparatorMenuItem(),
                item("menu.make", KeyCode.ENTER, this::make));
        Menu show = new Menu(kit.words().of("menu.show"));
        for (int i = 0; i < PAGES.size(); i++) {
            String key = PAGES.get(i);
            MenuItem item =
                    item("menu.page." + key, KeyCode.getKeyCode(Integer.toString(i + 1)), () -> page.accept(key));
            show.getItems().add(item);
        }
        CheckMenuItem night = new CheckMenuItem(kit.words().of("menu.dark"));
        night.setSelected(desk.settings().isDark());
        night.setOnAction(event -> dark.accept(night.isSelected()));
        night.setAccelerator(new KeyCodeCombination(KeyCode.D, KeyCombination.SHORTCUT_DOWN));
        show.getItems().addAll(new SeparatorMenuItem(), night);
        getMenus().addAll(card, change, show);
    }

    private void read() {
        desk.current().get().ifPresent(CardModel::read);
        desk.batch().get().ifPresent(BatchModel::read);
    }

    private void make() {
        desk.current().get().ifPresent(model -> model.change().make());
        desk.batch().get().ifPresent(BatchModel::make);
    }

    private void backToStock() {
        ChangeOrder wish = ChangeOrder.of(ChangeRequest.ToStock.PLAIN);
        choose(wish);
        desk.batch().get().ifPresent(model -> model.workOut(wish));
    }

    private void choose(ChangeOrder wish) {
        desk.current().get().ifPresent(model -> model.change().choose(wish));
    }

    private MenuItem item(String key, KeyCode accelerator, Runnable action) {
        MenuItem item = new MenuItem(kit.words().of(key));
        item.setAccelerator(new KeyCodeCombination(accelerator, KeyCombination.SHORTCUT_DOWN));
        item.setOnAction(event -> action.run());
        return item;
    }
}
