package fuelwright.power;

import fuelwright.airflow.CompressibleFlow;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a part gave, cell by cell: air per cycle before and after, by the fuel that each table delivers times the lambda that it is meant to
 * give. A control unit that holds volumetric efficiency divides by its target itself, so there the figures are the air already. Each table must
 * be right for its own state of the engine: the gain is as wrong as the tables are.
 */
public final class Breathing {

    private final Table before;
    private final Table after;
    private final double[] gains;

    private Breathing(Table before, Table after, double[] gains) {
        this.before = before;
        this.after = after;
        this.gains = gains;
    }

    /**
     * @param before the table that was right before the part
     * @param lambdaBefore what lambda it gave, on the axes of {@code before}; empty: the same before and after
     * @param after the table that is right with it, of the same axes and quantity
     * @param lambdaAfter likewise
     * @param deadTimeMs injector dead time in pulses, ms
     * @return empty where quantity or axes differ
     */
    public static Optional<Breathing> of(
            Table before, Optional<Table> lambdaBefore, Table after, Optional<Table> lambdaAfter, double deadTimeMs) {
        if (before.quantity() != after.quantity()
                || !before.quantity().isFuel()
                || !before.sameAxes(after)
                || lambdaBefore.isPresent() != lambdaAfter.isPresent()) {
            return Optional.empty();
        }
        double[] gains = new double[before.cells()];
        for (int cell = 0; cell < gains.length; cell++) {
            double was = air(before, lambdaBefore, cell, deadTimeMs);
            double is = air(after, lambdaAfter, cell, deadTimeMs);
            gains[cell] = was > 0 && is > 0 ? 100 * (is / was - 1) : Double.NaN;
        }
        return Optional.of(new Breathing(before, after, gains));
    }

    private static double air(Table table, Optional<Table> lambda, int cell, double deadTimeMs) {
        double fuel = table.quantity().delivered(table.at(cell), deadTimeMs);
        boolean isAir = table.quantity() == Quantity.VOLUMETRIC_EFFICIENCY;
        return isAir
                ? fuel
                : fuel
                        * lambda.map(l -> l.value(table.speedAt(cell), table.loadAt(cell)))
                                .orElse(1.0);
    }

    /** How much more air a cycle draws than before, %; NaN where one of the tables delivers no fuel. */
    public double gainPercent(int cell) {
        return gains[cell];
    }

    /** The gains as a table. */
    public Table gains() {
        return after.with(Quantity.CHANGE, gains.clone());
    }

    /** Volumetric efficiency before, %, where the tables hold it. */
    public OptionalDouble efficiencyBefore(int cell) {
        return efficiency(before, cell);
    }

    /** Volumetric efficiency after, %, where the tables hold it. */
    public OptionalDouble efficiencyAfter(int cell) {
        return efficiency(after, cell);
    }

    private static OptionalDouble efficiency(Table table, int cell) {
        return table.quantity() == Quantity.VOLUMETRIC_EFFICIENCY
                ? OptionalDouble.of(table.at(cell))
                : OptionalDouble.empty();
    }

    /**
     * Air a cycle after, mg, of all cylinders together: VE·V·p/(R·T), p the manifold pressure of the cell, or the barometer where the table goes by
     * throttle. Empty where the tables don't hold volumetric efficiency.
     *
     * @param displacementCc of the engine, cm³
     * @param barometerKPa air outside, kPa
     * @param temperatureC air drawn in, °C
     */
    public OptionalDouble airMgPerCycle(int cell, double displacementCc, double barometerKPa, double temperatureC) {
        OptionalDouble efficiency = efficiencyAfter(cell);
        if (efficiency.isEmpty()) {
            return OptionalDouble.empty();
        }
        double kPa = after.load().kind() == Axis.Kind.MANIFOLD_PRESSURE ? after.loadAt(cell) : barometerKPa;
        double densityKgPerM3 = 1000 * kPa / (CompressibleFlow.GAS_CONSTANT_AIR * (temperatureC + 273.15));
        return OptionalDouble.of(efficiency.getAsDouble() / 100 * displacementCc * densityKgPerM3);
    }
}
