package fuelwright.ui.plot;

import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;

/** A ride as lanes over time. Wheel and plus/minus zoom, dragging and arrow keys move, Home shows everything. */
public final class Timeline extends Region {

    private static final double WHEEL_ZOOM = 0.8;
    private static final double KEY_STEP = 0.15;

    private final Canvas canvas = new Canvas();
    private final ObjectProperty<Trace> trace = new SimpleObjectProperty<>();
    private final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(Theme.LIGHT);
    private final ObjectProperty<TimeWindow> window = new SimpleObjectProperty<>(TimeWindow.all(0, 1));
    private double crossX = -1;
    private double dragX;
    private TimeWindow dragWindow;
    private double markedFromS = Double.NaN;
    private double markedToS = Double.NaN;

    public Timeline() {
        getChildren().add(canvas);
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleText(Words.of("timeline.name"));
        setAccessibleHelp(Words.of("timeline.help"));
        setMinSize(240, 120);
        setPrefSize(720, 420);
        trace.addListener((p, old, now) -> traceChanged(old, now));
        theme.addListener((p, old, now) -> redraw());
        window.addListener((p, old, now) -> redraw());
        focusedProperty().addListener((p, old, now) -> redraw());
        addEventHandler(ScrollEvent.SCROLL, this::scrolled);
        addEventHandler(MouseEvent.MOUSE_PRESSED, e -> {
            requestFocus();
            dragX = e.getX();
            dragWindow = window.get();
        });
        addEventHandler(MouseEvent.MOUSE_DRAGGED, e -> {
            cross(e.getX());
            window.set(dragWindow.moved((dragX - e.getX()) / plotWidth()));
        });
        addEventHandler(MouseEvent.MOUSE_MOVED, e -> cross(e.getX()));
        addEventHandler(MouseEvent.MOUSE_EXITED, e -> cross(-1));
        addEventHandler(KeyEvent.KEY_PRESSED, this::key);
    }

    /** What is drawn; null for nothing. A new trace of the same length keeps the window of time. */
    public ObjectProperty<Trace> traceProperty() {
        return trace;
    }

    public ObjectProperty<Theme> themeProperty() {
        return theme;
    }

    public ObjectProperty<TimeWindow> windowProperty() {
        return window;
    }

    /** Marks a stretch and shows it with something around it. */
    public void mark(double fromS, double toS, double aroundS) {
        markedFromS = fromS;
        markedToS = toS;
        window.set(window.get().at(fromS - aroundS, toS - fromS + 2 * aroundS));
        redraw();
    }

    /** Nothing marked any more. */
    public void unmark() {
        markedFromS = Double.NaN;
        redraw();
    }

    private void traceChanged(Trace old, Trace now) {
        if (now != null) {
            RideClock clock = now.clock();
            boolean same = old != null
                    && old.clock().size() == clock.size()
                    && old.clock().last() == clock.last();
            if (!same) {
                markedFromS = Double.NaN;
                window.set(TimeWindow.all(clock.first(), clock.last()));
            }
        }
        redraw();
    }

    private double plotWidth() {
        return Math.max(1, getWidth() - TimelinePainter.LEFT - TimelinePainter.RIGHT);
    }

    private void scrolled(ScrollEvent event) {
        if (event.getDeltaY() != 0) {
            double around = window.get().timeAt(event.getX(), TimelinePainter.LEFT, plotWidth());
            window.set(window.get().zoomed(event.getDeltaY() > 0 ? WHEEL_ZOOM : 1 / WHEEL_ZOOM, around));
            event.consume();
        } else if (event.getDeltaX() != 0) {
            window.set(window.get().moved(-event.getDeltaX() / plotWidth()));
            event.consume();
        }
    }

    private void cross(double x) {
        crossX = x;
        redraw();
    }

    private void key(KeyEvent event) {
        if (event.isControlDown() || event.isAltDown()) {
            return;
        }
        TimeWindow now = window.get();
        double middle = (now.fromS() + now.toS()) / 2;
        switch (event.getCode()) {
            case LEFT:
                window.set(now.moved(-KEY_STEP));
                break;
            case RIGHT:
                window.set(now.moved(KEY_STEP));
                break;
            case PLUS:
            case ADD:
            case EQUALS:
            case UP:
                window.set(now.zoomed(WHEEL_ZOOM, middle));
                break;
            case MINUS:
            case SUBTRACT:
            case DOWN:
                window.set(now.zoomed(1 / WHEEL_ZOOM, middle));
                break;
            case HOME:
            case DIGIT0:
                window.set(now.whole());
                break;
            default:
                return;
        }
        event.consume();
    }

    @Override
    protected void layoutChildren() {
        canvas.setWidth(getWidth());
        canvas.setHeight(getHeight());
        redraw();
    }

    private void redraw() {
        GraphicsContext g = canvas.getGraphicsContext2D();
        g.clearRect(0, 0, canvas.getWidth(), canvas.getHeight());
        if (trace.get() == null || trace.get().lanes().isEmpty() || canvas.getWidth() < 200) {
            return;
        }
        new TimelinePainter(g, trace.get(), window.get(), theme.get().palette(), getWidth(), getHeight())
                .paint(crossX, markedFromS, markedToS);
        if (isFocused()) {
            g.setStroke(theme.get().palette().accent());
            g.setLineWidth(1);
            g.strokeRect(TimelinePainter.LEFT - 0.5, 0.5, plotWidth() + 1, getHeight() - 27);
        }
    }
}
