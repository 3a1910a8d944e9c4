package fuelwright.ui.plot;

/**
 * How a box is seen in perspective. The box reaches from −1 to 1 along x (right), y (away) and z (up). It is turned about its upright axis,
 * then tilted towards the eye, which looks at its middle from {@value #EYE} away:
 *
 * <pre>screen = centre + scale · (x′, −z′) · EYE / (EYE + depth)</pre>
 *
 * with x′ to the right and z′ up after turning. Immutable, pure.
 *
 * @param turnDeg about the upright axis, degrees
 * @param tiltDeg 0 looks level, 90 straight down
 * @param zoom size, 1 fills the space
 */
public record Projection(double turnDeg, double tiltDeg, double zoom) {

    /** Distance of the eye from the middle; the box's corners are at most √3 away, so nothing is ever behind it. */
    static final double EYE = 6;

    private static final double LEAST_TILT = 5;
    private static final double MOST_TILT = 90;
    private static final double LEAST_ZOOM = 0.5;
    private static final double MOST_ZOOM = 4;

    /** Where a point of the box comes to lie: right and down from the middle in units of the scale, and how far away. */
    public record Seen(double x, double y, double depth) {}

    public Projection {
        turnDeg = ((turnDeg % 360) + 360) % 360;
        tiltDeg = Math.min(MOST_TILT, Math.max(LEAST_TILT, tiltDeg));
        zoom = Math.min(MOST_ZOOM, Math.max(LEAST_ZOOM, zoom));
    }

    /** From the corner of low speed and low load, a little from above. */
    public static Projection usual() {
        return new Projection(325, 28, 1);
    }

    public Projection turned(double byTurnDeg, double byTiltDeg) {
        return new Projection(turnDeg + byTurnDeg, tiltDeg + byTiltDeg, zoom);
    }

    public Projection zoomed(double factor) {
        return new Projection(turnDeg, tiltDeg, zoom * factor);
    }

    public Seen see(double x, double y, double z) {
        double turn = Math.toRadians(turnDeg);
        double tilt = Math.toRadians(tiltDeg);
        double right = x * Math.cos(turn) - y * Math.sin(turn);
        double away = x * Math.sin(turn) + y * Math.cos(turn);
        double up = z * Math.cos(tilt) + away * Math.sin(tilt);
        double depth = away * Math.cos(tilt) - z * Math.sin(tilt);
        double nearness = zoom * EYE / (EYE + depth);
        return new Seen(right * nearness, -up * nearness, depth);
    }
}
