package fuelwright.ui.plot;

import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.function.IntConsumer;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;

/** A {@link Surface} on the screen: turned by dragging and by the arrow keys, zoomed by wheel and by + and −. A click chooses the nearest cell. */
public final class SurfacePlot extends PlotPane {

    private static final double DEGREES_PER_PIXEL = 0.4;
    private static final double KEY_DEG = 5;
    private static final double ZOOM_STEP = 1.12;

    private final IntConsumer choose;
    private Surface surface;
    private int selected = -1;
    private Theme theme = Theme.LIGHT;
    private Projection projection = Projection.usual();
    private double pressedX;
    private double pressedY;
    private double lastX;
    private double lastY;

    /** @param choose told the cell that was clicked */
    public SurfacePlot(IntConsumer choose) {
        super(120, 0);
        this.choose = choose;
        setFocusTraversable(true);
        setAccessibleHelp(Words.of("surface.help"));
        setMinSize(320, 240);
        setPrefSize(720, 520);
        addEventHandler(MouseEvent.MOUSE_PRESSED, this::pressed);
        addEventHandler(MouseEvent.MOUSE_DRAGGED, this::dragged);
        addEventHandler(MouseEvent.MOUSE_RELEASED, this::released);
        addEventHandler(ScrollEvent.SCROLL, e -> {
            zoom(e.getDeltaY() > 0 ? ZOOM_STEP : 1 / ZOOM_STEP);
            e.consume();
        });
        addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    }

    /** Shows it; null for nothing. */
    public void show(Surface surface, int selectedCell, Theme theme, String words) {
        this.surface = surface;
        this.selected = selectedCell;
        this.theme = theme;
        setAccessibleText(words);
        redraw();
    }

    /** How it is looked at. */
    public Projection projection() {
        return projection;
    }

    private void pressed(MouseEvent event) {
        requestFocus();
        pressedX = event.getX();
        pressedY = event.getY();
        lastX = pressedX;
        lastY = pressedY;
    }

    private void dragged(MouseEvent event) {
        turn((event.getX() - lastX) * DEGREES_PER_PIXEL, (event.getY() - lastY) * DEGREES_PER_PIXEL);
        lastX = event.getX();
        lastY = event.getY();
    }

    private void released(MouseEvent event) {
        if (surface != null && Math.hypot(event.getX() - pressedX, event.getY() - pressedY) < 3) {
            double scale = SurfacePainter.scale(getWidth(), getHeight());
            choose.accept(surface.nearest(
                    projection,
                    (event.getX() - getWidth() / 2) / scale,
                    (event.getY() - SurfacePainter.middle(getHeight())) / scale));
        }
    }

    private void key(KeyEvent event) {
        if (event.isControlDown() || event.isAltDown()) {
            return;
        }
        switch (event.getCode()) {
            case LEFT:
                turn(-KEY_DEG, 0);
                break;
            case RIGHT:
                turn(KEY_DEG, 0);
                break;
            case UP:
                turn(0, KEY_DEG);
                break;
            case DOWN:
                turn(0, -KEY_DEG);
                break;
            case PLUS:
            case ADD:
            case EQUALS:
                zoom(ZOOM_STEP);
                break;
            case MINUS:
            case SUBTRACT:
                zoom(1 / ZOOM_STEP);
                break;
            case HOME:
                projection = Projection.usual();
                redraw();
                break;
            default:
                return;
        }
        event.consume();
    }

    private void turn(double turnDeg, double tiltDeg) {
        projection = projection.turned(turnDeg, tiltDeg);
        redraw();
    }

    private void zoom(double factor) {
        projection = projection.zoomed(factor);
        redraw();
    }

    @Override
    public void paint(Ink ink, double width, double height) {
        if (surface != null) {
            new SurfacePainter(ink, surface, projection, theme.palette(), width, height).paint(selected);
        }
    }
}
