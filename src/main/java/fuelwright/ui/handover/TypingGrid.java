package fuelwright.ui.handover;

import fuelwright.ui.plot.GridShape;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.HeatMap;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.geometry.Bounds;
import javafx.geometry.Rectangle2D;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The table as it lies in the hardware, for one step of the handover: never so low that its figures can't be read. */
final class TypingGrid {

    private static final double WORDED_HEIGHT = 34;

    /** Of less than this the axis would leave nothing to be seen. */
    private static final double LEAST_SEEN = 3 * HeatGrid.AXIS_HEIGHT;

    private TypingGrid() {}

    static HeatGrid of(HandoverModel model, ReadOnlyObjectProperty<HeatMap> map, String id) {
        HeatGrid grid = new HeatGrid();
        grid.setId(id);
        grid.mapProperty().bind(map);
        grid.viewProperty().bind(model.viewProperty());
        grid.themeProperty().bind(model.session().themeProperty());
        grid.selectedProperty().bindBidirectional(model.cellProperty());
        grid.dimmedProperty().bind(model.session().staleProperty());
        Runnable size = () -> grid.setMinHeight(Math.max(grid.readableSize().getHeight(), withWords(grid)));
        grid.mapProperty().addListener((p, old, now) -> size.run());
        grid.viewProperty().addListener((p, old, now) -> size.run());
        size.run();
        VBox.setVgrow(grid, Priority.ALWAYS);
        return grid;
    }

    /** Where something stands below a figure, its rows must be high enough for it. */
    private static double withWords(HeatGrid grid) {
        HeatMap map = grid.mapProperty().get();
        if (map == null || map.cells().stream().allMatch(c -> c.below().isEmpty())) {
            return 0;
        }
        boolean speedDown = grid.viewProperty().get() == GridShape.View.SPEED_DOWN;
        return HeatGrid.AXIS_HEIGHT + WORDED_HEIGHT * (speedDown ? map.speeds() : map.loads()).size();
    }

    /** Where the page scrolls and the grid's lower end is out of sight, its breakpoints stand at the edge of what is seen. */
    static void standIn(HeatGrid grid, ScrollPane page) {
        Runnable look = () -> grid.seenProperty().set(seen(grid, page));
        page.vvalueProperty().addListener((p, old, now) -> look.run());
        page.viewportBoundsProperty().addListener((p, old, now) -> look.run());
        grid.boundsInParentProperty().addListener((p, old, now) -> look.run());
        page.getContent().layoutBoundsProperty().addListener((p, old, now) -> look.run());
    }

    private static Rectangle2D seen(HeatGrid grid, ScrollPane page) {
        Bounds whole = page.sceneToLocal(grid.localToScene(grid.getLayoutBounds()));
        double top = Math.max(0, -whole.getMinY());
        double bottom = Math.min(whole.getHeight(), page.getViewportBounds().getHeight() - whole.getMinY());
        return bottom - top < LEAST_SEEN ? null : new Rectangle2D(0, top, grid.getWidth(), bottom - top);
    }
}
