package fuelwright.estimate;

import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.OptionalDouble;

/** How a cell can be ridden for readings. */
public enum Riding {
    /** Engine speed and load are held. */
    HOLD,
    /** Pulled through: nobody holds an engine fully loaded near its redline. */
    PULL,
    /** Not at all: overrun, where the fuel is usually cut. */
    NOT;

    /** Less throttle than this, %, from {@link #OVERRUN_RPM} on is overrun (common practice, no source). */
    private static final double OVERRUN_THROTTLE_PERCENT = 3;

    private static final double OVERRUN_RPM = 2500;
    /** From this share of the redline on (common practice, no source). */
    private static final double NEAR_REDLINE = 0.85;

    /** @param redlineRpm where it isn't known, the table's last breakpoint */
    public static Riding of(Table table, int cell, boolean highLoad, OptionalDouble redlineRpm) {
        double speed = table.speedAt(cell);
        boolean closed = table.load().kind() == Axis.Kind.THROTTLE && table.loadAt(cell) < OVERRUN_THROTTLE_PERCENT;
        if (closed && speed >= OVERRUN_RPM) {
            return NOT;
        }
        double top = redlineRpm.orElse(table.speed().at(table.speed().size() - 1));
        return highLoad && speed >= NEAR_REDLINE * top ? PULL : HOLD;
    }
}
