package fuelwright.ui.plot;

import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.layout.Region;

/** A {@link Plot} on the screen: fills its space and is drawn anew when that changes, or when {@link #redraw} is called. */
public abstract class PlotPane extends Region implements Plot {

    private final Canvas canvas = new Canvas();
    private final double leastWidth;
    private final double leastHeight;

    /**
     * @param leastWidth nothing is drawn in a narrower space, pixels
     * @param leastHeight nor in a lower one
     */
    protected PlotPane(double leastWidth, double leastHeight) {
        this.leastWidth = leastWidth;
        this.leastHeight = leastHeight;
        getChildren().add(canvas);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
    }

    @Override
    protected void layoutChildren() {
        canvas.setWidth(getWidth());
        canvas.setHeight(getHeight());
        redraw();
    }

    /** Draws everything anew. */
    protected final void redraw() {
        Ink ink = CanvasInk.on(canvas);
        if (canvas.getWidth() > leastWidth && canvas.getHeight() > leastHeight) {
            paint(ink, canvas.getWidth(), canvas.getHeight());
        }
    }
}
