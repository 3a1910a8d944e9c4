package fuelwright.ui.plot;

import fuelwright.ui.theme.Palette;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The strip above the lanes with a mark for each moment that is warned of: a filled triangle for Stop, an open ring for the others. Marks
 * that would lie on each other are drawn as one, Stop first.
 */
final class MarkStrip {

    private static final double SIZE = 11;

    private record Placed(double x, Trace.Mark mark) {}

    private final TimeWindow window;
    private final double left;
    private final double width;
    private final List<Placed> placed = new ArrayList<>();

    MarkStrip(Trace trace, TimeWindow window, double left, double width) {
        this.window = window;
        this.left = left;
        this.width = width;
        // No slot as wide as a mark ever holds two, so only a slot and those beside it can be in the way.
        Placed[] slots = new Placed[(int) (width / SIZE) + 3];
        for (Trace.Mark mark : trace.marks()) {
            double x = x(mark);
            if (x < left || x > left + width) {
                continue;
            }
            int slot = (int) ((x - left) / SIZE) + 1;
            if (isFree(slots[slot - 1], x) && isFree(slots[slot], x) && isFree(slots[slot + 1], x)) {
                slots[slot] = new Placed(x, mark);
                placed.add(slots[slot]);
            }
        }
    }

    private static boolean isFree(Placed there, double x) {
        return there == null || Math.abs(there.x() - x) >= SIZE;
    }

    private double x(Trace.Mark mark) {
        return window.xOf((mark.fromS() + mark.toS()) / 2, left, width);
    }

    void paint(Ink g, Palette palette, double bottom) {
        placed.forEach(p -> sign(g, palette, p.x(), bottom, p.mark().stop()));
    }

    /** A mark around {@code x}: a triangle for a Stop, else a ring. */
    static void sign(Ink g, Palette palette, double x, double bottom, boolean stop) {
        double top = bottom - SIZE - 2;
        if (stop) {
            g.setFill(palette.stop());
            g.fillPolygon(new double[] {x - SIZE / 2 - 1, x + SIZE / 2 + 1, x}, new double[] {top, top, top + SIZE}, 3);
        } else {
            g.setStroke(palette.check());
            g.setLineWidth(2);
            g.strokeOval(x - 4, top + 1, 8, 8);
        }
    }

    /** The mark at a place of the strip. */
    Optional<Trace.Mark> at(double x) {
        return placed.stream()
                .filter(p -> Math.abs(p.x() - x) <= SIZE / 2 + 2)
                .min(Comparator.comparingDouble(p -> Math.abs(p.x() - x)))
                .map(Placed::mark);
    }
}
