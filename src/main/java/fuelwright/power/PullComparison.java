package fuelwright.power;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.power.PowerCurve.Point;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Two pulls compared where both were: what the change gave, and over which engine speeds it is more than the uncertainty.
 *
 * @param before the first pull
 * @param after the second
 * @param gains ascending in engine speed, not empty
 */
public record PullComparison(PowerCurve before, PowerCurve after, List<Gain> gains) {

    /** Standard errors from which a gain counts. */
    private static final double CLEAR = 2;

    /**
     * @param rpm engine speed
     * @param kw power after less before, kW
     * @param errorKw standard error of that, kW
     * @param percent the same in % of before
     */
    public record Gain(double rpm, double kw, double errorKw, double percent) {

        /** 1 for a gain, −1 for a loss, 0 where it is within twice its standard error. */
        int sign() {
            return Math.abs(kw) <= CLEAR * errorKw ? 0 : kw > 0 ? 1 : -1;
        }
    }

    /**
     * A stretch of engine speeds with clear gain, or clear loss.
     *
     * @param fromRpm first engine speed
     * @param toRpm last engine speed
     * @param meanPercent mean gain in it, negative for a loss
     * @param most the point of most gain or loss, kW
     */
    public record Band(double fromRpm, double toRpm, double meanPercent, Gain most) {}

    public PullComparison {
        gains = List.copyOf(gains);
    }

    /** Refused where the two can't be held against each other. */
    public static Loaded<PullComparison> of(PowerCurve before, PowerCurve after) {
        boolean road = before.source() == PowerCurve.Source.ROAD;
        if (road != (after.source() == PowerCurve.Source.ROAD)) {
            return Loaded.refused(Issue.error(
                    after.pull().ride().name(),
                    0,
                    0,
                    "One pull is measured, the other worked out on the road: their difference says nothing of the change",
                    "compare two pulls of the same kind"));
        }
        Map<Double, Point> first = new HashMap<>();
        before.points().forEach(p -> first.put(p.rpm(), p));
        List<Gain> gains = new ArrayList<>();
        for (Point point : after.points()) {
            Point old = first.get(point.rpm());
            if (old != null) {
                double kw = point.powerKw() - old.powerKw();
                gains.add(new Gain(
                        point.rpm(), kw, Math.hypot(point.errorKw(), old.errorKw()), 100 * kw / old.powerKw()));
            }
        }
        if (gains.isEmpty()) {
            return Loaded.refused(Issue.error(
                    after.pull().ride().name(),
                    0,
                    0,
                    "The two pulls have no engine speed in common",
                    "compare pulls over the same range"));
        }
        return Loaded.of(new PullComparison(before, after, gains), List.of());
    }

    /** Where the change pays: clear gain. */
    public List<Band> pays() {
        return bands(1);
    }

    /** Where it costs: clear loss. */
    public List<Band> costs() {
        return bands(-1);
    }

    private List<Band> bands(int sign) {
        List<Band> bands = new ArrayList<>();
        int first = 0;
        while (first < gains.size()) {
            int end = first;
            double sum = 0;
            Gain most = gains.get(first);
            while (end < gains.size() && gains.get(end).sign() == sign) {
                Gain gain = gains.get(end++);
                sum += gain.percent();
                most = sign * gain.kw() > sign * most.kw() ? gain : most;
            }
            if (end - first > 1) {
                bands.add(new Band(gains.get(first).rpm(), gains.get(end - 1).rpm(), sum / (end - first), most));
            }
            first = Math.max(end, first + 1);
        }
        return bands;
    }
}
