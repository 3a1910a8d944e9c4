package fuelwright.ui.plot;

import java.util.List;

/**
 * Several curves over one axis, whose breakpoints stand at their true distances. Pure.
 *
 * @param xs ascending, at least two
 * @param lines what is drawn, the quiet ones first
 * @param xTitle name and unit of the axis
 * @param yTitle name and unit of the figures
 * @param cells the table's cell of each breakpoint on the bold line; empty where there is none
 */
public record Curves(List<Double> xs, List<Line> lines, String xTitle, String yTitle, List<Integer> cells) {

    /** How much a line is looked at. */
    public enum Weight {
        /** One of many. */
        QUIET,
        /** One of the chosen. */
        CHOSEN,
        /** The one. */
        BOLD
    }

    /**
     * One curve.
     *
     * @param name what stands at its end; empty for nothing
     * @param ys a figure for each breakpoint
     */
    public record Line(String name, List<Double> ys, Weight weight) {
        public Line {
            ys = List.copyOf(ys);
        }
    }

    public Curves {
        xs = List.copyOf(xs);
        lines = List.copyOf(lines);
        cells = List.copyOf(cells);
        for (Line line : lines) {
            if (line.ys().size() != xs.size()) {
                throw new IllegalArgumentException(
                        "ys " + line.ys().size() + " of " + line.name() + ", needed " + xs.size());
            }
        }
    }

    double lowest() {
        return lines.stream()
                .flatMap(l -> l.ys().stream())
                .mapToDouble(y -> y)
                .min()
                .orElse(0);
    }

    double highest() {
        return lines.stream()
                .flatMap(l -> l.ys().stream())
                .mapToDouble(y -> y)
                .max()
                .orElse(1);
    }

    /** A round step, 1, 2 or 5 times a power of ten, that divides the span into at most {@code most} parts. */
    static double step(double span, int most) {
        if (!(span > 0)) {
            return 1;
        }
        double power = Math.pow(10, Math.floor(Math.log10(span / most)));
        for (double factor : new double[] {1, 2, 5, 10}) {
            if (span / (factor * power) <= most + 1e-9) {
                return factor * power;
            }
        }
        return 10 * power;
    }
}
