package fuelwright.power;

import fuelwright.issue.Loaded;
import fuelwright.power.PowerCurve.Point;
import fuelwright.power.PowerCurve.Source;
import fuelwright.ride.Role;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.fitting.PolynomialCurveFitter;
import org.apache.commons.math3.fitting.WeightedObservedPoints;
import org.apache.commons.math3.stat.descriptive.rank.Median;

/**
 * Power from a road pull. Engine speed n(t) is smoothed, its slope gives the acceleration; the overall ratio rpm per km/h is the middle one of
 * the pull, so that v = n/ratio has the fine steps of the engine speed. Newton's second law does the rest, see {@link RoadLoad}.
 */
final class RoadPull {

    /**
     * A sweep this even, as departure (root mean square) of n(t) from a straight line over its rise, is a controlled one: acceleration that varies
     * by ±3 % makes about 0.3 %.
     */
    private static final double EVEN = 0.003;
    /** Spread of the ratio, half of the middle 80 %, from which the wheel spun or the clutch slipped. */
    private static final double SLIP = 0.03;

    private static final double SLOWEST_KM_PER_H = 10;

    private RoadPull() {}

    static Loaded<PowerCurve> curve(Pull pull, RoadLoad road) {
        double[] rpm = pull.values(Role.ENGINE_SPEED).orElseThrow();
        double[] timeS = pull.times();
        Optional<double[]> speed = pull.values(Role.ROAD_SPEED);
        double[] ratios = speed.map(v -> ratios(rpm, v)).orElse(new double[0]);
        if (ratios.length < rpm.length / 4 || ratios.length < 6) {
            return PowerCurves.refused(
                    pull,
                    "neither power nor torque is logged in a unit that is stated, and road speed is missing",
                    "log one of them; without, a pull says nothing of power");
        }
        double even = unevenness(timeS, rpm);
        if (even < EVEN) {
            return PowerCurves.refused(
                    pull,
                    String.format(
                            Locale.ROOT,
                            "engine speed climbs evenly (within %.2f %% of its rise): a braked dyno's sweep, in which the brake takes what the engine"
                                    + " gives and the acceleration says nothing of power",
                            100 * even),
                    "log the dyno's power or torque, or pull on the road");
        }
        double ratio = new Median().evaluate(ratios);
        double spread = (ratios[ratios.length * 9 / 10] - ratios[ratios.length / 10]) / 2 / ratio;
        if (spread > SLIP) {
            return PowerCurves.refused(
                    pull,
                    String.format(
                            Locale.ROOT,
                            "engine speed over road speed varies by ±%.0f %%: the clutch slipped, the wheel spun, or road speed lags",
                            100 * spread),
                    "use another pull, or a road speed that follows");
        }
        return made(pull, road, timeS, rpm, ratio, spread);
    }

    private static Loaded<PowerCurve> made(
            Pull pull, RoadLoad road, double[] timeS, double[] rpm, double ratio, double spread) {
        double rate = (rpm[rpm.length - 1] - rpm[0]) / (timeS[timeS.length - 1] - timeS[0]);
        double halfWidthS = PowerCurves.HALF_WIDTH_RPM / rate;
        double mPerSPerRpm = 1 / ratio / 3.6;
        LocalQuadratic slope = new LocalQuadratic(timeS, rpm);
        double[] kw = new double[rpm.length];
        double[] wider = new double[rpm.length];
        double[] scatter = new double[rpm.length];
        double[] smooth = new double[rpm.length];
        for (int i = 0; i < rpm.length; i++) {
            LocalQuadratic.At at = slope.at(timeS[i], halfWidthS);
            LocalQuadratic.At wide = slope.at(timeS[i], 1.5 * halfWidthS);
            double v = at.value() * mPerSPerRpm;
            smooth[i] = at.value();
            kw[i] = road.powerKw(v, at.slope() * mPerSPerRpm);
            wider[i] = road.powerKw(v, wide.slope() * mPerSPerRpm);
            scatter[i] = v * road.effectiveMassKg() * at.slopeError() * mPerSPerRpm / 1000;
        }
        List<Point> points = PowerCurves.points(
                smooth, x -> between(smooth, kw, x), x -> between(smooth, scatter, x), x -> between(smooth, wider, x));
        if (points.isEmpty()) {
            return PowerCurves.refused(pull, "too few readings of engine speed for a curve", "log faster");
        }
        List<Sentence> remarks = new ArrayList<>(road.words());
        remarks.add(Sentence.of(
                "overall ratio %s from the pull itself, within ±%.1f %%",
                Measured.of(ratio, Unit.RPM_PER_KILOMETRE_PER_HOUR, 1), 100 * spread));
        PowerCurve curve = new PowerCurve(pull, Source.ROAD, points, 1, remarks);
        Point peak = curve.peakPower();
        double v = peak.rpm() * mPerSPerRpm;
        double drag = v * v * v * 0.5 * road.airDensityKgPerM3() * road.dragAreaM2() / 1000;
        remarks.add(Sentence.of(
                "at the peak 5 %% more mass is %+.1f %% power, 10 %% more drag area %+.1f %%, 1 %% of slope %+.1f %%",
                5 * (peak.powerKw() - drag) / peak.powerKw(),
                10 * drag / peak.powerKw(),
                v * road.massKg() * 9.80665 * 0.01 / 1000 / peak.powerKw() * 100));
        return Loaded.of(new PowerCurve(pull, Source.ROAD, points, 1, remarks), List.of());
    }

    /** Straight line between the neighbours of x among ascending places; NaN outside. */
    private static double between(double[] places, double[] values, double x) {
        for (int i = 1; i < places.length; i++) {
            if (places[i - 1] <= x && x <= places[i] && places[i] > places[i - 1]) {
                double share = (x - places[i - 1]) / (places[i] - places[i - 1]);
                return values[i - 1] + share * (values[i] - values[i - 1]);
            }
        }
        return Double.NaN;
    }

    private static double[] ratios(double[] rpm, double[] kmPerH) {
        double[] ratios = new double[rpm.length];
        int n = 0;
        for (int i = 0; i < rpm.length; i++) {
            if (kmPerH[i] >= SLOWEST_KM_PER_H) {
                ratios[n++] = rpm[i] / kmPerH[i];
            }
        }
        double[] sorted = Arrays.copyOf(ratios, n);
        Arrays.sort(sorted);
        return sorted;
    }

    /** Root mean square of how far a cubic through n(t) departs from its straight line, over the rise. */
    static double unevenness(double[] timeS, double[] rpm) {
        double length = timeS[timeS.length - 1] - timeS[0];
        WeightedObservedPoints points = new WeightedObservedPoints();
        for (int i = 0; i < rpm.length; i++) {
            points.add((timeS[i] - timeS[0]) / length, rpm[i]);
        }
        double[] straight = PolynomialCurveFitter.create(1).fit(points.toList());
        double[] cubic = PolynomialCurveFitter.create(3).fit(points.toList());
        double sum = 0;
        for (int i = 0; i < rpm.length; i++) {
            double s = (timeS[i] - timeS[0]) / length;
            double off = cubic[0] - straight[0] + s * (cubic[1] - straight[1] + s * (cubic[2] + s * cubic[3]));
            sum += off * off;
        }
        return Math.sqrt(sum / rpm.length) / Math.abs(straight[1]);
    }
}
