package bootmend.gui.view;

import bootmend.CardException;
import bootmend.config.VisibleText;
import bootmend.gui.model.StepPlaces;
import bootmend.gui.text.Words;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;

/** Makes the small pieces that every part of the window is put together from. */
final class Kit {

    /** Pixels beside a text that a field keeps for its caret. */
    private static final double CARET = 8;

    private static final double WIDEST = 600;

    private final Words words;

    Kit(Words words) {
        this.words = words;
    }

    Words words() {
        return words;
    }

    /** Says what to do with the window's own places. */
    StepPlaces steps() {
        return new StepPlaces(words);
    }

    /** The text under a key as a label that wraps. */
    Label label(String key, String... styles) {
        return text(words.of(key), styles);
    }

    /** A text as a label that wraps; whatever it came from, it is made safe to show. */
    Label text(String text, String... styles) {
        Label label = new Label(VisibleText.of(text));
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        label.getStyleClass().addAll(styles);
        return label;
    }

    /** A few words on one line, never cut. */
    Label words(String text, String... styles) {
        Label label = new Label(VisibleText.of(text));
        label.setMinWidth(Region.USE_PREF_SIZE);
        label.getStyleClass().addAll(styles);
        return label;
    }

    /** A heading of a part of a page. */
    Label heading(String key) {
        return label(key, "heading");
    }

    /** A button with the text under a key, its mnemonic and its accessible name. */
    Button button(String key, Runnable action) {
        Button button = new Button(words.of(key));
        button.setMnemonicParsing(true);
        button.setId(key.replace('.', '-'));
        button.setOnAction(event -> action.run());
        return button;
    }

    /** One line that can be selected and copied. */
    TextField fact(String text, String... styles) {
        TextField field = new TextField(VisibleText.of(text));
        field.setEditable(false);
        field.setFocusTraversable(false);
        field.getStyleClass().add("fact");
        field.getStyleClass().addAll(styles);
        Text measure = new Text(field.getText());
        field.prefWidthProperty()
                .bind(Bindings.createDoubleBinding(
                        () -> {
                            measure.setFont(field.getFont());
                            return Math.min(
                                    WIDEST, Math.ceil(measure.getLayoutBounds().getWidth()) + CARET);
                        },
                        field.fontProperty()));
        return field;
    }

    /** Sentences that can be selected and copied. */
    Prose prose(String text, String... styles) {
        return new Prose(VisibleText.of(text), styles);
    }

    /** A time of day on this computer's clock, to the second. */
    String time(Instant when) {
        return DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT)
                .withZone(ZoneId.systemDefault())
                .format(when);
    }

    /** What went wrong and what to do next. */
    Node problem(CardException error) {
        VBox box = new VBox(
                4, prose(sentence(error.getMessage()), "problem-what"), prose(steps().remedy(error), "problem-remedy"));
        box.getStyleClass().addAll("notice", "notice-problem");
        box.setMaxHeight(Region.USE_PREF_SIZE);
        return box;
    }

    /** A column that scrolls where it is too long, as wide as the place it gets, and takes what height is left in a box. */
    static ScrollPane scrolled(Node body, String style) {
        ScrollPane scroll = new ScrollPane(body);
        scroll.setFitToWidth(true);
        scroll.getStyleClass().add(style);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        return scroll;
    }

    /** A pane that is empty takes no room, not even the distance to the next. */
    static void takesRoomWhenFilled(Pane pane) {
        pane.managedProperty().bind(Bindings.isNotEmpty(pane.getChildren()));
    }

    /** A bar between things that pushes them apart. */
    static Region spacer() {
        Region spacer = new Region();
        HBox.setHgrow(spacer, Priority.ALWAYS);
        return spacer;
    }

    /** The clause with a capital letter in front and a full stop behind. */
    static String sentence(String clause) {
        if (clause.isEmpty()) {
            return clause;
        }
        String text = Character.toUpperCase(clause.charAt(0)) + clause.substring(1);
        return text.endsWith(".") ? text : text + ".";
    }
}
