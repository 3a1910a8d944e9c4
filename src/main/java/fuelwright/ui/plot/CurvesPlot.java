package fuelwright.ui.plot;

import fuelwright.ui.theme.Theme;
import java.util.function.IntConsumer;
import javafx.scene.input.MouseEvent;

/** {@link Curves} on the screen. A click chooses the breakpoint below it. */
public final class CurvesPlot extends PlotPane {

    private final IntConsumer choose;
    private Curves curves;
    private int selected = -1;
    private Theme theme = Theme.LIGHT;

    /** @param choose told the cell of the breakpoint that was clicked */
    public CurvesPlot(IntConsumer choose) {
        super(120, 90);
        this.choose = choose;
        setMinSize(240, 160);
        setPrefSize(720, 520);
        addEventHandler(MouseEvent.MOUSE_PRESSED, e -> {
            requestFocus();
            int at = at(e.getX());
            if (at >= 0) {
                this.choose.accept(curves.cells().get(at));
            }
        });
    }

    /**
     * Shows them; null for nothing.
     *
     * @param selectedCell the cell that is chosen, −1 for none
     * @param words the same for those who can't see it
     */
    public void show(Curves curves, int selectedCell, Theme theme, String words) {
        this.curves = curves;
        this.theme = theme;
        this.selected = curves == null ? -1 : curves.cells().indexOf(selectedCell);
        setAccessibleText(words);
        redraw();
    }

    private int at(double x) {
        if (curves == null || curves.cells().isEmpty()) {
            return -1;
        }
        double first = curves.xs().get(0);
        double last = curves.xs().get(curves.xs().size() - 1);
        double room = getWidth() - CurvesPainter.LEFT - CurvesPainter.margin(curves);
        double value = first + (x - CurvesPainter.LEFT) / room * (last - first);
        int best = 0;
        for (int i = 1; i < curves.xs().size(); i++) {
            best = Math.abs(curves.xs().get(i) - value) < Math.abs(curves.xs().get(best) - value) ? i : best;
        }
        return best;
    }

    @Override
    public void paint(Ink ink, double width, double height) {
        if (curves != null) {
            new CurvesPainter(ink, curves, theme.palette(), width, height).paint(selected);
        }
    }
}
