package fuelwright.airflow;

/**
 * A butterfly throttle body.
 *
 * @param boreMm diameter of the bore, mm
 * @param shaftMm diameter of the shaft across the bore, mm, 0 ≤ shaft &lt; bore
 * @param closedAngleDeg plate angle from the plane across the bore when closed, degrees
 * @param openAngleDeg plate angle at 100 % throttle, degrees
 */
public record ThrottleBody(double boreMm, double shaftMm, double closedAngleDeg, double openAngleDeg) {

    public ThrottleBody {
        require("boreMm", boreMm, 5, 200);
        require("shaftMm", shaftMm, 0, Math.nextDown(boreMm));
        require("closedAngleDeg", closedAngleDeg, 0, 45);
        require("openAngleDeg", openAngleDeg, Math.nextUp(closedAngleDeg), 90);
    }

    private static void require(String name, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(name + " " + value + " must be from " + least + " to " + most);
        }
    }
}
