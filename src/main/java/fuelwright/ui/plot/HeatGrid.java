package fuelwright.ui.plot;

import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.Set;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.Rectangle2D;
import javafx.scene.AccessibleAttribute;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.layout.Region;

/**
 * A grid of cells on a canvas, with one selected by mouse or arrow keys; with Shift, or by dragging, a block of them; by its breakpoint a whole row or column. Shows nothing while
 * {@link #mapProperty} is null.
 */
public final class HeatGrid extends Region implements Plot {

    /** What the breakpoints take at the left. */
    public static final double AXIS_WIDTH = GridPainter.LEFT;
    /** What the breakpoints take below. */
    public static final double AXIS_HEIGHT = GridPainter.BOTTOM;

    private static final double TALLEST_CELL = 60;
    private static final double DIMMED = 0.45;
    private static final double READABLE_WIDTH = 36;
    private static final double READABLE_HEIGHT = 21;
    /** With larger text no figure may be smaller than it would be with normal text, and the small one below keeps its place. */
    private static final double LARGER_WIDTH = 40;

    private static final double LARGER_HEIGHT = 23;

    private final Canvas canvas = new Canvas();
    private final StandingAxes axes = new StandingAxes();
    private final ObjectProperty<Rectangle2D> seen = new SimpleObjectProperty<>();
    private final ObjectProperty<HeatMap> map = new SimpleObjectProperty<>();
    private final ObjectProperty<GridShape.View> view = new SimpleObjectProperty<>(GridShape.View.CHART);
    private final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(Theme.LIGHT);
    private final IntegerProperty selected = new SimpleIntegerProperty(-1);
    private final ObjectProperty<Set<Integer>> block = new SimpleObjectProperty<>(Set.of());
    private final BooleanProperty dimmed = new SimpleBooleanProperty();
    private final ReadOnlyBooleanWrapper belowHidden = new ReadOnlyBooleanWrapper();
    /** Where the block started; −1 where there is none. */
    private int anchor = -1;

    private int hovered = -1;

    public HeatGrid() {
        getChildren().addAll(canvas, axes);
        getStyleClass().add("heat-grid");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.TABLE_VIEW);
        setAccessibleHelp(Words.of("grid.help"));
        setMinSize(320, 240);
        setPrefSize(720, 520);
        map.addListener((p, old, now) -> redraw());
        view.addListener((p, old, now) -> redraw());
        theme.addListener((p, old, now) -> redraw());
        selected.addListener((p, old, now) -> redraw());
        block.addListener((p, old, now) -> redraw());
        seen.addListener((p, old, now) -> stand());
        dimmed.addListener((p, old, now) -> canvas.setOpacity(now ? DIMMED : 1));
        focusedProperty().addListener((p, old, now) -> redraw());
        addEventHandler(MouseEvent.MOUSE_PRESSED, this::pressed);
        addEventHandler(MouseEvent.MOUSE_DRAGGED, e -> extend(cellAt(e.getX(), e.getY())));
        addEventHandler(MouseEvent.MOUSE_MOVED, e -> hover(cellAt(e.getX(), e.getY())));
        addEventHandler(MouseEvent.MOUSE_EXITED, e -> hover(-1));
        addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    }

    public ObjectProperty<HeatMap> mapProperty() {
        return map;
    }

    public ObjectProperty<GridShape.View> viewProperty() {
        return view;
    }

    public ObjectProperty<Theme> themeProperty() {
        return theme;
    }

    /** The selected cell, −1 where none is. */
    public IntegerProperty selectedProperty() {
        return selected;
    }

    /** The cells selected together; empty where one is alone. To be bound after {@link #selectedProperty}. */
    public ObjectProperty<Set<Integer>> blockProperty() {
        return block;
    }

    /** Whether the figures are out of date: then they are drawn faintly. */
    public BooleanProperty dimmedProperty() {
        return dimmed;
    }

    /** Whether rows are too low for the small figures below. */
    public ReadOnlyBooleanProperty belowHiddenProperty() {
        return belowHidden.getReadOnlyProperty();
    }

    /** The part of this region that is in sight, where it scrolls: the axes stay at its edges. Null where all of it is. */
    public ObjectProperty<Rectangle2D> seenProperty() {
        return seen;
    }

    private GridShape shape() {
        return new GridShape(map.get().speeds().size(), map.get().loads().size(), view.get());
    }

    private double cellWidth() {
        return cellWidth(getWidth());
    }

    private double cellHeight() {
        return cellHeight(getHeight());
    }

    private double cellWidth(double width) {
        return Math.floor((width - GridPainter.LEFT - GridPainter.RIGHT) / shape().columns());
    }

    private double cellHeight(double height) {
        double room = (height - GridPainter.TOP - GridPainter.BOTTOM) / shape().rows();
        return Math.floor(Math.min(TALLEST_CELL, room));
    }

    /** The cell at a point of this region; −1 beside the grid. */
    public int cellAt(double x, double y) {
        if (map.get() == null) {
            return -1;
        }
        int column = (int) Math.floor((x - GridPainter.LEFT) / cellWidth());
        int row = (int) Math.floor((y - GridPainter.TOP) / cellHeight());
        return shape().cell(column, row);
    }

    /** The middle of a cell, x and y, in this region. */
    public javafx.geometry.Point2D middleOf(int cell) {
        return new javafx.geometry.Point2D(
                GridPainter.LEFT + (shape().column(cell) + 0.5) * cellWidth(),
                GridPainter.TOP + (shape().row(cell) + 0.5) * cellHeight());
    }

    /** Where a cell is drawn, in this region. */
    public Rectangle2D boundsOf(int cell) {
        return new Rectangle2D(
                GridPainter.LEFT + shape().column(cell) * cellWidth(),
                GridPainter.TOP + shape().row(cell) * cellHeight(),
                Math.max(0, cellWidth()),
                Math.max(0, cellHeight()));
    }

    /** The width and height at which every figure can be read; that of the axes alone where there is no map. */
    public javafx.geometry.Dimension2D readableSize() {
        boolean empty = map.get() == null;
        boolean larger = Fonts.grown(1) > 1;
        double width = larger ? Fonts.grown(LARGER_WIDTH) : READABLE_WIDTH;
        double height = larger ? Fonts.grown(LARGER_HEIGHT) : READABLE_HEIGHT;
        return new javafx.geometry.Dimension2D(
                AXIS_WIDTH + GridPainter.RIGHT + (empty ? 0 : shape().columns() * Math.ceil(width)),
                GridPainter.TOP + AXIS_HEIGHT + (empty ? 0 : shape().rows() * Math.ceil(height)));
    }

    /** Moves the selection by so many columns and rows. */
    public void step(int right, int down) {
        if (map.get() != null && selected.get() >= 0) {
            move(selected.get(), right, down, false);
        }
    }

    /** Selects every cell. */
    public void selectAll() {
        if (map.get() != null) {
            select(shape().cell(0, 0));
            extend(shape().cell(shape().columns() - 1, shape().rows() - 1));
        }
    }

    private void pressed(MouseEvent event) {
        requestFocus();
        if (map.get() == null || line(event.getX(), event.getY())) {
            return;
        }
        int cell = cellAt(event.getX(), event.getY());
        if (cell >= 0) {
            if (event.isShiftDown()) {
                extend(cell);
            } else {
                select(cell);
            }
        }
    }

    /** A breakpoint stands for its whole row or column, wherever the axes stand while the map scrolls; false where there is none. */
    private boolean line(double x, double y) {
        int column = (int) Math.floor((x - GridPainter.LEFT) / cellWidth());
        int row = (int) Math.floor((y - GridPainter.TOP) / cellHeight());
        int lastColumn = shape().columns() - 1;
        int lastRow = shape().rows() - 1;
        Rectangle2D part = seen.get() == null ? new Rectangle2D(0, 0, getWidth(), getHeight()) : seen.get();
        boolean left = x < part.getMinX() + GridPainter.LEFT;
        boolean below =
                y >= Math.min(part.getMaxY() - GridPainter.BOTTOM, GridPainter.TOP + (lastRow + 1) * cellHeight());
        if (left && !below && row >= 0 && row <= lastRow) {
            select(shape().cell(lastColumn, row));
            extend(shape().cell(0, row));
        } else if (below && !left && column >= 0 && column <= lastColumn) {
            select(shape().cell(column, 0));
            extend(shape().cell(column, lastRow));
        }
        return left || below;
    }

    private void select(int cell) {
        block.set(Set.of());
        anchor = cell;
        selected.set(cell);
    }

    /** Selects everything between the anchor and a cell. */
    private void extend(int cell) {
        if (cell < 0 || selected.get() < 0) {
            return;
        }
        if (block.get().isEmpty()) {
            anchor = selected.get();
        }
        Set<Integer> cells = shape().between(anchor, cell);
        if (cells.size() == 1 && block.get().isEmpty()) {
            return;
        }
        selected.set(cell);
        block.set(cells.size() > 1 ? cells : Set.of());
    }

    private void hover(int cell) {
        if (cell != hovered) {
            hovered = cell;
            redraw();
        }
    }

    private void key(KeyEvent event) {
        if (map.get() == null || event.isControlDown() || event.isAltDown()) {
            return;
        }
        int cell = selected.get();
        switch (event.getCode()) {
            case LEFT:
                move(cell, -1, 0, event.isShiftDown());
                break;
            case RIGHT:
                move(cell, 1, 0, event.isShiftDown());
                break;
            case UP:
                move(cell, 0, -1, event.isShiftDown());
                break;
            case DOWN:
                move(cell, 0, 1, event.isShiftDown());
                break;
            case ESCAPE:
                select(-1);
                break;
            default:
                return;
        }
        event.consume();
    }

    private void move(int cell, int right, int down, boolean extending) {
        int next = cell < 0 ? shape().cell(0, shape().rows() - 1) : shape().moved(cell, right, down);
        if (extending && cell >= 0) {
            extend(next);
        } else {
            select(next);
        }
    }

    @Override
    protected void layoutChildren() {
        canvas.setWidth(getWidth());
        canvas.setHeight(getHeight());
        redraw();
    }

    private void redraw() {
        Ink ink = CanvasInk.on(canvas);
        if (canvas.getWidth() < 80) {
            return;
        }
        paint(ink, canvas.getWidth(), canvas.getHeight());
        belowHidden.set(map.get() != null
                && map.get().cells().stream()
                        .filter(c -> !c.below().isEmpty())
                        .findFirst()
                        .filter(c -> !GridPainter.hasRoomBelow(c, cellHeight()))
                        .isPresent());
        stand();
        notifyAccessibleAttributeChanged(AccessibleAttribute.TEXT);
    }

    @Override
    public void paint(Ink ink, double width, double height) {
        if (map.get() == null) {
            return;
        }
        painter(ink, width, height).paint(chosen(), block.get(), hovered, isFocused());
    }

    private GridPainter painter(Ink ink, double width, double height) {
        return new GridPainter(ink, map.get(), shape(), theme.get().palette(), cellWidth(width), cellHeight(height));
    }

    private int chosen() {
        return selected.get() < map.get().cells().size() ? selected.get() : -1;
    }

    /** Draws the axes where the edges in sight are. */
    private void stand() {
        Rectangle2D part = seen.get();
        boolean scrolls = part != null
                && map.get() != null
                && (part.getWidth() < getWidth() - 1 || part.getHeight() < getHeight() - 1);
        axes.setVisible(scrolls);
        if (scrolls) {
            axes.paint(part, painter(null, getWidth(), getHeight()), chosen());
        }
    }

    @Override
    public Object queryAccessibleAttribute(AccessibleAttribute attribute, Object... parameters) {
        if (attribute == AccessibleAttribute.TEXT && map.get() != null) {
            int cell = selected.get();
            return cell >= 0 && cell < map.get().cells().size()
                    ? map.get().cells().get(cell).words()
                    : "";
        }
        return super.queryAccessibleAttribute(attribute, parameters);
    }
}
