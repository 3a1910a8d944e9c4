package fuelwright.work;

import fuelwright.power.Breathing;
import fuelwright.table.Axis;
import java.util.ArrayList;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.stream.IntStream;

/** What a part gave, by bands of load. */
public final class GainBands {

    private static final double[] THROTTLE = {0, 4, 9, 18, 35, 60, 85};
    private static final double[] PRESSURE = {0, 30, 45, 60, 75, 90};

    private GainBands() {}

    /**
     * A band, the upper edge left out.
     *
     * @param kind what load is
     * @param from lower edge, in the axis's unit
     * @param to upper edge; infinite for the highest band
     */
    public record Band(Axis.Kind kind, double from, double to) {
        /** Such as "throttle 4 to 9 %". */
        public String words() {
            String unit = " " + kind.unit().symbol();
            return kind.words() + " " + JobFacts.figure(from)
                    + (to == Double.POSITIVE_INFINITY ? unit + " and more" : " to " + JobFacts.figure(to) + unit);
        }
    }

    /**
     * What one job gave in a band.
     *
     * @param meanPercent plain mean of its known cells there
     * @param leastPercent the least of them
     * @param mostPercent the most of them
     * @param cells how many; at least one
     */
    public record Gain(Band band, double meanPercent, double leastPercent, double mostPercent, int cells) {}

    /** All bands of a kind of load, ascending. */
    public static List<Band> bands(Axis.Kind kind) {
        double[] from = kind == Axis.Kind.MANIFOLD_PRESSURE ? PRESSURE : THROTTLE;
        List<Band> bands = new ArrayList<>();
        for (int i = 0; i < from.length; i++) {
            bands.add(new Band(kind, from[i], i + 1 < from.length ? from[i + 1] : Double.POSITIVE_INFINITY));
        }
        return bands;
    }

    /** The bands in which anything is known, ascending. */
    public static List<Gain> of(Breathing gain) {
        List<Gain> gains = new ArrayList<>();
        for (Band band : bands(gain.axes().load().kind())) {
            DoubleSummaryStatistics in = IntStream.range(0, gain.cells())
                    .filter(gain::isKnown)
                    .filter(c ->
                            gain.axes().loadAt(c) >= band.from() && gain.axes().loadAt(c) < band.to())
                    .mapToDouble(gain::gainPercent)
                    .summaryStatistics();
            if (in.getCount() > 0) {
                gains.add(new Gain(band, in.getAverage(), in.getMin(), in.getMax(), (int) in.getCount()));
            }
        }
        return gains;
    }
}
