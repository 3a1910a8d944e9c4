package fuelwright.simulated;

/**
 * What is wrong with the table in the unit besides the parts change: a small error of every cell, and one lean hole.
 *
 * @param wobble standard deviation of each cell's error, as a share
 * @param holeDepth share of the fuel missing in the hole, 0 for none
 */
public record TableFlaw(double wobble, double holeDepth, double fromRpm, double toRpm, double fromLoad, double toLoad) {

    public static TableFlaw wobble(double wobble) {
        return new TableFlaw(wobble, 0, 0, 0, 0, 0);
    }

    /** The factor that the hole leaves of a cell's fuel. */
    double left(double speedRpm, double load) {
        boolean inside = speedRpm >= fromRpm && speedRpm <= toRpm && load >= fromLoad && load <= toLoad;
        return inside ? 1 - holeDepth : 1;
    }
}
