package fuelwright.ui.plot;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import javafx.scene.paint.Color;

/**
 * A table as a landscape, height by figure, ready to be drawn far to near (painter's algorithm: patches sorted by the depth of their
 * middles). Pure.
 *
 * @param speeds breakpoints of engine speed, ascending
 * @param loads breakpoints of load, ascending
 * @param heights −1 to 1, in the table's order
 * @param fills the colour of each cell
 * @param chosen cells to be marked
 * @param title name and unit of the heights
 * @param low what the floor means
 * @param high what the ceiling means
 */
public record Surface(
        List<Double> speeds,
        List<Double> loads,
        List<Double> heights,
        List<Color> fills,
        Set<Integer> chosen,
        String speedTitle,
        String loadTitle,
        String title,
        String low,
        String high) {

    public Surface {
        speeds = List.copyOf(speeds);
        loads = List.copyOf(loads);
        heights = List.copyOf(heights);
        fills = List.copyOf(fills);
        chosen = Set.copyOf(chosen);
        if (heights.size() != speeds.size() * loads.size() || fills.size() != heights.size()) {
            throw new IllegalArgumentException("heights " + heights.size() + ", fills " + fills.size() + " for "
                    + speeds.size() + " × " + loads.size());
        }
    }

    /** One patch between four cells: the number of its lowest, its corners as seen, and its depth. */
    record Patch(int cell, List<Projection.Seen> corners, double depth) {}

    /** −1 to 1 along an axis. */
    private static double place(List<Double> axis, int index) {
        double first = axis.get(0);
        double last = axis.get(axis.size() - 1);
        return 2 * (axis.get(index) - first) / (last - first) - 1;
    }

    /** Where a cell is seen. */
    Projection.Seen see(Projection projection, int cell) {
        return projection.see(
                place(speeds, cell % speeds.size()), place(loads, cell / speeds.size()), HEIGHT * heights.get(cell));
    }

    /** Flatter than wide. */
    static final double HEIGHT = 0.55;

    /** Far to near. */
    List<Patch> patches(Projection projection) {
        int n = speeds.size();
        List<Projection.Seen> seen = new ArrayList<>(heights.size());
        for (int cell = 0; cell < heights.size(); cell++) {
            seen.add(see(projection, cell));
        }
        List<Patch> patches = new ArrayList<>();
        for (int load = 0; load + 1 < loads.size(); load++) {
            for (int speed = 0; speed + 1 < n; speed++) {
                int cell = load * n + speed;
                List<Projection.Seen> corners =
                        List.of(seen.get(cell), seen.get(cell + 1), seen.get(cell + n + 1), seen.get(cell + n));
                patches.add(new Patch(
                        cell,
                        corners,
                        corners.stream()
                                .mapToDouble(Projection.Seen::depth)
                                .average()
                                .orElseThrow()));
            }
        }
        patches.sort(Comparator.comparingDouble(Patch::depth).reversed());
        return patches;
    }

    /** The cell seen nearest to a point given as {@link Projection.Seen}; of two in the same place the one in front. */
    int nearest(Projection projection, double x, double y) {
        int best = -1;
        double least = Double.POSITIVE_INFINITY;
        for (int cell = 0; cell < heights.size(); cell++) {
            Projection.Seen seen = see(projection, cell);
            double far = Math.hypot(seen.x() - x, seen.y() - y) + 0.02 * seen.depth();
            if (far < least) {
                least = far;
                best = cell;
            }
        }
        return best;
    }
}
