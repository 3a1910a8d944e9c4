package fuelwright.ui.plot;

import java.util.List;

/**
 * One row or column of a table as curves: what was fitted and how sure it is, what is proposed, and the readings behind it. Along the line
 * the table's breakpoints stand at even distances: position 0 is the first, 1 the second.
 *
 * @param title what the line is
 * @param axisTitle name and unit of the axis that it goes along
 * @param marks the axis's breakpoints as text
 * @param points one for each breakpoint
 * @param dots readings
 * @param cells the cell of each point
 */
public record Slice(
        String title, String axisTitle, List<String> marks, List<Point> points, List<Dot> dots, List<Integer> cells) {

    /**
     * At one breakpoint, all in %.
     *
     * @param fitted the fitted shortfall
     * @param uncertainty its standard error
     * @param proposed the proposed change
     * @param inferred whether nobody rode there
     */
    public record Point(double fitted, double uncertainty, double proposed, boolean inferred) {}

    /** A reading: position along the line, shortfall in %. */
    public record Dot(double position, double percent) {}

    public Slice {
        marks = List.copyOf(marks);
        points = List.copyOf(points);
        dots = List.copyOf(dots);
        cells = List.copyOf(cells);
        if (marks.size() != points.size() || cells.size() != points.size()) {
            throw new IllegalArgumentException("marks " + marks.size() + ", cells " + cells.size() + ", points "
                    + points.size() + " must be as many");
        }
    }

    /** Half the height shown: the smallest of 10, 20, 40 and 80 % that holds the curves and nine in ten of the readings. */
    public double reach() {
        double most = points.stream()
                .mapToDouble(p ->
                        Math.max(Math.abs(p.proposed()), Math.abs(p.fitted()) + Math.min(2 * p.uncertainty(), 20)))
                .max()
                .orElse(0);
        double[] sizes =
                dots.stream().mapToDouble(d -> Math.abs(d.percent())).sorted().toArray();
        if (sizes.length > 0) {
            most = Math.max(most, sizes[(int) (0.9 * (sizes.length - 1))]);
        }
        return most <= 10 ? 10 : most <= 20 ? 20 : most <= 40 ? 40 : 80;
    }
}
