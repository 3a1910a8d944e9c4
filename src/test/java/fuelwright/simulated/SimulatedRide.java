package fuelwright.simulated;

import java.util.List;

/** A ride's log as a logger would have written it, and the truth behind it, one moment for each row. */
public final class SimulatedRide {
    private final MachineTables tables;
    private final String csv;
    private final List<Moment> moments;

    SimulatedRide(MachineTables tables, String csv, List<Moment> moments) {
        this.tables = tables;
        this.csv = csv;
        this.moments = List.copyOf(moments);
    }

    public MachineTables tables() {
        return tables;
    }

    public String csv() {
        return csv;
    }

    public List<Moment> moments() {
        return moments;
    }
}
