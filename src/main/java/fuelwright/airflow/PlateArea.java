package fuelwright.airflow;

/**
 * Open area of a butterfly throttle. With bore D, shaft d, plate angle ψ, closed angle ψ0, a = d/D, q = cos ψ / cos ψ0, k = a/q the
 * open share of the bore's area is, for q &gt; a,
 *
 * <pre>1 − q + (2/π)·[ a·√(1 − k²) + q·asin k − a·√(1 − a²) − asin a ]</pre>
 *
 * and for q ≤ a, where the plate hides behind its shaft, {@code 1 − (2/π)·[asin a + a·√(1 − a²)]}. Derived: the circle of the bore less
 * the union of the plate's projected ellipse and the shaft's strip; held by a test against numerical integration of just that. Contains
 * no leakage past the closed plate.
 */
public final class PlateArea {

    private PlateArea() {}

    /** Area of the bore, mm². */
    public static double boreAreaMm2(ThrottleBody body) {
        return Math.PI / 4 * body.boreMm() * body.boreMm();
    }

    /**
     * Open area at a plate angle, mm²; 0 at the closed angle and below.
     *
     * @param plateAngleDeg from the plane across the bore, degrees; above 90 is taken as 90
     */
    public static double atAngle(ThrottleBody body, double plateAngleDeg) {
        double angleDeg = Math.min(Math.max(plateAngleDeg, body.closedAngleDeg()), 90);
        double q = Math.cos(Math.toRadians(angleDeg)) / Math.cos(Math.toRadians(body.closedAngleDeg()));
        double a = body.shaftMm() / body.boreMm();
        double share;
        if (q > a) {
            double k = a / q;
            share = 1
                    - q
                    + 2
                            / Math.PI
                            * (a * Math.sqrt(1 - k * k) + q * Math.asin(k) - a * Math.sqrt(1 - a * a) - Math.asin(a));
        } else {
            share = 1 - 2 / Math.PI * (Math.asin(a) + a * Math.sqrt(1 - a * a));
        }
        return boreAreaMm2(body) * Math.max(share, 0);
    }

    /** Plate angle at a throttle position, degrees: proportional between closed and open, clamped to 0 … 100 %. */
    public static double angleDeg(ThrottleBody body, double throttlePercent) {
        double share = Math.min(Math.max(throttlePercent, 0), 100) / 100;
        return body.closedAngleDeg() + share * (body.openAngleDeg() - body.closedAngleDeg());
    }

    /** Open area at a throttle position, mm². */
    public static double atThrottle(ThrottleBody body, double throttlePercent) {
        return atAngle(body, angleDeg(body, throttlePercent));
    }
}
