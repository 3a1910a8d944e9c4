package fuelwright.safety;

import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * A reading that hardly moves though the engine goes from high load to overrun, or from one target to quite another: a sensor that is dead, or a
 * column that holds no reading. A display that flickers by a digit isn't frozen to the letter, see {@link SensorHealth}.
 */
final class SensorStill implements Rule {

    private static final double STILL_LAMBDA = 0.012;
    private static final double STILL_S = 20;
    private static final double OVERRUN_S = 1.5;
    private static final double TARGETS_APART = 0.06;
    private static final double RICH_END = 0.70;

    @Override
    public List<Caution> judge(Dossier d) {
        return Say.bySensor(d, (r, s, out) -> sensor(d, r, s, out));
    }

    private static void sensor(Dossier d, int r, int s, List<Caution> out) {
        RideRows rows = d.rows(r);
        double[] lambda = rows.mixture(s);
        List<Caution.Moment> moments = new ArrayList<>();
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        int start = 0;
        for (int i = 0; i <= lambda.length; i++) {
            boolean ends = i == lambda.length || lambda[i] - least > STILL_LAMBDA || most - lambda[i] > STILL_LAMBDA;
            if (ends) {
                boolean inside = most > least && least > RICH_END && most < d.limits.of(Limit.SENSOR_TOP);
                if (inside && rows.timeS[i - 1] - rows.timeS[start] >= STILL_S && isOdd(d, r, start, i)) {
                    moments.add(rows.moment(r, start, i - 1, most));
                }
                start = i;
                least = Double.POSITIVE_INFINITY;
                most = Double.NEGATIVE_INFINITY;
            }
            if (i < lambda.length && lambda[i] > 0) {
                least = Math.min(least, lambda[i]);
                most = Math.max(most, lambda[i]);
            }
        }
        if (!moments.isEmpty()) {
            moments.sort((a, b) -> Double.compare(b.lengthS(), a.lengthS()));
            out.add(new Caution(
                    "sensor-still",
                    Caution.Level.STOP,
                    "The sensor hardly moves",
                    Sentence.of(
                            "The mixture of %s stayed within %s for %s though load went from high to low: that can't be what was burnt",
                            Say.sensor(rows.ride, s),
                            Measured.of(STILL_LAMBDA, Unit.LAMBDA, 3),
                            Say.seconds(moments.get(0).lengthS())),
                    "See whether the column is a sensor's reading; then see to the sensor, its heater and its wiring, and ride again",
                    new TreeSet<>(),
                    moments));
        }
    }

    /** High load, and overrun or a target that is quite another, within one stretch. */
    private static boolean isOdd(Dossier d, int r, int from, int to) {
        RideRows rows = d.rows(r);
        double high = 0;
        double overrun = 0;
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = from; i < to; i++) {
            if (rows.isRunning(i)) {
                overrun += rows.isOverrun(i) ? rows.stepS(i) : 0;
                high += d.isHighLoad(r, rows.speedRpm[i], rows.throttlePercent[i], rows.pressureKpa[i])
                        ? rows.stepS(i)
                        : 0;
                double target = d.targetAt(d.nearestCell(rows.speedRpm[i], rows.load[i]));
                least = target < least ? target : least;
                most = target > most ? target : most;
            }
        }
        return high >= d.limits.of(Limit.LEAN_FOR) && (overrun >= OVERRUN_S || most - least >= TARGETS_APART);
    }
}
