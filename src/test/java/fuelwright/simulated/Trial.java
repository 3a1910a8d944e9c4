package fuelwright.simulated;

import java.util.ArrayList;
import java.util.List;

/** A machine with a table in its unit and the rides that are made with it; the truth comes with them. Nothing is run before it is asked for. */
public final class Trial {
    private final String name;
    private final Machine machine;
    private final TableFlaw nearly;
    private final List<RideProfile> profiles;
    private final long seed;
    private MachineTables tables;

    private Trial(String name, Machine machine, TableFlaw nearly, List<RideProfile> profiles, long seed) {
        this.name = name;
        this.machine = machine;
        this.nearly = nearly;
        this.profiles = profiles;
        this.seed = seed;
    }

    /** With the table from before the parts change. */
    public static Trial withOldTable(String name, Machine machine, long seed, RideProfile... profiles) {
        return new Trial(name, machine, null, List.of(profiles), seed);
    }

    /** With the right table but for the errors given. */
    static Trial withNearlyRightTable(
            String name, Machine machine, TableFlaw errors, long seed, RideProfile... profiles) {
        return new Trial(name, machine, errors, List.of(profiles), seed);
    }

    public String name() {
        return name;
    }

    public Machine machine() {
        return machine;
    }

    public MachineTables tables() {
        if (tables == null) {
            tables = new MachineTables(machine);
        }
        return tables;
    }

    /** The table in the unit on {@link #rides}. */
    public Grid table() {
        return nearly == null ? tables().old(seed) : tables().spoilt(tables().truth(), nearly, seed);
    }

    public List<SimulatedRide> rides() {
        List<SimulatedRide> rides = new ArrayList<>();
        for (RideProfile profile : profiles) {
            rides.add(Simulation.ride(tables(), table(), profile, seed * 100 + rides.size()));
        }
        return rides;
    }

    /** The same machine after so many times as many rides of the same kinds. */
    public Trial ridden(int times) {
        List<RideProfile> more = new ArrayList<>();
        for (int i = 0; i < times; i++) {
            more.addAll(profiles);
        }
        return new Trial(name, machine, nearly, List.copyOf(more), seed);
    }

    /** Another ride by the same kind of rider, within the same limits, to judge a corrected table on. */
    public SimulatedRide exam() {
        RideProfile first = profiles.get(0);
        RideProfile profile = RideProfile.road(12).sparse(first.highestThrottlePct(), first.highestSpeedShare());
        return Simulation.ride(tables(), table(), profile, seed * 100 + 77);
    }

    @Override
    public String toString() {
        return name;
    }
}
