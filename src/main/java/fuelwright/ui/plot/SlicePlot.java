package fuelwright.ui.plot;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.function.IntConsumer;
import javafx.scene.input.MouseEvent;

/** A {@link Slice} on the screen. A click chooses the point below it. */
public final class SlicePlot extends PlotPane {

    private final IntConsumer choose;
    private Slice slice;
    private int selected = -1;
    private Theme theme = Theme.LIGHT;

    /** @param choose told the cell that was clicked */
    public SlicePlot(IntConsumer choose) {
        super(120, 0);
        this.choose = choose;
        setFocusTraversable(true);
        setMinSize(320, 240);
        setPrefSize(720, 520);
        addEventHandler(MouseEvent.MOUSE_PRESSED, e -> {
            requestFocus();
            int point = at(e.getX());
            if (point >= 0) {
                this.choose.accept(slice.cells().get(point));
            }
        });
    }

    /**
     * Shows it.
     *
     * @param slice null for nothing
     * @param selectedCell the cell that is chosen
     */
    public void show(Slice slice, int selectedCell, Theme theme) {
        this.slice = slice;
        this.theme = theme;
        selected = slice == null ? -1 : slice.cells().indexOf(selectedCell);
        setAccessibleText(words());
        redraw();
    }

    private String words() {
        if (slice == null || selected < 0) {
            return "";
        }
        Slice.Point p = slice.points().get(selected);
        return Words.of(
                "slice.words",
                slice.title(),
                slice.marks().get(selected),
                Figures.signed(p.fitted(), 1),
                Figures.plain(p.uncertainty(), 1),
                Figures.signed(p.proposed(), 1));
    }

    private int at(double x) {
        if (slice == null) {
            return -1;
        }
        double step = (getWidth() - SlicePainter.LEFT - SlicePainter.RIGHT)
                / slice.points().size();
        int point = (int) Math.floor((x - SlicePainter.LEFT) / step);
        return point >= 0 && point < slice.points().size() ? point : -1;
    }

    @Override
    public void paint(Ink ink, double width, double height) {
        if (slice != null) {
            new SlicePainter(ink, slice, theme.palette(), width, height).paint(selected);
        }
    }
}
