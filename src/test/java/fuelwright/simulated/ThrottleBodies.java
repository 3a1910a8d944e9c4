package fuelwright.simulated;

/**
 * A set of like butterfly bodies. Throttle % turns the plate linearly from the closed to the open angle (both from the plane across the
 * bore). Open area of one bore, with q = cosψ/cosψ0, a = shaft/bore, k = a/q: A/(πD²/4) = 1 − q + (2/π)[a√(1−k²) + q·asin k − a√(1−a²) −
 * asin a] while q &gt; a, then what the shaft leaves. Circle less (ellipse or shaft strip), derived by integration.
 */
public record ThrottleBodies(int count, double boreMm, double shaftMm, double closedAngleDeg, double openAngleDeg) {

    public ThrottleBodies withBore(double otherBoreMm) {
        return new ThrottleBodies(count, otherBoreMm, shaftMm, closedAngleDeg, openAngleDeg);
    }

    double plateAngleDeg(double throttlePct) {
        double share = Math.min(100, Math.max(0, throttlePct)) / 100;
        return closedAngleDeg + share * (openAngleDeg - closedAngleDeg);
    }

    /** Open area of one body at a plate angle, mm². */
    double areaOfOneMm2(double plateAngleDeg) {
        double a = shaftMm / boreMm;
        double q = StrictMath.cos(StrictMath.toRadians(plateAngleDeg))
                / StrictMath.cos(StrictMath.toRadians(closedAngleDeg));
        double shaft = a * StrictMath.sqrt(1 - a * a) + StrictMath.asin(a);
        double share = 1 - 2 / Math.PI * shaft;
        if (q > a) {
            double k = a / q;
            double hidden = a * StrictMath.sqrt(1 - k * k) + q * StrictMath.asin(k) - shaft;
            share = 1 - q + 2 / Math.PI * hidden;
        }
        return Math.max(0, share) * Math.PI * boreMm * boreMm / 4;
    }

    /** Area of all bodies times the discharge coefficient, m²; the coefficient falls a little as the plate opens (common practice). */
    double effectiveAreaM2(double throttlePct) {
        double angle = plateAngleDeg(throttlePct);
        double coefficient = 0.84 - 0.10 * StrictMath.sin(StrictMath.toRadians(angle));
        return count * coefficient * areaOfOneMm2(angle) * 1e-6;
    }
}
