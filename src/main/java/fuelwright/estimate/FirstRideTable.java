package fuelwright.estimate;

import fuelwright.airflow.BoreForecast;
import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.table.Axis;
import fuelwright.table.Numerals;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The table for the first ride after a change of bodies, from physics alone: each cell's fuel times exp(forecast), and at high load
 * exp(forecast + z·uncertainty); never below 1, because a forecast is no measurement. So it errs to the rich side and is nowhere
 * leaner than the old table. A table indexed by manifold pressure stays as it is, and a note says why. Immutable.
 */
public final class FirstRideTable {

    private final Table table;
    private final double[] logFactors;

    private FirstRideTable(Table table, double[] logFactors) {
        this.table = table;
        this.logFactors = logFactors;
    }

    /** The table to ride with. */
    public Table table() {
        return table;
    }

    /** Natural log of the factor on the cell's delivered fuel, before rounding. */
    public double logFactor(int cell) {
        return logFactors[cell];
    }

    /** How much fuel the cell gains, %. */
    public double changePercent(int cell) {
        return 100 * Math.expm1(logFactors[cell]);
    }

    /**
     * Refused where the table holds no fuel, a pulse doesn't exceed its dead time, or displacement and both bodies aren't known.
     *
     * @param settings dead time and z; its caps don't apply
     */
    public static Loaded<FirstRideTable> of(Table old, Machine machine, ProposalSettings settings) {
        if (!old.quantity().isFuel()) {
            return Loaded.refused(Issue.error(
                    "", 0, 0, "A table of " + old.quantity().words() + " holds no fuel", "Give the fuel table"));
        }
        if (old.load().kind() == Axis.Kind.MANIFOLD_PRESSURE) {
            return Loaded.of(
                    new FirstRideTable(old, new double[old.cells()]),
                    List.of(Issue.note("", BoreForecast.WHY_PRESSURE_TABLES_KEEP)));
        }
        Optional<BoreForecast> forecast = BoreForecast.of(machine);
        if (forecast.isEmpty()) {
            return Loaded.refused(Issue.error(
                    "",
                    0,
                    0,
                    "The change of bodies isn't known well enough for a forecast",
                    "Give the displacement and the bores before and after"));
        }
        List<Issue> issues = tooShortPulses(old, settings.deadTimeMs());
        return issues.isEmpty()
                ? Loaded.of(forecast(old, forecast.get(), HighLoad.of(machine), settings), List.of())
                : Loaded.refused(issues);
    }

    private static List<Issue> tooShortPulses(Table old, double deadTimeMs) {
        List<Issue> issues = new ArrayList<>();
        for (int cell = 0; cell < old.cells(); cell++) {
            if (!(old.quantity().delivered(old.at(cell), deadTimeMs) > 0)) {
                issues.add(Issue.error(
                        "",
                        0,
                        0,
                        "The cell at " + Numerals.shortest(old.speedAt(cell)) + " rpm, "
                                + Numerals.shortest(old.loadAt(cell)) + " % delivers no fuel: "
                                + Numerals.shortest(old.at(cell)) + " "
                                + old.quantity().unit(),
                        "Check the cell and the dead time"));
            }
        }
        return issues;
    }

    private static FirstRideTable forecast(
            Table old, BoreForecast forecast, HighLoad highLoad, ProposalSettings settings) {
        double[] logFactors = new double[old.cells()];
        double[] values = new double[old.cells()];
        for (int cell = 0; cell < values.length; cell++) {
            double speed = old.speedAt(cell);
            double throttle = old.loadAt(cell);
            boolean high = highLoad.at(speed, throttle, Double.NaN, Double.NaN);
            double doubt = high ? settings.richSideZ() * forecast.logUncertainty(speed, throttle) : 0;
            double factor = Math.max(0, forecast.logFactor(speed, throttle) + doubt);
            logFactors[cell] = factor;
            double value = old.quantity().corrected(old.at(cell), Math.exp(factor), settings.deadTimeMs());
            values[cell] = factor > 0 ? rounded(old.quantity(), value) : old.at(cell);
        }
        return new FirstRideTable(old.withValues(values), logFactors);
    }

    /** Digits that no hardware takes are dropped, upwards. */
    private static double rounded(Quantity quantity, double value) {
        double steps = quantity == Quantity.VOLUMETRIC_EFFICIENCY || quantity == Quantity.FUEL_TRIM ? 1e3 : 1e4;
        double noise = 1e-6;
        return Math.ceil(value * steps - noise) / steps;
    }
}
