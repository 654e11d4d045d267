package bootmend.gui.view;

import bootmend.finding.Purpose;
import bootmend.fixtures.DemoCard;
import bootmend.fixtures.DemoCards;
import bootmend.gui.BatchCards;
import bootmend.gui.SmallCards;
import bootmend.gui.model.BatchModel;
import bootmend.gui.model.CardModel;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.page.SlipContent;
import bootmend.record.ProfileJob;
import bootmend.request.CardRequest;
import bootmend.workplace.Workplace;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.CheckBox;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TableView;
import javafx.scene.layout.Region;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Writes a picture of every view, by day and by night, in two sizes; run by name, see DEVELOPERS.md. */
class ScreenshotTour {

    private static final Path OUT = Path.of(System.getProperty("bootmend.screenshots", "target/screenshots"));

    @TempDir
    private Path folder;

    @Test
    void everyView() throws Exception {
        DemoCards.writeAll(folder);
        for (int[] size : List.of(new int[] {1280, 800}, new int[] {1920, 1080})) {
            Path home = folder.resolve("records-" + size[0]);
            try (WindowOverFolder window = new WindowOverFolder(Workplace.ofThisComputer(home), size[0], size[1])) {
                tour(window, "-" + size[0] + "x" + size[1]);
            }
        }
        System.out.println("Pictures are in " + OUT.toAbsolutePath());
    }

    private void tour(WindowOverFolder window, String size) throws Exception {
        List<Path> cards = DemoCards.all().stream()
                .map(DemoCard::fileName)
                .map(folder::resolve)
                .toList();
        act(window, () -> window.model().offer(cards));
        shoot(window, "start" + size);
        act(window, () -> window.model().look(cards.get(0)));
        shoot(window, "sheet-any-board" + size);
        act(window, () -> window.model().current().get().orElseThrow().setBoard(Optional.of("pi4")));
        shoot(window, "sheet-one-board" + size);
        for (String page : List.of("boot", "check", "damage", "changes", "earlier", "profiles", "trials")) {
            act(window, () -> window.desk().showPage(page));
            shoot(window, page + size);
        }
        act(window, () -> window.desk().showPage("sheet"));
        act(window, () -> window.model().current().get().orElseThrow().change().make());
        shoot(window, "done" + size);
        act(window, () -> card(window).change().choose(ChangeOrder.of(ChangeRequest.Undo.LAST)));
        act(window, () -> window.model().current().get().orElseThrow().change().make());
        Path cut = Files.copy(cards.get(2), folder.resolve("lab-card-06-interrupted" + size + ".img"));
        CutChange.leave(cut, window.model().services().workplace().home());
        act(window, () -> window.model().look(cut));
        shoot(window, "interrupted" + size);
        Path spoiled = Files.write(folder.resolve("holiday-pictures.img"), new byte[1 << 20]);
        act(window, () -> window.model().look(spoiled));
        shoot(window, "no-card" + size);
        checkDamageAndChanges(window, cards, size);
        batch(window, size);
    }

    private void checkDamageAndChanges(WindowOverFolder window, List<Path> cards, String size) throws Exception {
        onPage(window, cards.get(0), "check");
        act(window, () -> card(window).setPurpose(Purpose.FIRMWARE_UPDATE));
        shoot(window, "check-update" + size);
        act(window, () -> card(window).slip().save(folder.resolve("packing-slip.html")));
        shoot(window, "check-slip-saved" + size);
        if (size.startsWith("-1280")) {
            SlipContent slip = card(window).slip().content().orElseThrow();
            act(window, () -> shootSheets(slip));
        }
        onPage(window, SmallCards.writeFull(folder, "full" + size + ".img", SmallCards.TUNED), "check");
        shoot(window, "strip-full" + size);
        act(window, () -> ((CheckBox) window.desk().scene().lookup("#strip-inplace")).fire());
        shoot(window, "strip-in-place" + size);
        for (String id : List.of("chain-loop-on-itself", "duplicate-names", "config-utf16")) {
            onPage(
                    window,
                    SmallCards.writeDamaged(Files.createDirectories(folder.resolve("damaged" + size)), id),
                    "damage");
            act(window, () -> card(window).change().choose(ChangeOrder.of(ChangeRequest.Repair.PLAIN)));
            shoot(window, "damage-" + id + size);
        }
        for (int i = 0; i < 2; i++) {
            act(window, () -> card(window).change().make());
            act(window, () -> card(window).change().choose(ChangeOrder.of(ChangeRequest.ToStock.PLAIN)));
        }
        act(window, () -> card(window).change().choose(ChangeOrder.of(ChangeRequest.Undo.LAST)));
        act(window, () -> card(window).change().make());
        act(window, () -> window.desk().showPage("changes"));
        shoot(window, "changes-made" + size);
        earlier(window, size);
        Path boot = SmallCards.mounted(Files.createDirectories(folder.resolve("mounted" + size)), SmallCards.TUNED);
        onPage(window, boot, "damage");
        shoot(window, "damage-folder" + size);
        Path cut = SmallCards.write(folder, "cut" + size + ".img", SmallCards.TUNED);
        CutChange.leave(cut, window.model().services().workplace().home());
        onPage(window, cut, "damage");
        shoot(window, "damage-interrupted" + size);
    }

    /** Five versions, of which one is in part and one known-good. */
    private void earlier(WindowOverFolder window, String size) throws Exception {
        Path card = SmallCards.writeWithEarlier(
                folder,
                "earlier" + size + ".img",
                "# line follower, group 3\n[all]\narm_freq=2100\nover_voltage=6\ndtparam=audio=on\ngpu_freq=700\n",
                "# line follower, group 3\n[all]\narm_freq=2050\nover_voltage=5\ndtparam=audio=on\n",
                "# line follower, group 3\n[all]\narm_freq=2000\nover_voltage=4\ndtparam=audio=on\nhdmi_group=1\n",
                "# line follower\n[all]\narm_freq=1900\nthe lamp is out\n",
                "# line follower\n[all]\ndtparam=audio=on\n");
        Path good = SmallCards.write(folder, "good" + size + ".img", "arm_freq=2000\nover_voltage=4\n");
        new ProfileJob(window.model().services().workplace())
                .save(CardRequest.of(good), new ProfileJob.Save("group-3", "pi4", "fan", "", "", List.of(), true));
        onPage(window, card, "earlier");
        shoot(window, "earlier" + size);
        act(window, () -> card(window).earlier().searchAll());
        act(window, () -> card(window).earlier().putBack(false));
        shoot(window, "earlier-put-back" + size);
        act(
                window,
                () -> card(window)
                        .earlier()
                        .choose(card(window)
                                .earlier()
                                .found()
                                .get()
                                .value()
                                .orElseThrow()
                                .versions()
                                .get(1)
                                .sha256()));
        shoot(window, "earlier-chosen" + size);
    }

    private static void shootSheets(SlipContent slip) {
        List<Region> sheets = new SlipPages(487, 734).of(slip);
        for (int i = 0; i < sheets.size(); i++) {
            Region sheet = sheets.get(i);
            try {
                Picture.write(sheet.snapshot(null, null), OUT.resolve("slip-sheet-" + i + ".png"));
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private static void onPage(WindowOverFolder window, Path card, String page) throws Exception {
        act(window, () -> {
            window.model().look(card);
            window.desk().showPage(page);
        });
    }

    private static CardModel card(WindowOverFolder window) {
        return window.model().current().get().orElseThrow();
    }

    /** Several small cards together, with one that is none; each size has cards of its own. */
    private void batch(WindowOverFolder window, String size) throws Exception {
        Path mine = Files.createDirectory(folder.resolve("batch" + size));
        BatchCards made = new BatchCards(mine);
        List<Path> cards = new ArrayList<>(List.of(made.broken("lab-bent-reader.img"), made.stock("lab-spare.img")));
        cards.addAll(made.tuned(14));
        act(window, () -> window.model().open(cards));
        act(window, () -> window.desk().showPage("sheet"));
        act(window, () -> window.desk().scene().lookup("#batch-table").requestFocus());
        shoot(window, "batch-opened" + size);
        BatchModel model = window.model().batch().get().orElseThrow();
        act(window, () -> model.workOut(ChangeOrder.of(ChangeRequest.ToStock.PLAIN)));
        act(
                window,
                () -> ((TableView<?>) window.desk().scene().lookup("#batch-table"))
                        .getSelectionModel()
                        .select(3));
        shoot(window, "batch-workedout" + size);
        act(window, model::make);
        shoot(window, "batch-done" + size);
        act(
                window,
                () -> ((TableView<?>) window.desk().scene().lookup("#batch-table"))
                        .getSelectionModel()
                        .select(0));
        act(window, () -> model.check(Purpose.SHIP));
        shoot(window, "batch-check" + size);
        new ProfileJob(window.model().services().workplace())
                .save(
                        CardRequest.of(made.tuned("cart.img")),
                        new ProfileJob.Save("arm-cart", "pi4", "fan", "", "", List.of(), true));
        act(window, model::read);
        act(window, () -> ((RadioButton) window.desk().scene().lookup("#batch-choice-profile")).fire());
        act(window, () -> model.workOut(ChangeOrder.of(new ChangeRequest.ToProfile("arm-cart", Optional.empty()))));
        shoot(window, "batch-profile" + size);
        running(window, new BatchCards(Files.createDirectory(folder.resolve("many" + size))), size);
        act(window, () -> window.model().look(cards.get(1)));
        shoot(window, "batch-one-of-them" + size);
    }

    private void running(WindowOverFolder window, BatchCards made, String size) throws Exception {
        List<Path> many = made.tuned(400);
        act(window, () -> window.model().together(many));
        BatchModel model = window.model().batch().get().orElseThrow();
        act(window, () -> model.workOut(ChangeOrder.of(ChangeRequest.ToStock.PLAIN)));
        WindowOverFolder.onScreen(() -> {
            model.make();
            return null;
        });
        Thread.sleep(500);
        Picture.write(window.picture(), OUT.resolve("batch-running" + size + ".png"));
        window.settle();
    }

    private static void act(WindowOverFolder window, Runnable action) throws Exception {
        WindowOverFolder.onScreen(() -> {
            action.run();
            return null;
        });
        window.settle();
    }

    private static void shoot(WindowOverFolder window, String name) throws Exception {
        for (boolean dark : List.of(false, true)) {
            act(window, () -> window.desk().setDark(dark));
            // Two pulses lay out what a change of style moved.
            Thread.sleep(120);
            Picture.write(window.picture(), OUT.resolve(name + (dark ? "-dark" : "-light") + ".png"));
        }
    }
}
