package fuelwright.ui.plot;

import javafx.geometry.Rectangle2D;
import javafx.scene.Group;
import javafx.scene.canvas.Canvas;

/** The breakpoints of a map larger than its place, drawn over its left and lower edge so that they stay in sight while it scrolls. */
final class StandingAxes extends Group {

    private final Canvas rows = new Canvas();
    private final Canvas columns = new Canvas();

    StandingAxes() {
        getChildren().addAll(rows, columns);
        setManaged(false);
        setMouseTransparent(true);
    }

    /**
     * @param seen the part of the map that is in sight
     * @param painter of the whole map
     */
    void paint(Rectangle2D seen, GridPainter painter, int selected) {
        rows.setWidth(GridPainter.LEFT);
        rows.setHeight(seen.getHeight());
        rows.relocate(seen.getMinX(), seen.getMinY());
        Ink left = CanvasInk.on(rows);
        painter.ground(left, GridPainter.LEFT - 2, seen.getHeight());
        left.save();
        left.translate(0, -seen.getMinY());
        painter.rowAxis(left, selected, (seen.getMinY() + seen.getMaxY() - GridPainter.BOTTOM) / 2);
        left.restore();

        columns.setWidth(seen.getWidth());
        columns.setHeight(GridPainter.BOTTOM);
        // Where all rows are in sight they cover the map's own, which may lie higher than the edge.
        columns.relocate(seen.getMinX(), Math.min(seen.getMaxY() - GridPainter.BOTTOM, painter.bottom()));
        Ink below = CanvasInk.on(columns);
        painter.ground(below, seen.getWidth(), GridPainter.BOTTOM);
        below.save();
        below.translate(-seen.getMinX(), -painter.bottom());
        painter.columnAxis(below, selected, (seen.getMinX() + GridPainter.LEFT + seen.getMaxX()) / 2);
        below.restore();
        painter.ground(below, GridPainter.LEFT - 2, GridPainter.BOTTOM);
    }
}
