package fuelwright.ui.plot;

/**
 * The stretch of time that is looked at, within all there is.
 *
 * @param fromS first second shown
 * @param toS last second shown, above {@code fromS}
 * @param firstS first second there is
 * @param lastS last second there is
 */
public record TimeWindow(double fromS, double toS, double firstS, double lastS) {

    private static final double SHORTEST_S = 0.2;

    /** Everything. */
    public static TimeWindow all(double firstS, double lastS) {
        double last = Math.max(lastS, firstS + SHORTEST_S);
        return new TimeWindow(firstS, last, firstS, last);
    }

    public double lengthS() {
        return toS - fromS;
    }

    public TimeWindow whole() {
        return all(firstS, lastS);
    }

    /** Shorter (factor below 1) or longer, with the second {@code aroundS} staying where it is. */
    public TimeWindow zoomed(double factor, double aroundS) {
        double length = Math.min(lastS - firstS, Math.max(SHORTEST_S, lengthS() * factor));
        double share = (aroundS - fromS) / lengthS();
        return at(aroundS - share * length, length);
    }

    /** Moved by a share of its length. */
    public TimeWindow moved(double share) {
        return at(fromS + share * lengthS(), lengthS());
    }

    /** That long, starting there, as far as there is anything. */
    public TimeWindow at(double startS, double length) {
        double kept = Math.min(length, lastS - firstS);
        double start = Math.max(firstS, Math.min(startS, lastS - kept));
        return new TimeWindow(start, start + kept, firstS, lastS);
    }

    public double xOf(double timeS, double left, double width) {
        return left + (timeS - fromS) / lengthS() * width;
    }

    public double timeAt(double x, double left, double width) {
        return fromS + (x - left) / width * lengthS();
    }

    /** Seconds between marks: 1, 2, 5, 10, 15, 30 … so that at most {@code most} fit. */
    public double tickS(int most) {
        double[] steps = {0.1, 0.2, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1200, 1800, 3600};
        for (double step : steps) {
            if (lengthS() / step <= most) {
                return step;
            }
        }
        return 7200;
    }
}
