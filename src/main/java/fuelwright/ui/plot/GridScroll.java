package fuelwright.ui.plot;

import javafx.beans.value.ObservableValue;
import javafx.geometry.Dimension2D;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.geometry.Rectangle2D;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.StackPane;

/** A grid that scrolls where its place is too small for its figures to be read; its axes stay in sight. */
public final class GridScroll extends StackPane {

    private static final double LEAST_HEIGHT = 220;

    private final HeatGrid grid;
    private final ScrollPane scroll;
    private final Label beyond = new Label();

    /**
     * @param textSize how large text is: with it grows what a cell needs
     * @param over what lies over the grid and scrolls with it
     */
    public GridScroll(HeatGrid grid, ObservableValue<?> textSize, Node... over) {
        this.grid = grid;
        StackPane sheet = new StackPane(grid);
        sheet.getChildren().addAll(over);
        // Else the scroll pane would take the keyboard away from the cell that was clicked.
        sheet.addEventHandler(MouseEvent.MOUSE_PRESSED, MouseEvent::consume);
        scroll = new ScrollPane(sheet);
        scroll.setFitToWidth(true);
        scroll.setFitToHeight(true);
        scroll.setFocusTraversable(false);
        scroll.getStyleClass().addAll("plain-scroll", "edge-to-edge");
        setMinSize(0, LEAST_HEIGHT);
        beyond.getStyleClass().addAll("legend-stop", "strong", "beyond");
        beyond.setMouseTransparent(true);
        beyond.setVisible(false);
        StackPane.setAlignment(beyond, Pos.BOTTOM_RIGHT);
        getChildren().addAll(scroll, beyond);
        scroll.hvalueProperty().addListener((p, old, now) -> look());
        scroll.vvalueProperty().addListener((p, old, now) -> look());
        scroll.viewportBoundsProperty().addListener((p, old, now) -> look());
        grid.layoutBoundsProperty().addListener((p, old, now) -> look());
        grid.mapProperty().addListener((p, old, now) -> {
            size();
            look();
        });
        grid.viewProperty().addListener((p, old, now) -> size());
        grid.selectedProperty().addListener((p, old, now) -> reveal());
        textSize.addListener((p, old, now) -> size());
        size();
    }

    private void size() {
        Dimension2D least = grid.readableSize();
        grid.setMinSize(least.getWidth(), least.getHeight());
        grid.setPrefSize(least.getWidth(), least.getHeight());
    }

    /** Tells the grid which part of it is in sight. */
    private void look() {
        double width = Math.min(scroll.getViewportBounds().getWidth(), grid.getWidth());
        double height = Math.min(scroll.getViewportBounds().getHeight(), grid.getHeight());
        double x = Math.rint(scroll.getHvalue() * (grid.getWidth() - width));
        double y = Math.rint(scroll.getVvalue() * (grid.getHeight() - height));
        grid.seenProperty().set(new Rectangle2D(x, y, width, height));
        sayBeyond(x, y, width, height);
    }

    /** Stops that aren't in sight are told in the corner of the axes, where no cell is. */
    private void sayBeyond(double x, double y, double width, double height) {
        boolean scrolls = width < grid.getWidth() - 1 || height < grid.getHeight() - 1;
        String words = !scrolls || grid.mapProperty().get() == null
                ? ""
                : StopsBeyond.words(
                        grid.mapProperty().get(),
                        grid::middleOf,
                        new Rectangle2D(
                                x + HeatGrid.AXIS_WIDTH,
                                y,
                                Math.max(0, width - HeatGrid.AXIS_WIDTH),
                                Math.max(0, height - HeatGrid.AXIS_HEIGHT)));
        beyond.setText(words);
        beyond.setVisible(!words.isEmpty());
        double bar = getHeight() - scroll.getViewportBounds().getHeight();
        StackPane.setMargin(
                beyond,
                new Insets(0, 4 + getWidth() - scroll.getViewportBounds().getWidth(), bar, 0));
    }

    /** Scrolls until the selected cell is seen. */
    private void reveal() {
        int cell = grid.selectedProperty().get();
        HeatMap map = grid.mapProperty().get();
        if (map == null || cell < 0 || cell >= map.cells().size()) {
            return;
        }
        Rectangle2D at = grid.boundsOf(cell);
        // The axes cover the left and the lower edge of what is in sight.
        scroll.setHvalue(scrolled(
                scroll.getHvalue(),
                at.getMinX() - HeatGrid.AXIS_WIDTH,
                at.getMaxX(),
                grid.getWidth(),
                scroll.getViewportBounds().getWidth()));
        scroll.setVvalue(scrolled(
                scroll.getVvalue(),
                at.getMinY(),
                at.getMaxY() + HeatGrid.AXIS_HEIGHT,
                grid.getHeight(),
                scroll.getViewportBounds().getHeight()));
    }

    /** Where a scroll bar (0 to 1) must stand so that low to high is seen; where it stands if it is. */
    private static double scrolled(double now, double low, double high, double whole, double seen) {
        double hidden = whole - seen;
        if (hidden <= 0) {
            return 0;
        }
        double start = now * hidden;
        double moved = low < start ? low : high > start + seen ? high - seen : start;
        return Math.min(1, Math.max(0, moved / hidden));
    }
}
