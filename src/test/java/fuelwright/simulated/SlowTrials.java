package fuelwright.simulated;

/** One ordinary ride of a machine, for tests of a sensor that isn't. */
public final class SlowTrials {

    private SlowTrials() {}

    public static Trial of(Machine machine, long seed) {
        return Trial.withOldTable(machine.name(), machine, seed, RideProfile.road(12));
    }
}
