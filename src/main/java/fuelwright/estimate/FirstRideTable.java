package fuelwright.estimate;

import fuelwright.airflow.BoreForecast;
import fuelwright.airflow.HighLoad;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.math.BigDecimal;

/**
 * The table for the first ride after a change of bodies, from physics alone: each cell's delivered fuel times
 *
 * <pre>k = max(1, exp(forecast + z·uncertainty))</pre>
 *
 * with z from 0 at a pressure ratio of {@value #LIGHT_LOAD} to its full value where load is high: doubt adds fuel the more, the nearer
 * a cell is to high load. Nothing is ever taken away, as a forecast is no measurement, and no cap limits what is added. Immutable.
 */
public final class FirstRideTable {

    /** Pressure ratio up to which the forecast is taken as it is. */
    private static final double LIGHT_LOAD = 0.5;

    private final Table before;
    private final Table table;
    private final double deadTimeMs;
    private final double[] forecastLogs;
    private final double[] uncertainties;

    private FirstRideTable(
            Table before, Table table, double deadTimeMs, double[] forecastLogs, double[] uncertainties) {
        this.before = before;
        this.table = table;
        this.deadTimeMs = deadTimeMs;
        this.forecastLogs = forecastLogs;
        this.uncertainties = uncertainties;
    }

    /**
     * @param before a fuel table indexed by throttle, each cell of which delivers fuel
     * @param settings dead time, z and step, without one that of the table's own figures; its caps don't apply
     * @throws IllegalArgumentException if the table isn't one of those
     */
    public static FirstRideTable of(Table before, BoreForecast forecast, HighLoad highLoad, ProposalSettings settings) {
        Quantity quantity = before.quantity();
        if (!quantity.isFuel() || before.load().kind() != Axis.Kind.THROTTLE) {
            throw new IllegalArgumentException(
                    "before " + before + " by " + before.load().kind() + " must be a fuel table indexed by throttle");
        }
        double dead = settings.deadTimeMs();
        double step = settings.step() > 0 ? settings.step() : before.ownStep();
        double[] values = new double[before.cells()];
        double[] logs = new double[values.length];
        double[] uncertainties = new double[values.length];
        for (int cell = 0; cell < values.length; cell++) {
            double old = before.at(cell);
            if (!(quantity.delivered(old, dead) > 0)) {
                throw new IllegalArgumentException("before " + old + " in cell " + cell + " delivers no fuel");
            }
            double speed = before.speedAt(cell);
            double throttle = before.loadAt(cell);
            logs[cell] = forecast.logFactor(speed, throttle);
            uncertainties[cell] = forecast.logUncertainty(speed, throttle);
            double share = highLoad.at(speed, throttle, Double.NaN, Double.NaN)
                    ? 1
                    : shareOfHighLoad(forecast.pressureRatio(speed, throttle));
            double log = logs[cell] + share * settings.richSideZ() * uncertainties[cell];
            values[cell] = log > 0 ? roundedUp(step, quantity.corrected(old, Math.exp(log), dead)) : old;
        }
        return new FirstRideTable(before, before.withValues(values), dead, logs, uncertainties);
    }

    private static double shareOfHighLoad(double pressureRatio) {
        return Math.min(1, Math.max(0, (pressureRatio - LIGHT_LOAD) / (HighLoad.PRESSURE_SHARE - LIGHT_LOAD)));
    }

    /** Digits that no hardware takes are dropped, to the rich side. */
    private static double roundedUp(double step, double value) {
        double noise = 1e-6;
        return BigDecimal.valueOf(Math.ceil(value / step - noise))
                .multiply(BigDecimal.valueOf(step))
                .doubleValue();
    }

    /** The table to ride with. */
    public Table table() {
        return table;
    }

    /** How much fuel the cell gains, %. */
    public double changePercent(int cell) {
        return 100 * (before.quantity().factor(before.at(cell), table.at(cell), deadTimeMs) - 1);
    }

    /** What the forecast alone says of the cell, %; may be negative. */
    public double forecastPercent(int cell) {
        return 100 * Math.expm1(forecastLogs[cell]);
    }

    /** Standard error of {@link #forecastPercent}, %. */
    public double uncertaintyPercent(int cell) {
        return 100 * Math.exp(forecastLogs[cell]) * uncertainties[cell];
    }
}
