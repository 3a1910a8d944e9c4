package fuelwright.estimate;

import fuelwright.airflow.Machine;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Arrays;

/**
 * A rough exhaust flow for the transport delay, from the fuel table and engine speed: fuel delivered per cycle, relative to the table's
 * largest, times the air of a well-filled engine. Good to some 20 %; what it is wrong by is taken up by the identified gas mass.
 */
public final class FlowModel {

    /** Air density at 20 °C and 1 bar, g/cm³ (ideal gas, R 287.05 J/(kg·K)). */
    private static final double AIR_G_PER_CC = 1.19e-3;
    /** Displacement where nothing is known, cm³: only scales the gas mass. */
    private static final double UNKNOWN_DISPLACEMENT_CC = 700;
    /** Volumetric efficiency taken for the table's fullest cell. */
    private static final double FULLEST = 0.9;
    /** Share of the fullest cell below which a cell isn't believed. */
    private static final double EMPTIEST = 0.05;

    private final Table filling;
    private final double gramsPerCycle;

    private FlowModel(Table filling, double gramsPerCycle) {
        this.filling = filling;
        this.gramsPerCycle = gramsPerCycle;
    }

    /**
     * @param table a fuel table
     * @param deadTimeMs injector dead time contained in a pulse table, ms
     */
    public static FlowModel of(Machine machine, Table table, double deadTimeMs) {
        double[] filling = new double[table.cells()];
        double largest = 0;
        for (int c = 0; c < filling.length; c++) {
            filling[c] = airPerCycle(table, c, deadTimeMs);
            largest = Math.max(largest, filling[c]);
        }
        for (int c = 0; c < filling.length; c++) {
            filling[c] = Math.max(filling[c] / largest, EMPTIEST);
        }
        double displacementCc = machine.displacementCc().orElse(UNKNOWN_DISPLACEMENT_CC);
        return new FlowModel(table.with(Quantity.MULTIPLIER, filling), FULLEST * displacementCc * AIR_G_PER_CC);
    }

    /** A trim or multiplier table doesn't show the air by itself: there the load axis has to do. */
    private static double airPerCycle(Table table, int cell, double deadTimeMs) {
        double load = table.loadAt(cell);
        boolean byPressure = table.load().kind() == Axis.Kind.MANIFOLD_PRESSURE;
        Quantity quantity = table.quantity();
        double fuel = quantity.delivered(table.at(cell), deadTimeMs);
        if (quantity == Quantity.INJECTOR_PULSE) {
            return fuel;
        }
        if (byPressure) {
            return fuel * Math.max(load, 10);
        }
        return quantity == Quantity.VOLUMETRIC_EFFICIENCY ? fuel : Math.min(1, (load + 10) / 70);
    }

    /** Exhaust mass flow, g/s. */
    public double gramsPerSecond(double speedRpm, double load) {
        return gramsPerCycle * relativeFilling(speedRpm, load) * Math.max(speedRpm, 300) / 120;
    }

    /** Exhaust mass flow in each row of a ride, g/s; NaN where engine speed or load is. */
    double[] gramsPerSecond(double[] speedRpm, double[] load) {
        double[] flow = new double[speedRpm.length];
        Arrays.parallelSetAll(flow, i -> gramsPerSecond(speedRpm[i], load[i]));
        return flow;
    }

    /** Air per cycle relative to the fullest cell, from 0.05 to 1. */
    double relativeFilling(double speedRpm, double load) {
        return filling.value(speedRpm, load);
    }
}
