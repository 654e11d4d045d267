package bootmend.gui.view;

import bootmend.CardException;
import bootmend.config.VisibleText;
import bootmend.gui.model.BoardTrials;
import bootmend.gui.model.ChartWords;
import bootmend.gui.model.DeskModel;
import bootmend.gui.model.Reading;
import bootmend.gui.model.TrialsModel;
import bootmend.record.ChartView;
import bootmend.record.TrialListing;
import bootmend.record.TrialSide;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TitledPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** What each board took, as a chart, and what to try next. */
final class TrialsPage extends VBox {

    /** From this width on the advice stands beside the chart. */
    private static final double WIDE = 900;

    private static final double BESIDE = 350;

    private final TrialsModel model;
    private final Kit kit;
    private final ComboBox<String> label = new ComboBox<>();
    private final ComboBox<TrialSide> compared = new ComboBox<>();
    private final ToggleGroup views = new ToggleGroup();
    private final ToggleButton chartView;
    private final ToggleButton nextView;
    private final ToggleButton tableView;
    private final ToggleButton formView;
    private final VBox notices = new VBox(8);
    private final StackPane body = new StackPane();
    private final VBox chart = new VBox(8);
    private final Label headline;
    private final ScrollPane picture = scroll();
    private final ScrollPane beside = scroll();
    private final ScrollPane adding = scroll();
    private final HBox both = new HBox(16, picture, beside);
    private final NextTrial next;
    private final TrialTable table;
    private final Node empty;
    private boolean wide;
    private boolean showing;

    TrialsPage(DeskModel desk, Kit kit, Dialogs dialogs) {
        this.model = new TrialsModel(desk);
        this.kit = kit;
        setId("trials-page");
        setMinHeight(0);
        Kit.takesRoomWhenFilled(notices);
        getStyleClass().add("page");
        this.next = new NextTrial(model, kit);
        this.table = new TrialTable(model, kit);
        this.empty = empty();
        this.headline = kit.text("", "card-title");
        headline.setId("trials-headline");
        adding.setContent(new TrialForm(model, kit, dialogs));
        picture.setContent(chart);
        beside.setContent(next);
        beside.setPrefWidth(BESIDE);
        beside.setMinWidth(BESIDE);
        HBox.setHgrow(picture, Priority.ALWAYS);
        Label question = kit.words(kit.words().of("trials.board"));
        question.setLabelFor(label);
        question.setMnemonicParsing(true);
        label.setId("trials-label");
        label.setAccessibleText(kit.words().of("trials.board.accessible"));
        label.setPrefWidth(160);
        label.setCellFactory(list -> visible());
        label.setButtonCell(visible());
        label.setOnAction(event -> {
            if (!showing && label.getValue() != null) {
                model.choose(label.getValue());
            }
        });
        Label comparing = kit.words(kit.words().of("trials.compare"));
        comparing.setLabelFor(compared);
        comparing.setMnemonicParsing(true);
        compared.setId("trials-compare");
        compared.setAccessibleText(kit.words().of("trials.compare.accessible"));
        compared.setPrefWidth(170);
        compared.setConverter(new SideWords(kit.words().of("trials.compare.none")));
        compared.setOnAction(event -> {
            if (!showing) {
                model.compare(Optional.ofNullable(compared.getValue()));
            }
        });
        chartView = toggle("trials.chart");
        nextView = toggle("trials.next");
        tableView = toggle("trials.table");
        formView = toggle("trials.add");
        chartView.setSelected(true);
        FlowPane row = new FlowPane(
                8, 8, question, label, comparing, compared, new HBox(chartView, nextView, tableView, formView));
        row.getStyleClass().add("row");
        row.setPrefWrapLength(1);
        VBox.setVgrow(body, Priority.ALWAYS);
        getChildren().addAll(row, notices, body);
        views.selectedToggleProperty().addListener((observed, before, chosen) -> {
            if (chosen == null) {
                before.setSelected(true);
            } else {
                if (chosen == formView) {
                    model.beginAdding();
                }
                arrange();
            }
        });
        widthProperty().addListener((observed, before, width) -> {
            if (wide != width.doubleValue() >= WIDE) {
                wide = width.doubleValue() >= WIDE;
                arrange();
            }
        });
        model.listing().watch(reading -> listed());
        model.label().watch(chosen -> labels());
        model.board().watch(this::show);
    }

    /** Reads the trials anew. */
    void read() {
        model.read();
    }

    /** A label stands in a file that anyone may have edited. */
    private static ListCell<String> visible() {
        return new ListCell<>() {
            @Override
            protected void updateItem(String text, boolean none) {
                super.updateItem(text, none);
                setText(none || text == null ? null : VisibleText.of(text));
            }
        };
    }

    private ToggleButton toggle(String key) {
        ToggleButton button = new ToggleButton(kit.words().of(key));
        button.setMnemonicParsing(true);
        button.setId(key.replace('.', '-'));
        button.setToggleGroup(views);
        return button;
    }

    private void listed() {
        labels();
        notices.getChildren().clear();
        model.listing().get().error().ifPresent(error -> notices.getChildren().add(kit.problem(error)));
        List<CardException> problems =
                model.listing().get().value().map(TrialListing::problems).orElse(List.of());
        // One sentence is enough: until that file is corrected nothing is worked out.
        problems.stream().limit(1).forEach(problem -> notices.getChildren().add(kit.problem(problem)));
        arrange();
    }

    private void labels() {
        showing = true;
        label.getItems().setAll(model.labels());
        label.setValue(model.label().get().orElse(null));
        compared.getItems().setAll(model.sides());
        compared.getItems().add(0, null);
        compared.setValue(model.beside().get().orElse(null));
        compared.setDisable(model.sides().isEmpty());
        showing = false;
    }

    private void show(Reading<BoardTrials> reading) {
        chart.getChildren().clear();
        reading.error().ifPresent(error -> chart.getChildren().add(kit.problem(error)));
        reading.value().ifPresent(board -> {
            Optional<ChartView> view = board.chart();
            view.ifPresentOrElse(
                    drawn -> chart(board, drawn), () -> chart.getChildren().add(kit.label("chart.none", "muted")));
        });
        next.setVisible(reading.value().isPresent());
        arrange();
    }

    private void chart(BoardTrials board, ChartView view) {
        TrialChartPane drawing = new TrialChartPane(kit, board, view);
        VBox.setVgrow(drawing, Priority.ALWAYS);
        VBox sentences = new VBox(4);
        new ChartWords(kit.words())
                .sentences(board)
                .forEach(each -> sentences.getChildren().add(kit.prose(each)));
        TitledPane words = new TitledPane(kit.words().of("chart.words"), sentences);
        words.setId("chart-words");
        words.setExpanded(false);
        words.setAnimated(false);
        chart.getChildren().setAll(headline, kit.text(view.subtitle(), "muted"), drawing, drawing.legend(kit), words);
    }

    private void arrange() {
        boolean none = model.listing()
                .get()
                .value()
                .map(TrialListing::trials)
                .filter(List::isEmpty)
                .isPresent();
        if (formView.isSelected()) {
            put(adding);
        } else if (none) {
            put(empty);
        } else if (tableView.isSelected()) {
            put(table);
        } else {
            arrangeChart();
        }
    }

    /** Where there is room the advice stands beside the chart, else it has a view of its own. */
    private void arrangeChart() {
        nextView.setVisible(!wide);
        nextView.setManaged(!wide);
        if (wide && nextView.isSelected()) {
            chartView.setSelected(true);
        }
        model.board()
                .get()
                .value()
                .ifPresent(board -> headline.setText(VisibleText.of(
                        wide
                                ? board.report().unit().label() + " ("
                                        + board.report().unit().board() + ")"
                                : kit.words()
                                        .of(
                                                "trials.headline",
                                                new ChartWords(kit.words())
                                                        .next(board.report().advice())))));
        picture.setFitToHeight(wide);
        picture.setVisible(wide || chartView.isSelected());
        picture.setManaged(picture.isVisible());
        beside.setVisible(wide || nextView.isSelected());
        beside.setManaged(beside.isVisible());
        HBox.setHgrow(beside, wide ? Priority.NEVER : Priority.ALWAYS);
        put(both);
    }

    private void put(Node view) {
        if (body.getChildren().size() != 1 || body.getChildren().get(0) != view) {
            body.getChildren().setAll(view);
        }
    }

    private static ScrollPane scroll() {
        ScrollPane pane = new ScrollPane();
        pane.setFitToWidth(true);
        pane.getStyleClass().add("plain-scroll");
        return pane;
    }

    private Node empty() {
        VBox box = new VBox(
                10,
                kit.heading("trials.empty"),
                kit.label("trials.empty.how"),
                kit.label("trials.empty.more", "muted"));
        box.setId("trials-empty");
        box.getStyleClass().add("empty");
        return box;
    }
}
