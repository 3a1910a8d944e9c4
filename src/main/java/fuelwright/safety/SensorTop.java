package fuelwright.safety;

import fuelwright.unit.Sentence;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;

/** A sensor, or its scale, that shows no more than a figure which an engine can well exceed: what reads as much may be leaner by any amount. */
final class SensorTop implements Rule {

    /** A top from here on leaves room for what is judged. */
    private static final double LOW_LAMBDA = 1.25;

    private static final double SAME_LAMBDA = 0.003;
    private static final double NEAR_LAMBDA = 0.03;
    private static final double STANDS_S = 3;
    /** So many times as long at the top as just below it. */
    private static final double STANDS_RATIO = 3;

    private static final int LEAST_OVERRUNS = 3;

    @Override
    public List<Caution> judge(Dossier d) {
        return Say.bySensor(d, (r, s, out) -> sensor(d, r, s, out));
    }

    private static void sensor(Dossier d, int r, int s, List<Caution> out) {
        RideRows rows = d.rows(r);
        double[] lambda = rows.mixture(s);
        double top = Arrays.stream(lambda).filter(Double::isFinite).max().orElse(Double.NaN);
        if (!(top < LOW_LAMBDA && top > 1)) {
            return;
        }
        double at = rows.seconds(i -> rows.isRunning(i) && lambda[i] >= top - SAME_LAMBDA);
        double near =
                rows.seconds(i -> rows.isRunning(i) && lambda[i] < top - SAME_LAMBDA && lambda[i] >= top - NEAR_LAMBDA);
        boolean stands = at >= STANDS_S && at >= STANDS_RATIO * near;
        boolean inAir = OverrunReadings.of(rows, lambda).isAt(top - SAME_LAMBDA, LEAST_OVERRUNS);
        if (!stands && !inAir) {
            return;
        }
        double underLoad = underLoad(d, r, rows, lambda, top);
        boolean stop = underLoad >= d.limits.of(Limit.LEAN_FOR);
        out.add(new Caution(
                "sensor-top-low",
                stop ? Caution.Level.STOP : Caution.Level.CHECK,
                "The sensor shows no more",
                Sentence.of(
                        "The mixture of %s never goes above %s and stands there for %.1f s%s, %s: how lean it was then isn't"
                                + " known, and the correction covers only what was shown",
                        Say.sensor(rows.ride, s),
                        Say.lambda(top),
                        at,
                        inAir ? ", also on the overrun, where the exhaust is air" : "",
                        underLoad > 0 ? Say.seconds(underLoad) + " of it at high load" : "none of it at high load"),
                "See to the span of sensor, display and scale; where it can't show more, add fuel until it reads below its top before believing a figure",
                new TreeSet<>(),
                List.of()));
    }

    private static double underLoad(Dossier d, int r, RideRows rows, double[] lambda, double top) {
        double clearing = d.limits.of(Limit.FUEL_CUT_CLEARING);
        FuelCutTimes cuts = FuelCutTimes.of(rows.ride);
        double lastCut = Double.NEGATIVE_INFINITY;
        double sum = 0;
        for (int i = 0; i < rows.size; i++) {
            if (rows.isOverrun(i) || cuts.at(rows.timeS[i])) {
                lastCut = rows.timeS[i];
            }
            boolean counts = lambda[i] >= top - SAME_LAMBDA
                    && rows.isRunning(i)
                    && Math.abs(rows.timeS[i] - lastCut) >= clearing
                    && d.isHighLoad(r, rows.speedRpm[i], rows.throttlePercent[i], rows.pressureKpa[i]);
            sum += counts ? rows.stepS(i) : 0;
        }
        return sum;
    }
}
