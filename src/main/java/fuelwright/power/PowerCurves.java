package fuelwright.power;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.power.PowerCurve.Point;
import fuelwright.power.PowerCurve.Source;
import fuelwright.ride.Role;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/** Makes a curve of a pull: from measured power, else measured torque, else from what the acceleration on the road took. */
public final class PowerCurves {

    /** Half-width of smoothing, rpm. */
    static final double HALF_WIDTH_RPM = 600;

    private static final double WIDER = 1.5;
    private static final double DISAGREE = 0.03;

    private PowerCurves() {}

    /** @param road what a road pull is worked out with; empty: only measured power or torque is used */
    public static Loaded<PowerCurve> of(Pull pull, Optional<RoadLoad> road) {
        double[] rpm = pull.values(Role.ENGINE_SPEED).orElseThrow();
        Optional<double[]> power = pull.values(Role.POWER).filter(PowerCurves::hasFigures);
        Optional<double[]> torque = pull.values(Role.TORQUE).filter(PowerCurves::hasFigures);
        if (power.isPresent()) {
            List<Sentence> remarks = new ArrayList<>();
            torque.flatMap(t -> disagreement(rpm, power.get(), t)).ifPresent(said -> remarks.add(Sentence.text(said)));
            return measured(pull, Source.POWER, rpm, power.get(), remarks);
        }
        if (torque.isPresent()) {
            double[] kw = torque.get();
            for (int i = 0; i < kw.length; i++) {
                kw[i] *= rpm[i] / PowerCurve.RPM_NM_PER_KW;
            }
            return measured(pull, Source.TORQUE, rpm, kw, List.of());
        }
        if (road.isPresent()) {
            return RoadPull.curve(pull, road.get());
        }
        return refused(
                pull,
                "neither power nor torque is logged in a unit that is stated",
                "state the unit of their columns, or give the mass for a road pull");
    }

    private static Loaded<PowerCurve> measured(
            Pull pull, Source source, double[] rpm, double[] kw, List<Sentence> remarks) {
        LocalQuadratic fit = new LocalQuadratic(rpm, kw);
        List<Point> points = points(
                rpm,
                x -> fit.at(x, HALF_WIDTH_RPM).value(),
                x -> fit.at(x, HALF_WIDTH_RPM).valueError(),
                x -> fit.at(x, WIDER * HALF_WIDTH_RPM).value());
        if (points.isEmpty()) {
            return refused(pull, "too few readings of power for a curve", "log faster, or pull longer");
        }
        return Loaded.of(new PowerCurve(pull, source, points, 1, remarks), List.of());
    }

    /** Points every 100 rpm within the pull. The error holds the scatter and how far wider smoothing would differ. */
    static List<Point> points(
            double[] rpm, DoubleUnaryOperator kw, DoubleUnaryOperator scatterKw, DoubleUnaryOperator widerKw) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double x : rpm) {
            low = Math.min(low, x);
            high = Math.max(high, x);
        }
        List<Point> points = new ArrayList<>();
        int step = PowerCurve.STEP_RPM;
        for (double x = Math.ceil(low / step) * step; x <= high; x += step) {
            double value = kw.applyAsDouble(x);
            double error = Math.hypot(scatterKw.applyAsDouble(x), value - widerKw.applyAsDouble(x));
            if (Double.isFinite(value) && Double.isFinite(error)) {
                points.add(new Point(x, value, error));
            }
        }
        return points;
    }

    static Loaded<PowerCurve> refused(Pull pull, String what, String todo) {
        return Loaded.refused(Issue.error(
                pull.ride().name(),
                0,
                0,
                String.format(Locale.ROOT, "The pull from %.1f s to %.1f s: %s", pull.startS(), pull.endS(), what),
                todo));
    }

    private static Optional<String> disagreement(double[] rpm, double[] kw, double[] nm) {
        double byTorque = 0;
        double byPower = 0;
        for (int i = 0; i < rpm.length; i++) {
            if (!Double.isNaN(kw[i]) && !Double.isNaN(nm[i])) {
                byPower += kw[i];
                byTorque += nm[i] * rpm[i] / PowerCurve.RPM_NM_PER_KW;
            }
        }
        double off = byTorque / byPower - 1;
        return Math.abs(off) <= DISAGREE || !Double.isFinite(off)
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "the logged torque would give %+.0f %% other power: torque at the wheel, or a wrong unit; power was used",
                        100 * off));
    }

    private static boolean hasFigures(double[] values) {
        int count = 0;
        for (double value : values) {
            count += Double.isNaN(value) ? 0 : 1;
        }
        return count >= values.length / 4 && count >= 12;
    }
}
