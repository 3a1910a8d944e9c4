package fuelwright.estimate;

import fuelwright.airflow.HighLoad;
import fuelwright.estimate.CellProposal.Kind;
import fuelwright.estimate.CellProposal.Step;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * From estimate to figures for the hardware, by rules that err to the rich side: doubt adds fuel at high load, and so do a cell's own
 * readings that ask for more than its neighbours; a cell at high load is leaned only where it was measured and surely rich, and no further
 * than the plain mean of its readings; elsewhere a cell that wasn't measured is leaned only by what is beyond doubt; caps for
 * one pass; no pulse is shortened while nobody has said what dead time it contains; decisions by hand; rounding up at high load, to nearest
 * elsewhere; where there is no step, a cell that is to stay keeps its figure; where no cell is to be leaned, the old figure, rounded up. Every step is kept for the explanation.
 */
public final class ProposalMaker {

    /** How sure a cell at high load must be of being rich before it is leaned, in standard errors. */
    private static final double SURE_RICH = 2;
    /** Doubt up to this is less than a wideband can tell (±0.005 lambda for a laboratory instrument) and adds nothing, ln. */
    private static final double TOLD_APART = 0.005;
    /** Load this much further on: if that is high load, the cell is just below it. */
    private static final double BELOW = 1.25;

    private final Estimate estimate;
    private final CellMeans means;
    private final HighLoad highLoad;
    private final ProposalSettings settings;
    private final Table table;

    private ProposalMaker(Estimate estimate, CellMeans means, HighLoad highLoad, ProposalSettings settings) {
        this.estimate = estimate;
        this.means = means;
        this.highLoad = highLoad;
        this.settings = settings;
        this.table = estimate.table();
    }

    public static Proposal make(Estimate estimate, CellMeans means, HighLoad highLoad, ProposalSettings settings) {
        ProposalMaker maker = new ProposalMaker(estimate, means, highLoad, settings);
        List<CellProposal> cells = new ArrayList<>();
        for (int cell = 0; cell < estimate.table().cells(); cell++) {
            cells.add(maker.propose(cell));
        }
        return new Proposal(estimate.table(), settings, cells);
    }

    /** Whether a cell of a table is at high load. */
    public static boolean isHighLoad(HighLoad highLoad, Table table, int cell) {
        return isHighLoad(highLoad, table, cell, 1);
    }

    private static boolean isHighLoad(HighLoad highLoad, Table table, int cell, double further) {
        double load = table.loadAt(cell) * further;
        return table.load().kind() == Axis.Kind.THROTTLE
                ? highLoad.at(table.speedAt(cell), load, Double.NaN, Double.NaN)
                : highLoad.at(table.speedAt(cell), Double.NaN, load, Double.NaN);
    }

    private CellProposal propose(int cell) {
        Quantity quantity = table.quantity();
        double before = table.at(cell);
        boolean high = isHighLoad(highLoad, table, cell);
        List<Step> steps = new ArrayList<>();
        means.at(cell).ifPresent(m -> steps.add(new Step(Kind.OBSERVED, 1 + m.meanShortfallPercent() / 100)));
        if (!steps.isEmpty() && !Double.isNaN(estimate.ownReadings(cell))) {
            steps.add(new Step(Kind.BURNT, Math.exp(estimate.ownReadings(cell))));
        }
        double needed = Math.exp(estimate.logFactor(cell));
        steps.add(new Step(Kind.FITTED, needed));
        double factor = capped(guarded(cell, high, steps), steps);
        double after = quantity.corrected(before, factor, settings.deadTimeMs());
        Optional<Decision> decision = Optional.ofNullable(settings.decisions().get(cell));
        if (decision.isPresent()) {
            after = decision.get().kind() == Decision.Kind.HELD
                    ? before
                    : decision.get().value();
            factor = quantity.factor(before, after, settings.deadTimeMs());
            steps.add(new Step(decision.get().kind() == Decision.Kind.HELD ? Kind.HELD : Kind.SET, factor));
        } else {
            // No change is no change: a file's last digit, which is no step of the hardware, mustn't be rounded up
            // round by round.
            if (factor != 1 || settings.step() > 0) {
                after = rounded(before, after, high || estimate.standing(cell) != Standing.MEASURED);
            }
            factor = quantity.factor(before, after, settings.deadTimeMs());
            if (settings.step() > 0) {
                steps.add(new Step(Kind.ROUNDED, factor));
            } else {
                // The file's last digit is no step of its own, but the last step's factor is the cell's.
                steps.set(steps.size() - 1, new Step(steps.get(steps.size() - 1).kind(), factor));
            }
        }
        if (settings.leanNoCell() && factor < 1) {
            after = settings.step() > 0 ? rounded(before, before, true) : before;
            factor = quantity.factor(before, after, settings.deadTimeMs());
            steps.add(new Step(Kind.NO_CELL_LEANED, factor));
        }
        return new CellProposal(cell, before, after, factor, needed, estimate.standing(cell), high, decision, steps);
    }

    private double guarded(int cell, boolean high, List<Step> steps) {
        double fitted = estimate.logFactor(cell);
        double e = high ? fitted + estimate.leftOver(cell) : fitted;
        if (e > fitted) {
            steps.add(new Step(Kind.OWN_READINGS, Math.exp(e)));
        }
        double sd = estimate.logUncertainty(cell);
        boolean below = !high && isHighLoad(highLoad, table, cell, BELOW);
        double z = high ? settings.richSideZ() : below ? settings.richSideZ() / 2 : 0;
        // Where parts of the rides disagree the richest has been believed: their doubt isn't added to it once more.
        double guarded = Math.max(
                e + z * Math.max(0, estimate.undisputedUncertainty(cell) - TOLD_APART),
                fitted + z * Math.max(0, sd - TOLD_APART));
        if (guarded > e) {
            steps.add(new Step(high ? Kind.RICH_SIDE : Kind.RICH_SIDE_BELOW, Math.exp(guarded)));
        }
        boolean measured = estimate.standing(cell) == Standing.MEASURED;
        double least = Double.NEGATIVE_INFINITY;
        if (high && !(measured && e + SURE_RICH * sd < 0)) {
            least = 0;
        } else if (!measured) {
            least = Math.min(0, e + sd);
        }
        if (guarded < least) {
            guarded = least;
            steps.add(new Step(Kind.NOT_LEANED, Math.exp(guarded)));
        }
        // Whatever film and delay explain away: nobody takes fuel where the rows themselves show none to spare.
        Optional<CellMeans.Mean> mean = means.at(cell);
        double unridden = high ? 0 : Double.NEGATIVE_INFINITY;
        double rows = Math.min(
                0, mean.map(m -> Math.log1p(m.meanShortfallPercent() / 100)).orElse(unridden));
        if ((high || !measured) && guarded < rows) {
            guarded = rows;
            steps.add(new Step(Kind.LEANED_LESS, Math.exp(guarded)));
        }
        // A mixture richer than the target because the unit asked for it is no fault of this table.
        double asked = Math.min(
                0,
                mean.map(m -> Math.log1p((m.meanShortfallPercent() + m.commandRicherPercent()) / 100))
                        .orElse(unridden));
        if (high && guarded < asked) {
            guarded = asked;
            steps.add(new Step(Kind.COMMANDED_RICHER, Math.exp(guarded)));
        }
        if (guarded < 0 && settings.deadTimeToldMs().isEmpty() && table.quantity() == Quantity.INJECTOR_PULSE) {
            guarded = 0;
            steps.add(new Step(Kind.DEAD_TIME_UNTOLD, Math.exp(guarded)));
        }
        return Math.exp(guarded);
    }

    private double capped(double factor, List<Step> steps) {
        double most = 1 + settings.maxAddPercent() / 100;
        double least = 1 - settings.maxCutPercent() / 100;
        if (factor > most) {
            steps.add(new Step(Kind.CAP_ON_ADDING, most));
            return most;
        }
        if (factor < least) {
            steps.add(new Step(Kind.CAP_ON_TAKING, least));
            return least;
        }
        return factor;
    }

    /**
     * To the hardware's step, or to the last digit that a file shows: up at high load and where a cell wasn't measured, to nearest elsewhere, but never beyond a cap on
     * taking away.
     */
    private double rounded(double before, double value, boolean up) {
        double step = step(table.quantity(), settings);
        double least = table.quantity().corrected(before, 1 - settings.maxCutPercent() / 100, settings.deadTimeMs());
        boolean beyondCap = Math.rint(value / step) < least / step - 1e-9;
        return toStep(value, step, up || beyondCap);
    }

    private static double step(Quantity quantity, ProposalSettings settings) {
        return settings.step() > 0 ? settings.step() : quantity.finestStep();
    }

    /**
     * A figure that a person took over from this cell, to the same step: never below it at high load nor where the cell wasn't measured.
     *
     * @param value in the table's own unit
     */
    public static double rounded(Quantity quantity, ProposalSettings settings, CellProposal cell, double value) {
        return toStep(value, step(quantity, settings), cell.highLoad() || cell.standing() != Standing.MEASURED);
    }

    private static double toStep(double value, double step, boolean up) {
        double steps = value / step;
        double whole = up ? Math.ceil(steps - 1e-9) : Math.rint(steps);
        // Through a decimal, so that 3 × 0.1 is written as 0.3.
        return java.math.BigDecimal.valueOf(whole)
                .multiply(java.math.BigDecimal.valueOf(step))
                .doubleValue();
    }
}
