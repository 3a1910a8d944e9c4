package fuelwright.power;

import fuelwright.airflow.Machine;
import fuelwright.airflow.PlateArea;
import fuelwright.airflow.ThrottleBody;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * Where more fuel is needed than a bigger bore can be the reason for: at the same pressures no more air passes an opening than its area grew by. What is
 * beyond that comes from elsewhere, most of all from an old table that was wrong, or was meant for another mixture.
 *
 * @param cells those cells
 * @param known how many cells anything is known of
 * @param areaPercent by how much the bore's area grew, %
 * @param worst the cell furthest beyond
 * @param worstPercent what it needs more, %
 * @param axes where the cells lie
 */
public record BeyondBore(
        SortedSet<Integer> cells, int known, double areaPercent, int worst, double worstPercent, Table axes) {

    public BeyondBore {
        cells = java.util.Collections.unmodifiableSortedSet(new TreeSet<>(cells));
    }

    /** Empty where no cell is beyond by more than its ±, or where the bores aren't both known. */
    public static Optional<BeyondBore> of(Machine machine, Breathing gain) {
        if (machine.before().isEmpty() || machine.after().isEmpty()) {
            return Optional.empty();
        }
        ThrottleBody before = machine.before().get();
        ThrottleBody after = machine.after().get();
        double areaPercent = 100 * (PlateArea.boreAreaMm2(after) / PlateArea.boreAreaMm2(before) - 1);
        List<Integer> beyond = IntStream.range(0, gain.cells())
                .filter(gain::isKnown)
                .filter(c -> excess(gain, c, mostPercent(before, after, areaPercent, gain.axes(), c)) > 0)
                .boxed()
                .toList();
        return beyond.stream()
                .max(Comparator.comparingDouble(
                        c -> excess(gain, c, mostPercent(before, after, areaPercent, gain.axes(), c))))
                .map(worst -> new BeyondBore(
                        new TreeSet<>(beyond),
                        gain.knownCells(),
                        areaPercent,
                        worst,
                        gain.gainPercent(worst),
                        gain.axes()));
    }

    private static double excess(Breathing gain, int cell, double mostPercent) {
        return gain.gainPercent(cell) - gain.gainErrorPercent(cell) - mostPercent;
    }

    /** A shaft, or another closed angle, may make the opening grow by more than the bore. */
    private static double mostPercent(
            ThrottleBody before, ThrottleBody after, double areaPercent, Table axes, int cell) {
        if (axes.load().kind() != Axis.Kind.THROTTLE) {
            return areaPercent;
        }
        double open = axes.loadAt(cell);
        double grown = 100 * (PlateArea.atThrottle(after, open) / PlateArea.atThrottle(before, open) - 1);
        return Double.isFinite(grown) ? Math.max(areaPercent, grown) : areaPercent;
    }

    /** A sentence without its stop. */
    public String sentence() {
        return String.format(
                Locale.ROOT,
                "In %d of %d known cells more fuel is needed than the bore can give (its area grew by %.0f %%): then part of it is the old table or its target, or another part, not the bore's air. Most: %+.1f %% at %.0f rpm, %.0f %s",
                cells.size(),
                known,
                areaPercent,
                worstPercent,
                axes.speedAt(worst),
                axes.loadAt(worst),
                axes.load().kind().unit().symbol());
    }

    /** The same beside a mean, a few words. */
    public String words() {
        return "in " + cells.size() + (cells.size() == 1 ? " cell" : " cells") + " more than the bore can give";
    }
}
