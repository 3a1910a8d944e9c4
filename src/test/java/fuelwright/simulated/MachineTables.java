package fuelwright.simulated;

import java.util.List;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;

/**
 * The tables that belong to a machine: its targets, what would be right for it before and after the parts change, and what is in the
 * unit. "Right" is the table whose bilinear interpolation comes closest to the fuel needed everywhere between its breakpoints.
 */
public final class MachineTables {
    private final Machine machine;
    private final AirMap before;
    private final AirMap after;
    private final Grid target;
    private Grid truth;
    private Grid rightBefore;

    public MachineTables(Machine machine) {
        this.machine = machine;
        this.before = machine.airBefore();
        this.after = machine.airAfter();
        this.target = grid(this::targetLambda).rounded(0.01);
    }

    public Machine machine() {
        return machine;
    }

    AirMap airAfter() {
        return after;
    }

    /** Lambda that each cell should give. */
    public Grid target() {
        return target;
    }

    /** The table that is right for the machine as it is now. */
    public Grid truth() {
        if (truth == null) {
            truth = rightFor(after);
        }
        return truth;
    }

    /** The table in the unit: right for the machine as it was, but for the table's own flaws; rounded to the unit's step. */
    public Grid old(long seed) {
        if (rightBefore == null) {
            rightBefore = rightFor(before);
        }
        return spoilt(rightBefore, machine.flaw(), seed);
    }

    private Grid rightFor(AirMap air) {
        return NodeFit.fit(target, (rpm, load) -> needed(air, rpm, load), this::toCells);
    }

    /** How much more air a cycle really draws with the part than without, %. */
    public double gainPct(double speedRpm, double load) {
        return 100 * (needed(after, speedRpm, load) / needed(before, speedRpm, load) - 1);
    }

    /** The right table with the small errors and the hole of {@code flaw} put in. */
    public Grid spoilt(Grid right, TableFlaw flaw, long seed) {
        Random random = new Random(seed ^ 0x7ab1eL);
        double[] cells = new double[right.cells()];
        for (int c = 0; c < cells.length; c++) {
            double error = Math.max(-2, Math.min(2, random.nextGaussian())) * flaw.wobble();
            double factor = (1 + error) * flaw.left(right.speedAt(c), right.loadAt(c));
            cells[c] = unit().cell(unit().delivered(right.at(c)) * factor);
        }
        return right.with(cells).rounded(unit().fuel().step());
    }

    /** The factor on delivered fuel from one table to another, cell by cell. */
    public Grid factor(Grid from, Grid to) {
        return from.combine(to, (a, b) -> unit().delivered(b) / unit().delivered(a));
    }

    /** Fuel that the table delivers, as the air share that it would burn at lambda 1, for the whole engine. */
    double fuel(Grid table, double speedRpm, double load, double pressurePa) {
        double delivered = unit().delivered(table.value(speedRpm, load));
        double lambda = target.value(speedRpm, load);
        switch (unit().fuel()) {
            case PULSE:
                return delivered / pulsePerCharge();
            case TRIM:
                return delivered * base(speedRpm, load) / lambda;
            default:
                double charge =
                        throttleIndexed() ? 1 : pressurePa / machine.ambient().pressurePa();
                return delivered / 100 * charge / lambda;
        }
    }

    private double needed(AirMap air, double speedRpm, double load) {
        double pressurePa = throttleIndexed() ? air.pressurePa(speedRpm, load) : load * 1000;
        double charge = air.charge(speedRpm, pressurePa);
        switch (unit().fuel()) {
            case PULSE:
                return charge * pulsePerCharge() / target.value(speedRpm, load);
            case TRIM:
                return charge / base(speedRpm, load);
            default:
                return throttleIndexed() ? 100 * charge : 100 * air.efficiency(speedRpm, pressurePa);
        }
    }

    /** Pulse less dead time, ms, that burns a full charge of ambient air at lambda 1. */
    private double pulsePerCharge() {
        double fuelG = machine.fullChargeG() / machine.engine().cylinders() / Machine.STOICHIOMETRIC;
        return fuelG / unit().injectorGPerS() * 1000;
    }

    /** Injector pulse, dead time included, for the fuel of one cycle. */
    double pulseMs(double fuel) {
        return fuel <= 0 ? 0 : fuel * pulsePerCharge() + unit().deadTimeMs();
    }

    /** The maker's own map, which a trim table sits on: the machine as it was, filling 4 % less than it did. */
    private double base(double speedRpm, double load) {
        double pressurePa = throttleIndexed() ? before.pressurePa(speedRpm, load) : load * 1000;
        return 0.96 * before.charge(speedRpm, pressurePa);
    }

    private double targetLambda(double speedRpm, double load) {
        double pressurePa = throttleIndexed() ? before.pressurePa(speedRpm, load) : load * 1000;
        double share = (pressurePa / machine.ambient().pressurePa() - 0.62) / (0.92 - 0.62);
        double light = speedRpm < 1.1 * machine.engine().idleRpm() ? 0.97 : 1.0;
        return light - (light - 0.87) * Math.min(1, Math.max(0, share));
    }

    private boolean throttleIndexed() {
        return unit().index() == ControlUnit.Index.THROTTLE;
    }

    private ControlUnit unit() {
        return machine.unit();
    }

    private Grid toCells(Grid delivered) {
        double[] cells = delivered.toArray();
        for (int c = 0; c < cells.length; c++) {
            cells[c] = unit().cell(cells[c]);
        }
        return delivered.with(cells);
    }

    private Grid grid(DoubleBinaryOperator figure) {
        return Grid.from(array(machine.speedsRpm()), array(machine.loads()), figure);
    }

    private static double[] array(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
