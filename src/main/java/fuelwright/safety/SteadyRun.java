package fuelwright.safety;

import java.util.Optional;

/** Whether a mixture kept getting leaner, by itself and against its target, while load stayed where it was. */
final class SteadyRun {

    private static final double WITHIN_LOAD = 6;
    private static final double LEAST_S = 2.0;
    /** The leanest moment comes at its end. */
    private static final double END_SHARE = 0.7;
    /** By less, on a straight line through its readings, noise may have put the leanest moment there, ln(lambda). */
    private static final double GROWN_LOG = 0.017;

    /**
     * How a mixture got leaner, on a straight line through its readings.
     *
     * @param from lambda at its beginning
     * @param to lambda at its end
     * @param lengthS how long, s
     */
    record Growth(double from, double to, double lengthS) {}

    private Optional<Growth> grew = Optional.empty();
    private int n;
    private double startS;
    private double endS;
    private double load;
    private double mostAtS;
    private double most;
    private final Line againstTarget = new Line();
    private final Line itself = new Line();

    void clear() {
        grew = Optional.empty();
        n = 0;
    }

    /** @param target lambda, or the limit where there is none */
    void add(double timeS, double loadNow, double lambda, double target) {
        boolean stays = n > 0 && Math.abs(loadNow - load) <= WITHIN_LOAD;
        if (!stays) {
            grew = grew();
            n = 0;
            startS = timeS;
            load = loadNow;
            most = Double.NEGATIVE_INFINITY;
            againstTarget.clear();
            itself.clear();
        }
        n++;
        endS = timeS;
        double y = Math.log(lambda / target);
        againstTarget.add(timeS - startS, y);
        itself.add(timeS - startS, Math.log(lambda));
        if (y > most) {
            most = y;
            mostAtS = timeS;
        }
    }

    /** The first stretch of steady load up to now in which it did so. */
    Optional<Growth> grew() {
        double length = endS - startS;
        boolean grows = n > 0
                && length >= LEAST_S
                && mostAtS - startS > END_SHARE * length
                && againstTarget.slope() * length >= GROWN_LOG
                && itself.slope() * length >= GROWN_LOG;
        return grew.isPresent() || !grows
                ? grew
                : Optional.of(new Growth(Math.exp(itself.at(0)), Math.exp(itself.at(length)), length));
    }

    /** Least squares, one reading after the other. */
    private static final class Line {
        private int n;
        private double sumT;
        private double sumTT;
        private double sumY;
        private double sumTY;

        void clear() {
            n = 0;
            sumT = 0;
            sumTT = 0;
            sumY = 0;
            sumTY = 0;
        }

        void add(double t, double y) {
            n++;
            sumT += t;
            sumTT += t * t;
            sumY += y;
            sumTY += t * y;
        }

        double slope() {
            double spread = n * sumTT - sumT * sumT;
            return spread > 0 ? (n * sumTY - sumT * sumY) / spread : 0;
        }

        double at(double t) {
            return sumY / n + slope() * (t - sumT / n);
        }
    }
}
