package fuelwright.ui.plot;

import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.Consumer;
import javafx.animation.AnimationTimer;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Region;

/**
 * A ride as lanes over time. Wheel and plus/minus zoom, dragging and arrow keys move, Home shows everything; Shift with the arrow keys moves
 * the crosshair, N and P go to the next and previous mark. However often something changes, it is drawn once a frame; the crosshair lies on a
 * canvas of its own.
 */
public final class Timeline extends Region implements Plot {

    private static final double WHEEL_ZOOM = 0.8;
    private static final double KEY_STEP = 0.15;
    private static final double CROSS_STEP = 0.01;

    private final Canvas canvas = new Canvas();
    private final Canvas over = new Canvas();
    private final ObjectProperty<Trace> trace = new SimpleObjectProperty<>();
    private final ObjectProperty<Theme> theme = new SimpleObjectProperty<>(Theme.LIGHT);
    private final ObjectProperty<TimeWindow> window = new SimpleObjectProperty<>(TimeWindow.all(0, 1));
    private Consumer<Trace.Mark> onMark = mark -> {};
    private boolean stale = true;
    /** Draws with the next frame, once, however much changed. */
    private final AnimationTimer frame = new AnimationTimer() {
        @Override
        public void handle(long now) {
            stop();
            draw();
        }
    };

    private double crossX = -1;
    private double dragX;
    private TimeWindow dragWindow;
    private double markedFromS = Double.NaN;
    private double markedToS = Double.NaN;
    private boolean markedAsStop = true;

    public Timeline() {
        // Not managed: their new size must not ask for another layout in the middle of one, or later wishes to be drawn
        // get lost.
        canvas.setManaged(false);
        over.setManaged(false);
        getChildren().addAll(canvas, over);
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
            markAt(e.getX(), e.getY()).ifPresent(onMark);
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

    /** Who hears of a mark that was chosen. */
    public void setOnMark(Consumer<Trace.Mark> listener) {
        onMark = listener;
    }

    private Optional<Trace.Mark> markAt(double x, double y) {
        return trace.get() == null || y > TimelinePainter.TOP
                ? Optional.empty()
                : new MarkStrip(trace.get(), window.get(), TimelinePainter.left(), plotWidth()).at(x);
    }

    /** Marks a stretch of a Stop caution and shows it with something around it. */
    public void mark(double fromS, double toS, double aroundS) {
        mark(fromS, toS, aroundS, true);
    }

    /** Marks a stretch of a Stop caution, or of a milder one, and shows it with something around it. */
    public void mark(double fromS, double toS, double aroundS, boolean stop) {
        markedAsStop = stop;
        RideClock clock = trace.get() == null ? null : trace.get().clock();
        markedFromS = clock == null ? fromS : clock.shown(fromS);
        markedToS = markedFromS + toS - fromS;
        window.set(window.get().at(markedFromS - aroundS, toS - fromS + 2 * aroundS));
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
        return Math.max(1, getWidth() - TimelinePainter.left() - TimelinePainter.RIGHT);
    }

    private void scrolled(ScrollEvent event) {
        if (event.getDeltaY() != 0) {
            double around = window.get().timeAt(event.getX(), TimelinePainter.left(), plotWidth());
            window.set(window.get().zoomed(event.getDeltaY() > 0 ? WHEEL_ZOOM : 1 / WHEEL_ZOOM, around));
            event.consume();
        } else if (event.getDeltaX() != 0) {
            window.set(window.get().moved(-event.getDeltaX() / plotWidth()));
            event.consume();
        }
    }

    private void cross(double x) {
        crossX = x;
        frame.start();
    }

    /** Moves the crosshair by a share of the width. */
    private void stepCross(double share) {
        double from = crossX < 0 ? TimelinePainter.left() + plotWidth() / 2 : crossX;
        double to = from + share * plotWidth();
        cross(Math.max(TimelinePainter.left(), Math.min(TimelinePainter.left() + plotWidth(), to)));
        if (trace.get() != null) {
            int row = trace.get().clock().nearest(window.get().timeAt(crossX, TimelinePainter.left(), plotWidth()));
            setAccessibleText(row < 0 ? Words.of("timeline.name") : ReadOut.words(trace.get(), row));
        }
    }

    /** Goes to the next mark (or the one before) of the middle of what is shown. */
    private void stepMark(boolean forward) {
        if (trace.get() == null) {
            return;
        }
        double middle =
                Double.isNaN(markedFromS) ? (window.get().fromS() + window.get().toS()) / 2 : markedFromS;
        Comparator<Trace.Mark> order = Comparator.comparingDouble(Trace.Mark::fromS);
        trace.get().marks().stream()
                .filter(m -> forward ? m.fromS() > middle + 1e-9 : m.fromS() < middle - 1e-9)
                .min(forward ? order : order.reversed())
                .ifPresent(onMark);
    }

    private void key(KeyEvent event) {
        if (event.isControlDown() || event.isAltDown()) {
            return;
        }
        TimeWindow now = window.get();
        double middle = (now.fromS() + now.toS()) / 2;
        if (event.isShiftDown() && (event.getCode() == KeyCode.LEFT || event.getCode() == KeyCode.RIGHT)) {
            stepCross(event.getCode() == KeyCode.LEFT ? -CROSS_STEP : CROSS_STEP);
            event.consume();
            return;
        }
        switch (event.getCode()) {
            case PAGE_UP:
                window.set(now.moved(-1));
                break;
            case PAGE_DOWN:
                window.set(now.moved(1));
                break;
            case END:
                window.set(now.at(now.lastS(), now.lengthS()));
                break;
            case N:
                stepMark(true);
                break;
            case P:
                stepMark(false);
                break;
            case ESCAPE:
                if (crossX < 0) {
                    return;
                }
                cross(-1);
                break;
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
        if (canvas.getWidth() != getWidth() || canvas.getHeight() != getHeight()) {
            for (Canvas one : new Canvas[] {canvas, over}) {
                one.setWidth(getWidth());
                one.setHeight(getHeight());
            }
            stale = true;
        }
        draw();
    }

    private void draw() {
        if (stale) {
            stale = false;
            paint();
        }
        paintCross();
    }

    private void redraw() {
        stale = true;
        frame.start();
    }

    private boolean isEmpty() {
        return trace.get() == null || trace.get().lanes().isEmpty() || canvas.getWidth() < 200;
    }

    /** Draws everything but the crosshair on the screen. */
    void paint() {
        Ink ink = CanvasInk.on(canvas);
        if (isEmpty()) {
            return;
        }
        paint(ink, getWidth(), getHeight());
        if (isFocused()) {
            ink.setStroke(theme.get().palette().accent());
            ink.setLineWidth(1);
            double top = TimelinePainter.TOP - 0.5;
            ink.strokeRect(
                    TimelinePainter.left() - 0.5,
                    top,
                    plotWidth() + 1,
                    getHeight() - TimelinePainter.BOTTOM - top - 0.5);
        }
    }

    @Override
    public void paint(Ink ink, double width, double height) {
        if (trace.get() != null && !trace.get().lanes().isEmpty()) {
            Palette palette = theme.get().palette();
            new TimelinePainter(ink, trace.get(), window.get(), palette, width, height)
                    .paint(markedFromS, markedToS, markedAsStop ? palette.stop() : palette.check());
        }
    }

    private void paintCross() {
        Ink ink = CanvasInk.on(over);
        boolean inside = crossX >= TimelinePainter.left() && crossX <= TimelinePainter.left() + plotWidth();
        if (isEmpty() || !inside) {
            return;
        }
        int row = trace.get().clock().nearest(window.get().timeAt(crossX, TimelinePainter.left(), plotWidth()));
        if (row >= 0) {
            new ReadOut(ink, trace.get(), theme.get().palette(), getWidth(), getHeight() - TimelinePainter.BOTTOM)
                    .paint(crossX, row);
        }
    }
}
