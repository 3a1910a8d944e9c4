package fuelwright.work;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.HighLoadCells;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.Standing;
import fuelwright.estimate.Validation;
import fuelwright.handover.HardwareTable;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.job.PastTable;
import fuelwright.table.Table;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How the newest ride did with the table it was made with, whether that is what was promised, and whether to go on changing. Done: the
 * newest ride was made with the table that is in the unit, its error is at most 3 % and no more than promised, at least one cell is
 * measured, and no cell is left off. A high-load cell, measured or not, is off where it needs more fuel by more than max(1 %, two standard
 * errors). Any other measured cell is off by more than max(1 %, z standard errors, at most 3 %), z being such that among so many measured
 * cells that are right all stay within it 95 times in 100 (Šidák 1967, J. Am. Stat. Assoc. 62, 626; from memory). Errors are weighted like those of left-out validation. Immutable.
 *
 * @param ride name of the newest ride
 * @param errorPercent its root-mean-square mixture error with the table it was made with, %; NaN where none of it counts
 * @param errorBeforePercent the same of the ride before it, with its own table; empty where there is none
 * @param promisedPercent what was promised when its table went into the unit; empty where no promise is known
 * @param cellsLeft cells that speak against stopping
 * @param done whether what is left is within what the sensor can tell, where it was ridden
 * @param highLoad how much of high load is measured: without all of it 'done' is said of what was ridden only
 * @param proposed what the proposal would change all the same
 */
public record RideToRide(
        String ride,
        double errorPercent,
        Optional<Double> errorBeforePercent,
        Optional<Double> promisedPercent,
        int cellsLeft,
        boolean done,
        HighLoadCells highLoad,
        Proposed proposed) {

    /**
     * What a proposal changes.
     *
     * @param measured cells that are measured and would change
     * @param measuredPercent the greatest of their changes, either way, %
     * @param others cells that aren't measured and would change
     * @param othersPercent the greatest of their changes, either way, %
     */
    public record Proposed(int measured, double measuredPercent, int others, double othersPercent) {

        /** A smaller change is shown as none, %. */
        private static final double LEAST_SHOWN = 0.05;

        static final Proposed NOTHING = new Proposed(0, 0, 0, 0);

        private static Proposed of(Estimate estimate, Proposal proposal) {
            int[] cells = new int[2];
            double[] most = new double[2];
            for (CellProposal cell : proposal.cells()) {
                int kind = isMeasured(estimate, cell) ? 0 : 1;
                if (cell.after() != cell.before()) {
                    cells[kind]++;
                    most[kind] = Math.max(most[kind], Math.abs(cell.changePercent()));
                }
            }
            return new Proposed(cells[0], most[0], cells[1], most[1]);
        }

        /** Follows 'done': the figures beside it must not seem to say otherwise. */
        private String words() {
            StringBuilder words = new StringBuilder();
            if (measured > 0) {
                words.append(String.format(
                        Locale.ROOT,
                        ". %s proposed in measured cells, %s, %s no more than that: the old figures can be left",
                        measured == 1 ? "The change still" : "The " + measured + " changes still",
                        measuredPercent < LEAST_SHOWN
                                ? "all below 0.1 %"
                                : String.format(Locale.ROOT, "at most %.1f %%", measuredPercent),
                        measured == 1 ? "is" : "are"));
            }
            if (others > 0) {
                words.append(String.format(
                        Locale.ROOT,
                        ". The %s of up to %.1f %% in cells that aren't measured %s another matter: no ride vouches for the old figures there",
                        others == 1 ? "change" : others + " changes",
                        othersPercent,
                        others == 1 ? "is" : "are"));
            }
            return words.toString();
        }
    }

    /** Another ride differs from the one promised on: so much above the promise still keeps it (common practice, no source). */
    private static final double KEPT_FACTOR = 1.25;

    private static final double KEPT_PERCENT = 0.2;
    /** What a wideband can tell at best, %. */
    private static final double LEAST_PERCENT = 1;

    /** A ride with more error than this isn't done, however doubtful its cells (common practice, no source). */
    private static final double MOST_PERCENT = 3;

    private static final double STANDARD_ERRORS = 2;

    /** How often all of the measured cells that are right stay within their bounds. */
    private static final double FAMILY_CONFIDENCE = 0.95;

    /** @param errorsPercent of each ride in order, with the table it was made with */
    static RideToRide of(Job job, Estimate estimate, Proposal proposal, List<Double> errorsPercent) {
        int newest = job.rides().size() - 1;
        JobRide ride = job.rides().get(newest);
        Optional<Double> promised = job.past().stream()
                .filter(p -> p.ridesSoFar() <= newest)
                .reduce((first, second) -> second)
                .map(PastTable::promisedErrorPercent)
                .filter(Double::isFinite);
        Table inUnit = proposal.before();
        boolean current = ride.madeWith().map(inUnit::equals).orElse(true);
        int left = left(estimate, proposal);
        boolean measured = proposal.cells().stream().anyMatch(c -> isMeasured(estimate, c));
        double error = errorsPercent.get(newest);
        // Rides that contradict each other leave such doubt in the cells that nothing is beyond it: then the ride
        // itself must speak.
        boolean calm =
                error <= MOST_PERCENT && promised.map(p -> isKept(error, p)).orElse(true);
        return new RideToRide(
                ride.ride().name(),
                error,
                newest == 0
                        ? Optional.empty()
                        : Optional.of(errorsPercent.get(newest - 1)).filter(Double::isFinite),
                promised,
                left,
                current && calm && measured && left == 0,
                HighLoadCells.of(proposal),
                Proposed.of(estimate, proposal));
    }

    /** Cells whose shortfall, by the estimate, is more than the sensor may be mistaken by. */
    private static int left(Estimate estimate, Proposal proposal) {
        double errors = standardErrors(
                proposal.cells().stream().filter(c -> isMeasured(estimate, c)).count());
        int left = 0;
        for (CellProposal cell : proposal.cells()) {
            double shortfall = estimate.shortfallPercent(cell.cell());
            double uncertainty = estimate.uncertaintyPercent(cell.cell());
            double within = Math.max(LEAST_PERCENT, Math.min(MOST_PERCENT, errors * uncertainty));
            boolean lean = cell.highLoad()
                    ? shortfall > Math.max(LEAST_PERCENT, STANDARD_ERRORS * uncertainty)
                    : isMeasured(estimate, cell) && shortfall > within;
            boolean rich = isMeasured(estimate, cell) && shortfall < -within;
            left += lean || rich ? 1 : 0;
        }
        return left;
    }

    /** Within so many standard errors all of so many independent cells stay, as often as the confidence says. */
    static double standardErrors(long cells) {
        double each = Math.pow(FAMILY_CONFIDENCE, 1.0 / Math.max(1, cells));
        return Math.max(STANDARD_ERRORS, new NormalDistribution().inverseCumulativeProbability(0.5 + each / 2));
    }

    private static boolean isMeasured(Estimate estimate, CellProposal cell) {
        return estimate.standing(cell.cell()) == Standing.MEASURED;
    }

    /**
     * What is promised for the proposed table, %: the error on readings that the fit hadn't seen, and on top the gap that rules, caps,
     * decisions and rounding leave between fit and proposal, over the cells by their independent readings, and what the hardware's
     * breakpoints and steps add. NaN where nothing was validated.
     */
    static double promisedPercent(Analysis analysis) {
        double squares = 0;
        double readings = 0;
        for (CellProposal cell : analysis.proposal().cells()) {
            double n = analysis.estimate().independentReadings(cell.cell());
            double gap = Math.log(cell.neededFactor() / cell.factor());
            squares += n * gap * gap;
            readings += n;
        }
        double gapPercent = readings > 0 ? 100 * Math.sqrt(squares / readings) : 0;
        double addedPercent = analysis.hardware()
                .map(HardwareTable::addedRmsPercent)
                .filter(Double::isFinite)
                .orElse(0.0);
        return Math.hypot(
                analysis.validation().map(Validation::errorAfterPercent).orElse(Double.NaN),
                Math.hypot(gapPercent, addedPercent));
    }

    /** Whether the newest ride came out as promised; empty where nothing was promised or nothing of it counts. */
    public Optional<Boolean> asPromised() {
        return promisedPercent.filter(p -> Double.isFinite(errorPercent)).map(p -> isKept(errorPercent, p));
    }

    private static boolean isKept(double errorPercent, double promisedPercent) {
        return errorPercent <= KEPT_FACTOR * promisedPercent + KEPT_PERCENT;
    }

    private String stop() {
        return highLoad.notMeasured() > 0
                ? "done where you rode; " + highLoad.words() + ", and nothing says that they are right"
                : "done, stop changing";
    }

    /**
     * As sentences.
     *
     * @param stops whether a Stop caution stands: then that comes first
     */
    public String words(boolean stops) {
        StringBuilder words = new StringBuilder();
        if (Double.isFinite(errorPercent)) {
            words.append(String.format(
                    Locale.ROOT, "mixture error %.1f %% on %s with the table it was made with", errorPercent, ride));
            errorBeforePercent.ifPresent(
                    e -> words.append(String.format(Locale.ROOT, ", %.1f %% on the ride before it with its own", e)));
            promisedPercent.ifPresent(p -> words.append(String.format(
                    Locale.ROOT, "; promised %.1f %%, %s", p, asPromised().orElse(false) ? "kept" : "not kept")));
        } else {
            words.append("no reading of ").append(ride).append(" counts");
        }
        if (done) {
            words.append(". What is left is within what the sensor can tell: ")
                    .append(stops ? "see to the Stop cautions first. Then: " + stop() : stop())
                    .append(proposed.words());
        } else if (cellsLeft > 0) {
            words.append(". Cells still off by more than the sensor can be mistaken: ")
                    .append(cellsLeft);
        }
        return words.toString();
    }
}
