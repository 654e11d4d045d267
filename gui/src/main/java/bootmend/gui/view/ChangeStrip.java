package bootmend.gui.view;

import bootmend.NextStep.Allow;
import bootmend.gui.model.CardModel;
import bootmend.gui.model.ChangeModel;
import bootmend.gui.model.ChangeState;
import bootmend.gui.model.OutcomeWords;
import bootmend.gui.model.RequestKey;
import bootmend.gui.text.Words;
import bootmend.operation.ChangeOrder;
import bootmend.operation.ChangeRequest;
import bootmend.operation.FileEdit;
import bootmend.operation.HistoryEntry;
import bootmend.operation.HistoryView;
import bootmend.operation.LineChange;
import bootmend.operation.PlanView;
import bootmend.operation.ProposedChange;
import bootmend.page.Amount;
import bootmend.view.InterruptedChange;
import bootmend.view.RecordedChange;
import bootmend.view.RecoveryView;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The right part: what will change, where the undo record goes, one button to do it, one to undo the last change. */
final class ChangeStrip extends VBox {

    /** How many lines or findings are shown. */
    private static final int MOST = 40;

    private final CardModel model;
    private final ChangeModel change;
    private final Kit kit;
    private final Path records;
    private final VBox body = new VBox(10);
    private final VBox foot = new VBox(8);
    private final Button make;
    private final Button undo;

    /**
     * @param records where undo records go
     * @param chooseProfile takes the user to where profiles are
     */
    ChangeStrip(CardModel model, Kit kit, Path records, Runnable chooseProfile) {
        this.model = model;
        this.change = model.change();
        this.kit = kit;
        this.records = records;
        setId("change-strip");
        getStyleClass().add("change-strip");
        make = kit.button("strip.make", change::make);
        make.getStyleClass().add("accent");
        make.setMaxWidth(Double.MAX_VALUE);
        undo = kit.button("strip.back", () -> change.choose(ChangeOrder.of(ChangeRequest.Undo.LAST)));
        undo.setMaxWidth(Double.MAX_VALUE);
        Button stock = kit.button("strip.stock", () -> change.choose(ChangeOrder.of(ChangeRequest.ToStock.PLAIN)));
        Button profile = kit.button("strip.profile", chooseProfile);
        HBox.setHgrow(stock, Priority.ALWAYS);
        HBox.setHgrow(profile, Priority.ALWAYS);
        stock.setMaxWidth(Double.MAX_VALUE);
        profile.setMaxWidth(Double.MAX_VALUE);
        HBox wishes = new HBox(8, stock, profile);
        ScrollPane scroll = Kit.scrolled(body, "strip-scroll");
        body.setId("strip-body");
        getChildren().addAll(kit.heading("strip.title"), wishes, scroll, foot);
        change.state().watch(state -> show());
        change.agreed().watch(agreed -> make.setDisable(!change.canMake()));
        model.history().watch(history -> show());
        model.gone().watch(gone -> show());
        model.sheet().watch(sheet -> show());
        for (Node each : List.of(stock, profile)) {
            model.sheet().watch(sheet -> each.setDisable(sheet.value().isEmpty()));
        }
    }

    private void show() {
        ChangeState state = change.state().get();
        body.getChildren().clear();
        foot.getChildren().clear();
        make.setVisible(true);
        if (model.gone().get()) {
            body.getChildren().add(kit.text(kit.words().of("strip.gone"), "notice", "notice-warn"));
            return;
        }
        if (state instanceof ChangeState.Idle) {
            body.getChildren()
                    .add(kit.label(model.sheet().get().error().isPresent() ? "strip.unread" : "strip.idle", "muted"));
        } else if (state instanceof ChangeState.WorkingOut) {
            body.getChildren().add(kit.label("strip.working", "muted"));
        } else if (state instanceof ChangeState.Proposed proposed) {
            proposed(proposed.change());
        } else if (state instanceof ChangeState.Nothing nothing) {
            title(key(nothing.change()));
            body.getChildren().add(kit.label("strip.nothing." + key(nothing.change()), "notice", "notice-good"));
            damage(nothing.change());
        } else if (state instanceof ChangeState.Interrupted cut) {
            interrupted(cut.recovery());
        } else if (state instanceof ChangeState.Unclear unclear) {
            unclear(unclear);
        } else if (state instanceof ChangeState.Making making) {
            title(making.key());
            ProgressBar bar = new ProgressBar();
            bar.setMaxWidth(Double.MAX_VALUE);
            bar.setAccessibleText(kit.words().of("strip.making"));
            body.getChildren().addAll(kit.label("strip.making"), bar);
        } else if (state instanceof ChangeState.Done done) {
            done(done);
        } else if (state instanceof ChangeState.Failed failed) {
            title(failed.key());
            body.getChildren().add(kit.problem(failed.error()));
            failed.despite().ifPresent(wish -> body.getChildren().add(inPlace(wish, false)));
        }
        elsewhere(state);
        foot(state);
    }

    /** Other cards' changes that wait are named where nothing of this card's own comes first. */
    private void elsewhere(ChangeState state) {
        if (!state.isWaiting() && model.waiting() instanceof InterruptedChange.Elsewhere other) {
            other.words().stream()
                    .limit(MOST)
                    .forEach(words -> body.getChildren().add(kit.prose(words, "notice", "elsewhere")));
            rest(other.changes().size());
        }
    }

    private void title(String key) {
        body.getChildren().add(kit.label("wish." + key, "strip-wish"));
    }

    private static String key(ProposedChange change) {
        return RequestKey.of(change.order().request());
    }

    private void proposed(ProposedChange preview) {
        ChangeOrder order = preview.order();
        title(key(preview));
        if (order.request() instanceof ChangeRequest.ToProfile profile) {
            body.getChildren().add(kit.text(profile.name(), "strip-name"));
        }
        preview.files().forEach(this::file);
        damage(preview);
        preview.notes().forEach(note -> body.getChildren().add(kit.prose(note, "muted")));
        body.getChildren().add(kit.prose(write(preview.plan()), "strip-plan"));
        body.getChildren().add(kit.prose(kit.words().of("strip.record", records.toString()), "strip-plan"));
        if (preview.plan().inPlace()) {
            body.getChildren().add(inPlace(order, true));
        }
        preview.questions().forEach(question -> body.getChildren().add(question(question)));
        options(order);
        make.setText(kit.words().of("make." + key(preview)));
        make.setDisable(!change.canMake());
    }

    private void file(FileEdit file) {
        if (file.kind() != FileEdit.Kind.CHANGED) {
            body.getChildren().add(kit.text(head(file), "strip-file"));
        }
        file.lines().stream().limit(MOST).forEach(line -> body.getChildren().add(line(line)));
        rest(file.lines().size());
    }

    private String head(FileEdit file) {
        int lines = file.lines().size();
        if (file.body().isPresent()) {
            String size = Amount.size(file.body().get().size());
            return kit.words()
                    .of(
                            file.kind() == FileEdit.Kind.ADDED ? "strip.file.new" : "strip.file.replaced",
                            file.path(),
                            size,
                            file.body().get().sha256());
        }
        return switch (file.kind()) {
            case CHANGED, REPLACED -> file.path();
            case ADDED ->
                file.against()
                        .map(other -> kit.words().of("strip.file.like", file.path(), other))
                        .orElseGet(() -> kit.words().of("strip.file.added", file.path(), lines));
            case REMOVED -> kit.words().of("strip.file.removed", file.path());
            case REWRITTEN -> kit.words().of("strip.file.rewritten", file.path(), lines);
        };
    }

    private Node line(LineChange line) {
        VBox box = new VBox(2, kit.text(kit.words().of("strip.line", line.file(), line.line()), "muted"));
        line.before().ifPresent(text -> box.getChildren().add(side("strip.before", text, "line-before")));
        box.getChildren()
                .add(line.after()
                        .map(text -> side("strip.after", text, "line-after"))
                        .orElseGet(() -> side("strip.after", kit.words().of("strip.takenout"), "line-gone")));
        box.getStyleClass().add("line-change");
        return box;
    }

    private Node side(String key, String text, String style) {
        Node name = kit.label(key, "side-name");
        Node value = kit.fact(text, style);
        HBox.setHgrow(value, Priority.ALWAYS);
        return new HBox(6, name, value);
    }

    /** The same sentence as a plan's steps are counted in everywhere. */
    private String write(PlanView plan) {
        Words words = kit.words();
        if (plan.ofFolder()) {
            return words.of(
                    "strip.writefiles",
                    plan.files().size(),
                    String.join(", ", plan.files()),
                    String.join(", ", plan.beside()));
        }
        String kinds = plan.sectorsByKind().entrySet().stream()
                .map(kind -> kind.getValue() + " " + kind.getKey())
                .collect(Collectors.joining(", "));
        return words.of(
                "strip.write", plan.sectorsWritten(), kinds, plan.steps().size());
    }

    private void damage(ProposedChange preview) {
        preview.findings().stream()
                .limit(MOST)
                .forEach(finding -> body.getChildren()
                        .add(kit.prose(
                                kit.words()
                                        .of(
                                                finding.isRepaired() ? "strip.repairs" : "strip.leaves",
                                                finding.where().words(),
                                                finding.words()),
                                "notice",
                                finding.isRepaired() ? "notice-good" : "notice-warn")));
        rest(preview.findings().size());
    }

    /** A card damaged through and through, or a file of tuning lines alone, must not fill the strip without end. */
    private void rest(int all) {
        if (all > MOST) {
            body.getChildren().add(kit.text(kit.words().of("strip.more", all - MOST), "muted"));
        }
    }

    private Node question(String question) {
        CheckBox box = new CheckBox(kit.words().of("strip.agree", question));
        box.setWrapText(true);
        // A question may hold a key such as arm_freq, in which no letter is underlined.
        box.setMnemonicParsing(false);
        box.setSelected(change.agreed().get().contains(question));
        box.selectedProperty().addListener((observed, before, yes) -> change.agree(question, yes));
        VBox notice = new VBox(box);
        notice.getStyleClass().addAll("notice", "notice-warn");
        return notice;
    }

    /** The risk of a full card, and the choice to take it; the change is worked out anew with it or without. */
    private Node inPlace(ChangeOrder order, boolean chosen) {
        CheckBox box = new CheckBox(kit.words().of("strip.inplace"));
        box.setId("strip-inplace");
        box.setWrapText(true);
        box.setSelected(chosen);
        box.setOnAction(event ->
                change.choose(box.isSelected() ? order.accepting(Allow.IN_PLACE) : ChangeOrder.of(order.request())));
        VBox notice = new VBox(6, kit.label("strip.inplace.warning"), box);
        notice.getStyleClass().addAll("notice", "notice-warn");
        return notice;
    }

    private void options(ChangeOrder order) {
        List<Node> options = new ArrayList<>();
        if (order.request() instanceof ChangeRequest.ToStock stock) {
            CheckBox remove = new CheckBox(kit.words().of("strip.remove"));
            remove.setWrapText(true);
            remove.setSelected(stock.remove());
            remove.setOnAction(
                    event -> change.choose(order.with(new ChangeRequest.ToStock(remove.isSelected(), stock.also()))));
            options.add(remove);
        }
        body.getChildren().addAll(options);
    }

    private void interrupted(RecoveryView recovery) {
        title("interrupted");
        body.getChildren()
                .addAll(
                        kit.prose(
                                kit.words()
                                        .of(
                                                "strip.interrupted",
                                                recovery.title(),
                                                kit.time(recovery.began()),
                                                recovery.state()),
                                "notice",
                                "notice-warn"),
                        kit.prose(kit.words()
                                .of(
                                        recovery.finishSuggested()
                                                ? "strip.interrupted.finish"
                                                : "strip.interrupted.back")),
                        kit.prose(kit.words().of("strip.recordis", recovery.undoRecord()), "strip-plan"));
        Button finish = kit.button("strip.finish", change::finishInterrupted);
        Button back = kit.button("strip.reverse", change::takeInterruptedBack);
        (recovery.finishSuggested() ? finish : back).getStyleClass().add("accent");
        for (Button each : List.of(finish, back)) {
            each.setMaxWidth(Double.MAX_VALUE);
            foot.getChildren().add(each);
        }
    }

    /** Each change that may be this card's, to be named by whoever knows. */
    private void unclear(ChangeState.Unclear unclear) {
        title("interrupted");
        body.getChildren().add(kit.label("strip.unclear", "notice", "notice-warn"));
        unclear.problem().ifPresent(error -> body.getChildren().add(kit.problem(error)));
        for (RecordedChange each :
                unclear.waiting().candidates().stream().limit(MOST).toList()) {
            Button mine = kit.button("strip.unclear.mine", () -> change.nameInterrupted(each));
            mine.setId("strip-mine-" + each.id());
            mine.setAccessibleText(kit.words().of("strip.unclear.accessible", each.title(), kit.time(each.began())));
            VBox box = new VBox(6, kit.prose(recorded(each)), mine);
            box.getStyleClass().add("line-change");
            body.getChildren().add(box);
        }
        rest(unclear.waiting().candidates().size());
        if (!unclear.waiting().others().isEmpty()) {
            body.getChildren().add(kit.label("strip.unclear.others", "muted"));
            unclear.waiting().others().stream()
                    .limit(MOST)
                    .forEach(each -> body.getChildren().add(kit.prose(recorded(each), "muted")));
        }
        body.getChildren().add(kit.label("strip.unclear.hint", "muted"));
    }

    private String recorded(RecordedChange change) {
        return kit.words().of("strip.recorded", change.title(), kit.time(change.began()), change.card(), change.id());
    }

    private void done(ChangeState.Done done) {
        title(done.key());
        Words words = kit.words();
        OutcomeWords.Said said = new OutcomeWords(words).of(done.made());
        body.getChildren().add(kit.prose(said.done(), "notice", "notice-good", "done"));
        if (done.leavesDamage()) {
            body.getChildren().add(kit.label("strip.done.damage", "notice", "notice-warn"));
        }
        body.getChildren()
                .addAll(
                        kit.prose(said.next(), "strip-safe"),
                        kit.prose(words.of("strip.recordis", done.made().record()), "strip-plan"));
    }

    private void foot(ChangeState state) {
        if (state.isWaiting() || state instanceof ChangeState.Making) {
            return;
        }
        Optional<HistoryEntry> last = model.history().get().value().map(HistoryView::changes).orElse(List.of()).stream()
                .filter(entry -> !entry.undone())
                .findFirst();
        boolean back = state instanceof ChangeState.Proposed proposed
                && key(proposed.change()).equals("back");
        if (state instanceof ChangeState.Proposed) {
            foot.getChildren().addAll(make, kit.label("strip.canback", "muted"));
        }
        if (!back) {
            undo.setDisable(last.isEmpty());
            foot.getChildren().add(undo);
        }
    }
}
