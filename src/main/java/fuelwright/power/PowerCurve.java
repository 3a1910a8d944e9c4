package fuelwright.power;

import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.List;

/**
 * Power and torque of a pull over engine speed, every 100 rpm. Where nothing is known at a speed, the speed isn't there.
 *
 * @param pull what it comes from
 * @param source how power was found
 * @param points ascending in engine speed, not empty
 * @param factor the correction that power and torque hold already; 1 for none
 * @param remarks assumptions and doubts, sentences
 */
public record PowerCurve(Pull pull, Source source, List<Point> points, double factor, List<Sentence> remarks) {

    /** rpm between points. */
    public static final int STEP_RPM = 100;

    /** kW = N·m·rpm/9549: 60000/(2π). */
    static final double RPM_NM_PER_KW = 60_000 / (2 * Math.PI);

    private static final double NEGLIGIBLE = 0.01;

    /** How power was found. */
    public enum Source {
        POWER("measured power"),
        TORQUE("measured torque"),
        ROAD("acceleration on the road");

        private final String words;

        Source(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * @param rpm engine speed
     * @param powerKw power, kW
     * @param errorKw its standard error, kW: scatter of the readings, and what another half-width of smoothing would give
     */
    public record Point(double rpm, double powerKw, double errorKw) {

        /** Torque at the engine speed, N·m. */
        public double torqueNm() {
            return powerKw * RPM_NM_PER_KW / rpm;
        }

        /** Standard error of torque, N·m. */
        public double torqueErrorNm() {
            return errorKw * RPM_NM_PER_KW / rpm;
        }
    }

    public PowerCurve {
        points = List.copyOf(points);
        remarks = List.copyOf(remarks);
        if (points.isEmpty()) {
            throw new IllegalArgumentException("points must not be empty");
        }
    }

    /** The point of most power, among those that are known well. */
    public Point peakPower() {
        return wellKnown().stream()
                .reduce((a, b) -> b.powerKw() > a.powerKw() ? b : a)
                .orElseThrow();
    }

    /** The point of most torque, among those that are known well. */
    public Point peakTorque() {
        return wellKnown().stream()
                .reduce((a, b) -> b.torqueNm() > a.torqueNm() ? b : a)
                .orElseThrow();
    }

    /** Whether power was still rising where the pull ended: its peak may lie beyond. */
    public boolean risesToTheEnd() {
        List<Point> known = wellKnown();
        return peakPower().rpm() == known.get(known.size() - 1).rpm();
    }

    /** Points whose error is at most twice the middle one, or 1 % of the most power: the ends of a pull are the least sure, and a peak shouldn't be their noise. */
    private List<Point> wellKnown() {
        double[] errors = points.stream().mapToDouble(Point::errorKw).sorted().toArray();
        double whole = points.stream().mapToDouble(Point::powerKw).max().orElseThrow();
        double most = Math.max(2 * errors[errors.length / 2], NEGLIGIBLE * whole);
        return points.stream().filter(p -> p.errorKw() <= most).toList();
    }

    /** This curve with a correction on top, said. */
    public PowerCurve times(double more, Sentence why) {
        List<Point> corrected = points.stream()
                .map(p -> new Point(p.rpm(), p.powerKw() * more, p.errorKw() * more))
                .toList();
        List<Sentence> said = new ArrayList<>(remarks);
        said.add(why);
        return new PowerCurve(pull, source, corrected, factor * more, said);
    }
}
