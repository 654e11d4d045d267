package bootmend.gui.view;

import bootmend.gui.model.CardModel;
import bootmend.gui.model.EarlierModel;
import bootmend.gui.model.EarlierWords;
import bootmend.gui.model.Reading;
import bootmend.page.PlaceWords;
import bootmend.view.EarlierVersionView;
import bootmend.view.EarlierView;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import javafx.scene.control.Button;
import javafx.scene.control.ListView;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What the card's config file was before: the versions in order of time, and the text of one beside another. */
final class EarlierPage extends VBox {

    private static final double LIST = 230;
    private static final double PERCENT = 100;
    private static final int MOST_MARKS = 3;

    private final EarlierModel model;
    private final Kit kit;
    private final EarlierWords words;
    private final VBox told = new VBox(6);
    private final FlowPane searching = new FlowPane(10, 6);
    private final ListView<EarlierVersionView> versions = new ListView<>();
    private final HBox body;
    private boolean filling;

    EarlierPage(CardModel card, Kit kit) {
        this.model = card.earlier();
        this.kit = kit;
        this.words = new EarlierWords(kit.words());
        setId("earlier-page");
        getStyleClass().add("page");
        versions.setId("earlier-versions");
        versions.getStyleClass().add("side-list");
        versions.setAccessibleText(kit.words().of("earlier.list"));
        versions.setCellFactory(list -> new VersionCell());
        versions.setMinWidth(LIST);
        versions.setPrefWidth(LIST);
        versions.setMaxWidth(LIST);
        versions.getSelectionModel().selectedItemProperty().addListener((property, before, now) -> {
            if (now != null && !filling) {
                model.choose(now.sha256());
            }
        });
        ComparePane compare = new ComparePane(model, kit, words);
        HBox.setHgrow(compare, Priority.ALWAYS);
        body = new HBox(12, versions, compare);
        VBox.setVgrow(body, Priority.ALWAYS);
        searching.getStyleClass().add("row");
        getChildren().addAll(told, searching, body, kit.label("earlier.caution", "muted"));
        Kit.takesRoomWhenFilled(told);
        Kit.takesRoomWhenFilled(searching);
        model.found().watch(this::show);
        model.progress().watch(this::showProgress);
        model.chosen().watch(chosen -> select());
    }

    /** Looks at the card when the page comes into view; nobody waits for it before. */
    void read() {
        model.look();
    }

    private void show(Reading<EarlierView> reading) {
        told.getChildren().clear();
        if (reading instanceof Reading.Waiting) {
            told.getChildren().add(kit.label("earlier.waiting", "muted"));
        }
        reading.error().ifPresent(error -> told.getChildren().add(kit.problem(error)));
        Optional<EarlierView> view = reading.value();
        view.ifPresent(each -> told.getChildren().add(summary(each)));
        filling = true;
        versions.getItems().setAll(view.map(EarlierView::versions).orElse(List.of()));
        filling = false;
        body.setVisible(view.filter(each -> !each.versions().isEmpty()).isPresent());
        select();
        showProgress(model.progress().get());
    }

    private Region summary(EarlierView view) {
        if (view.versions().isEmpty()) {
            return kit.label(view.complete() ? "earlier.none" : "earlier.nonenear", "notice");
        }
        return kit.label("earlier.how", "muted");
    }

    private void showProgress(OptionalInt percent) {
        searching.getChildren().clear();
        Optional<EarlierView> view = model.found().get().value();
        if (percent.isPresent()) {
            ProgressBar bar = new ProgressBar(percent.getAsInt() / PERCENT);
            String words = kit.words().of("earlier.searching", percent.getAsInt());
            bar.setAccessibleText(words);
            searching.getChildren().addAll(bar, kit.words(words), kit.button("earlier.stop", model::stopSearch));
        } else if (view.filter(EarlierView::mounted).isPresent()) {
            searching.getChildren().add(kit.label("earlier.mounted", "muted"));
        } else if (view.isPresent() && !view.get().complete()) {
            Button all = kit.button("earlier.all", model::searchAll);
            searching.getChildren().addAll(all, kit.label("earlier.why", "muted"));
        } else if (view.isPresent()) {
            searching.getChildren().add(kit.label("earlier.searched", "muted"));
        }
    }

    private void select() {
        model.version().ifPresent(version -> {
            filling = true;
            versions.getSelectionModel().select(version);
            filling = false;
        });
    }

    /** One version: what it tuned, and what is said of it. */
    private final class VersionCell extends WideCell<EarlierVersionView> {

        @Override
        protected void updateItem(EarlierVersionView version, boolean empty) {
            super.updateItem(version, empty);
            setText(null);
            if (empty || version == null) {
                setGraphic(null);
                return;
            }
            boolean certain = version.version().order().certain();
            FlowPane marks = new FlowPane(5, 3);
            marks.getChildren().add(mark(certain ? "earlier.certain" : "earlier.likely", "mark-plain"));
            if (!version.version().whole()) {
                marks.getChildren().add(mark("earlier.part", "mark-warn"));
            }
            VBox box = new VBox(
                    3,
                    kit.text(words.title(version), "card-title"),
                    kit.text(words.settings(version.settings()), "earlier-settings"),
                    marks);
            version.tried().stream()
                    .limit(MOST_MARKS)
                    .forEach(tried -> box.getChildren()
                            .add(kit.text(PlaceWords.of(tried), tried.isGood() ? "earlier-good" : "muted")));
            setAccessibleText(words.title(version) + ": " + words.settings(version.settings()));
            show(box);
        }

        private Region mark(String key, String style) {
            return kit.words(kit.words().of(key), "mark", style);
        }
    }
}
