package fuelwright.power;

import fuelwright.airflow.CompressibleFlow;
import fuelwright.estimate.CellNeed;
import fuelwright.estimate.Standing;
import fuelwright.table.Axis;
import fuelwright.table.Bilinear;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntPredicate;

/**
 * What a part gave, cell by cell: air per cycle before and after, by the fuel that each table delivers times the lambda that it is meant to
 * give. A control unit that holds volumetric efficiency divides by its target itself, so there the figures are the air already. Each table must
 * be right for its own state of the engine: the gain is as wrong as the tables are. Immutable.
 */
public final class Breathing {

    /** What is known of the air itself, besides how it changed. */
    public enum Amount {
        /** Volumetric efficiency, %. */
        EFFICIENCY,
        /** Air per cycle in proportion; the most that any known cell drew before is 100. */
        RELATIVE,
        /** Nothing: a trim or a multiplier acts on fuel that only the control unit knows. */
        UNKNOWN
    }

    /** Below it a cell has no part in a figure between cells, even where it isn't known itself. */
    private static final double LEAST_SHARE = 1e-9;

    private final Table after;
    private final Amount amount;
    private final double[] was;
    private final double[] is;
    private final double[] errors;
    private final IntPredicate measured;

    private Breathing(Table after, Amount amount, double[] was, double[] is, double[] errors, IntPredicate measured) {
        this.after = after;
        this.amount = amount;
        this.was = was;
        this.is = is;
        this.errors = errors;
        this.measured = measured;
    }

    /**
     * @param before the table that was right before the part
     * @param lambdaBefore what lambda it gave, on any axes of the same kinds; empty: the same before and after
     * @param after the table that is right with it, of the same axes and quantity
     * @param lambdaAfter likewise
     * @param deadTimeMs injector dead time in pulses, ms
     * @return empty where quantity or axes differ
     */
    public static Optional<Breathing> of(
            Table before, Optional<Table> lambdaBefore, Table after, Optional<Table> lambdaAfter, double deadTimeMs) {
        return of(
                before,
                lambdaBefore,
                after,
                lambdaAfter,
                deadTimeMs,
                cell -> true,
                new double[before.cells()],
                cell -> true);
    }

    /**
     * By what rides showed: where they say little or nothing, nothing is said of the part.
     *
     * @param before the table that was right before the part; other breakpoints are read off between its own, and nothing is said beyond them
     * @param now the table that is in the unit now, of the same quantity and kind of load
     * @param lambda what lambda both are meant to give; empty, or by another kind of load: not known, only that it is the same
     * @param deadTimeMs injector dead time in pulses, ms
     * @param needs what each cell of {@code now} still needs
     * @return empty where quantity or kind of load differ
     */
    public static Optional<Breathing> measured(
            Table before, Table now, Optional<Table> lambda, double deadTimeMs, List<CellNeed> needs) {
        if (before.load().kind() != now.load().kind()
                || before.quantity() != now.quantity()
                || !now.quantity().isFuel()) {
            return Optional.empty();
        }
        double[] needed = new double[now.cells()];
        double[] errors = new double[now.cells()];
        for (int cell = 0; cell < needed.length; cell++) {
            CellNeed need = needs.get(cell);
            needed[cell] = now.quantity().corrected(now.at(cell), need.factor(), deadTimeMs);
            errors[cell] = need.uncertaintyPercent() / need.factor();
        }
        Optional<Table> usable =
                lambda.filter(l -> l.load().kind() == now.load().kind());
        List<Standing> standings = needs.stream().map(CellNeed::standing).toList();
        IntPredicate known = cell -> standings.get(cell) != Standing.INFERRED
                && within(before.speed(), now.speedAt(cell))
                && within(before.load(), now.loadAt(cell));
        return of(
                before.sameAxes(now) ? before : before.sampledAt(now.speed(), now.load()),
                usable,
                now.withValues(needed),
                usable,
                deadTimeMs,
                known,
                errors,
                cell -> standings.get(cell) == Standing.MEASURED);
    }

    private static boolean within(Axis axis, double value) {
        return value >= axis.first() && value <= axis.last();
    }

    private static Optional<Breathing> of(
            Table before,
            Optional<Table> lambdaBefore,
            Table after,
            Optional<Table> lambdaAfter,
            double deadTimeMs,
            IntPredicate known,
            double[] errors,
            IntPredicate measured) {
        if (before.quantity() != after.quantity()
                || !before.quantity().isFuel()
                || !before.sameAxes(after)
                || lambdaBefore.isPresent() != lambdaAfter.isPresent()) {
            return Optional.empty();
        }
        double[] was = air(before, lambdaBefore, deadTimeMs);
        double[] is = air(after, lambdaAfter, deadTimeMs);
        for (int cell = 0; cell < was.length; cell++) {
            if (!known.test(cell) || !(was[cell] > 0 && is[cell] > 0)) {
                was[cell] = Double.NaN;
                is[cell] = Double.NaN;
            }
        }
        return Optional.of(new Breathing(after, amount(before.quantity(), lambdaBefore), was, is, errors, measured));
    }

    private static Amount amount(Quantity quantity, Optional<Table> lambda) {
        return switch (quantity) {
            case VOLUMETRIC_EFFICIENCY -> Amount.EFFICIENCY;
            case INJECTOR_PULSE -> lambda.isPresent() ? Amount.RELATIVE : Amount.UNKNOWN;
            default -> Amount.UNKNOWN;
        };
    }

    private static double[] air(Table table, Optional<Table> lambda, double deadTimeMs) {
        boolean isAir = table.quantity() == Quantity.VOLUMETRIC_EFFICIENCY;
        double[] air = new double[table.cells()];
        for (int cell = 0; cell < air.length; cell++) {
            double speed = table.speedAt(cell);
            double load = table.loadAt(cell);
            double mixture = isAir ? 1 : lambda.map(l -> l.value(speed, load)).orElse(1.0);
            air[cell] = table.quantity().delivered(table.at(cell), deadTimeMs) * mixture;
        }
        return air;
    }

    /** The axes that the cells lie on. */
    public Table axes() {
        return after;
    }

    /** The number of cells, in the order of {@link #axes}. */
    public int cells() {
        return was.length;
    }

    /** Whether anything is known of a cell. */
    public boolean isKnown(int cell) {
        return !Double.isNaN(was[cell]);
    }

    /** Whether the cell is measured, by the rule of {@link Standing}. */
    public boolean isMeasured(int cell) {
        return isKnown(cell) && measured.test(cell);
    }

    /** How many cells something is known of. */
    public int knownCells() {
        return (int) Arrays.stream(was).filter(v -> !Double.isNaN(v)).count();
    }

    /** How much more air a cycle draws than before, %; NaN where nothing is known. */
    public double gainPercent(int cell) {
        return 100 * (is[cell] / was[cell] - 1);
    }

    /** Standard error of {@link #gainPercent} by the rides, %: that the table before was right is taken for granted. */
    public double gainErrorPercent(int cell) {
        return is[cell] / was[cell] * errors[cell];
    }

    /** The gain read off between cells; NaN beyond the axes, and where a cell beside is not known. */
    public double gainPercentAt(double speedRpm, double load) {
        if (!within(after.speed(), speedRpm) || !within(after.load(), load)) {
            return Double.NaN;
        }
        int[] cells = new int[4];
        double[] shares = new double[4];
        Bilinear.locate(after.speed(), after.load(), speedRpm, load, cells, shares);
        double sum = 0;
        for (int corner = 0; corner < cells.length; corner++) {
            if (shares[corner] > LEAST_SHARE) {
                sum += shares[corner] * gainPercent(cells[corner]);
            }
        }
        return sum;
    }

    /** What {@link #before} and {@link #after} hold. */
    public Amount amount() {
        return amount;
    }

    /** Volumetric efficiency or air per cycle before, by {@link #amount}; empty where nothing is known. */
    public OptionalDouble before(int cell) {
        return shown(was[cell]);
    }

    /** The same with the part. */
    public OptionalDouble after(int cell) {
        return shown(is[cell]);
    }

    private OptionalDouble shown(double air) {
        if (Double.isNaN(air) || amount == Amount.UNKNOWN) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(amount == Amount.EFFICIENCY ? air : 100 * air / most());
    }

    private double most() {
        return Arrays.stream(was).filter(v -> !Double.isNaN(v)).max().orElse(Double.NaN);
    }

    /**
     * Air a cycle that an efficiency stands for, mg, of all cylinders together: VE·V·p/(R·T), p the manifold pressure of the cell, or the
     * barometer where the table goes by throttle (ideal gas; volumetric efficiency as Heywood, Internal Combustion Engine Fundamentals, 1988, defines
     * it by the air outside, section 2.10, from memory).
     *
     * @param cell in the order of {@link #axes}
     * @param efficiencyPercent volumetric efficiency of the cell, %
     * @param displacementCc of the engine, cm³
     * @param barometerKPa air outside, kPa
     * @param temperatureC air drawn in, °C
     */
    public double airMgPerCycle(
            int cell, double efficiencyPercent, double displacementCc, double barometerKPa, double temperatureC) {
        double kPa = after.load().kind() == Axis.Kind.MANIFOLD_PRESSURE ? after.loadAt(cell) : barometerKPa;
        double densityKgPerM3 = 1000 * kPa / (CompressibleFlow.GAS_CONSTANT_AIR * (temperatureC + 273.15));
        return efficiencyPercent / 100 * displacementCc * densityKgPerM3;
    }
}
