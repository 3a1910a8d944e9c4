package fuelwright.safety;

/** Whether a mixture kept getting leaner against its target while load stayed where it was. */
final class SteadyRun {

    private static final double WITHIN_LOAD = 6;
    private static final double LEAST_S = 2.0;
    /** The leanest moment comes at its end. */
    private static final double END_SHARE = 0.7;
    /** By less, on a straight line through its readings, noise may have put the leanest moment there, ln(lambda). */
    private static final double GROWN_LOG = 0.017;

    private boolean grew;
    private int n;
    private double startS;
    private double endS;
    private double load;
    private double mostAtS;
    private double most;
    private double sumT;
    private double sumTT;
    private double sumY;
    private double sumTY;

    void clear() {
        grew = false;
        n = 0;
    }

    /** @param y ln(lambda / target) */
    void add(double timeS, double loadNow, double y) {
        boolean stays = n > 0 && Math.abs(loadNow - load) <= WITHIN_LOAD;
        if (!stays) {
            grew = grew();
            n = 0;
            startS = timeS;
            load = loadNow;
            most = Double.NEGATIVE_INFINITY;
            sumT = 0;
            sumTT = 0;
            sumY = 0;
            sumTY = 0;
        }
        double t = timeS - startS;
        n++;
        endS = timeS;
        sumT += t;
        sumTT += t * t;
        sumY += y;
        sumTY += t * y;
        if (y > most) {
            most = y;
            mostAtS = timeS;
        }
    }

    /** Whether it did so in any stretch of steady load up to now. */
    boolean grew() {
        double length = endS - startS;
        double spread = n * sumTT - sumT * sumT;
        double slope = spread > 0 ? (n * sumTY - sumT * sumY) / spread : 0;
        return grew
                || n > 0 && length >= LEAST_S && mostAtS - startS > END_SHARE * length && slope * length >= GROWN_LOG;
    }
}
