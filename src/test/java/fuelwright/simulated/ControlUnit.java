package fuelwright.simulated;

/**
 * How a control unit works out its fuel.
 *
 * @param index what its table is indexed by besides engine speed
 * @param fuel what its table holds
 * @param deadTimeMs injector dead time, contained in the pulses of a pulse table
 * @param injectorGPerS flow of one injector (one a cylinder)
 * @param loop closed loop on the wideband's own figure, with or without its trims in the log
 * @param tipInShare how much of the fuel that the wall film swallows its accel enrichment makes up for, 0…1
 */
public record ControlUnit(
        Index index, Fuel fuel, double deadTimeMs, double injectorGPerS, Loop loop, double tipInShare) {

    public enum Index {
        THROTTLE,
        PRESSURE
    }

    public enum Fuel {
        EFFICIENCY("volumetric efficiency [%]", 0.1),
        PULSE("injector pulse [ms]", 0.01),
        TRIM("fuel trim [%]", 0.1);

        private final String heading;
        private final double step;

        Fuel(String heading, double step) {
            this.heading = heading;
            this.step = step;
        }

        public String heading() {
            return heading;
        }

        public double step() {
            return step;
        }
    }

    public enum Loop {
        OPEN,
        CLOSED_LOGGED,
        CLOSED_UNLOGGED
    }

    public ControlUnit with(Index other) {
        return new ControlUnit(other, fuel, deadTimeMs, injectorGPerS, loop, tipInShare);
    }

    public ControlUnit with(Fuel other) {
        return new ControlUnit(index, other, deadTimeMs, injectorGPerS, loop, tipInShare);
    }

    public ControlUnit with(Loop other) {
        return new ControlUnit(index, fuel, deadTimeMs, injectorGPerS, other, tipInShare);
    }

    /** The load that the table is looked up with. */
    double load(double throttlePct, double pressurePa) {
        return index == Index.THROTTLE ? throttlePct : pressurePa / 1000;
    }

    /** What a cell's figure really delivers, in the table's own proportion. */
    public double delivered(double cell) {
        switch (fuel) {
            case PULSE:
                return cell - deadTimeMs;
            case TRIM:
                return 1 + cell / 100;
            default:
                return cell;
        }
    }

    /** The inverse of {@link #delivered}. */
    public double cell(double delivered) {
        switch (fuel) {
            case PULSE:
                return delivered + deadTimeMs;
            case TRIM:
                return (delivered - 1) * 100;
            default:
                return delivered;
        }
    }
}
