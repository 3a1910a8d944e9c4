package fuelwright.estimate;

import fuelwright.table.Axis;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What to ride next: the few regions whose riding would shrink the uncertainty that matters most. A forecast by the fit's own covariance; nothing
 * is changed by it. Immutable.
 *
 * @param regions what helps most first; empty where another ride would hardly tell more
 * @param uncertaintyPercent weighted root-mean-square uncertainty of the cells now, %
 * @param uncertaintyAfterPercent the same when all regions have been ridden, %
 * @param beyond cells that can't be ridden, by what the rides show: never asked for
 * @param roadSpeedDoubtful whether a road speed is logged that shows no gears: none is named
 */
public record NextRide(
        List<Region> regions,
        double uncertaintyPercent,
        double uncertaintyAfterPercent,
        List<Integer> beyond,
        boolean roadSpeedDoubtful) {

    public NextRide {
        regions = List.copyOf(regions);
        beyond = List.copyOf(beyond);
    }

    /** With no doubt about the road speed. */
    public NextRide(
            List<Region> regions, double uncertaintyPercent, double uncertaintyAfterPercent, List<Integer> beyond) {
        this(regions, uncertaintyPercent, uncertaintyAfterPercent, beyond, false);
    }

    /** Nothing to suggest. */
    public static NextRide none() {
        return new NextRide(List.of(), 0, 0, List.of());
    }

    /**
     * A few neighbouring cells to hold the engine in, or to pull it through.
     *
     * @param cells in the table's order
     * @param load what the load band is of
     * @param seconds how long, in all
     * @param highLoad whether any of the cells is at high load
     * @param pulls whether it is pulled through, never held
     * @param gear where the rides show the gear ratios
     * @param uncertaintyPercent largest uncertainty of its cells before it is ridden, %
     * @param uncertaintyAfterPercent the same afterwards, %
     */
    public record Region(
            List<Integer> cells,
            Axis.Kind load,
            double speedFromRpm,
            double speedToRpm,
            double loadFrom,
            double loadTo,
            int seconds,
            boolean highLoad,
            boolean pulls,
            Optional<Gearing.Choice> gear,
            double uncertaintyPercent,
            double uncertaintyAfterPercent) {

        public Region {
            cells = List.copyOf(cells);
        }

        /** The region as a sentence for a rider. What the uncertainty becomes isn't said: readings of one stretch agree too well to promise it. */
        public String words() {
            return String.format(
                    Locale.ROOT,
                    pulls
                            ? "at least %d s in all, in pulls through %s rpm that are never held, with %s %s %s%s: uncertainty now ±%.1f %%%s"
                            : "at least %d s at %s rpm with %s %s %s%s: uncertainty now ±%.1f %%%s",
                    seconds,
                    span(speedFromRpm, speedToRpm),
                    load.words(),
                    span(loadFrom, loadTo),
                    load.unit().symbol(),
                    gear.map(g -> ", " + g.words()).orElse(""),
                    uncertaintyPercent,
                    highLoad ? ". High load: only on a dynamometer or a closed course" : "");
        }

        /** Both ends in whole figures; one of them where that says the same. */
        private static String span(double from, double to) {
            return Math.rint(from) == Math.rint(to)
                    ? String.format(Locale.ROOT, "%.0f", from)
                    : String.format(Locale.ROOT, "%.0f to %.0f", from, to);
        }
    }
}
