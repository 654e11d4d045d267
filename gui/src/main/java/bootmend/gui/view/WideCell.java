package bootmend.gui.view;

import javafx.scene.control.ListCell;
import javafx.scene.layout.Region;

/**
 * A list's cell whose content is as wide as the list and as high as it needs to be at that width.
 *
 * @param <T> what the list is of
 */
abstract class WideCell<T> extends ListCell<T> {

    /** Room for the list's scroll bar and edges. */
    private static final double EDGES = 24;

    private static final double LEAST = 80;

    /** Shows {@code content} in this cell. */
    final void show(Region content) {
        content.setMinWidth(0);
        content.setPrefWidth(1);
        setGraphic(content);
    }

    @Override
    protected double computePrefHeight(double width) {
        if (getGraphic() instanceof Region content && getListView() != null) {
            double inside =
                    Math.max(LEAST, getListView().getWidth() - EDGES - snappedLeftInset() - snappedRightInset());
            return Math.ceil(content.prefHeight(inside)) + snappedTopInset() + snappedBottomInset();
        }
        return super.computePrefHeight(width);
    }

    @Override
    protected double computePrefWidth(double height) {
        return 0;
    }
}
