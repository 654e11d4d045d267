package bootmend.gui.view;

import javafx.geometry.Insets;
import javafx.geometry.Orientation;
import javafx.scene.control.TextArea;
import javafx.scene.text.Text;

/** Sentences as high as they need to be at any width, that can be selected and copied. */
final class Prose extends TextArea {

    private static final double EDGE = 2;

    private final Text measure = new Text();

    Prose(String text, String... styles) {
        super(text);
        setEditable(false);
        setWrapText(true);
        setFocusTraversable(false);
        setPrefRowCount(1);
        setPrefColumnCount(10);
        getStyleClass().add("prose");
        getStyleClass().addAll(styles);
        setAccessibleText(text);
    }

    @Override
    public Orientation getContentBias() {
        return Orientation.HORIZONTAL;
    }

    @Override
    protected double computePrefHeight(double width) {
        Insets insets = getInsets();
        double inside = (width < 0 ? 400 : width) - insets.getLeft() - insets.getRight() - 2 * EDGE;
        measure.setFont(getFont());
        measure.setText(getText());
        measure.setWrappingWidth(Math.max(40, inside));
        return Math.ceil(measure.getLayoutBounds().getHeight()) + insets.getTop() + insets.getBottom() + 2 * EDGE;
    }

    @Override
    protected double computeMinHeight(double width) {
        return computePrefHeight(width);
    }

    @Override
    protected double computeMinWidth(double height) {
        return 60;
    }
}
