package fuelwright.handover;

import fuelwright.estimate.Estimate;
import fuelwright.estimate.ExpectedMixture;
import fuelwright.estimate.NextRide;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.Validation;
import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.screen.ScreenedRide;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What is handed over: everything that the exports and the report say.
 *
 * @param job machine, tables, rides
 * @param screened the job's rides in order, with what was kept out
 * @param estimate what each cell needs
 * @param proposal what goes into each cell
 * @param validation error before and after on unseen parts of the rides; empty where they are too short
 * @param cautions worst first, of the table as it is handed over
 * @param expected for each ride in order, its mixture as it was and as it would have been with the proposed table; empty where not asked for
 * @param hardware what goes into the tuning hardware, where it doesn't take the table as it is
 * @param nextRide what to ride next
 * @param rideToRide how the newest ride did, a sentence; empty where that isn't known
 * @param day the day that stands on the report; empty where none is to
 */
public record Handed(
        Job job,
        List<ScreenedRide> screened,
        Estimate estimate,
        Proposal proposal,
        Optional<Validation> validation,
        List<Caution> cautions,
        List<ExpectedMixture.Summary> expected,
        Optional<HardwareTable> hardware,
        NextRide nextRide,
        Optional<String> rideToRide,
        Optional<LocalDate> day) {

    /** Without a day. */
    public Handed(
            Job job,
            List<ScreenedRide> screened,
            Estimate estimate,
            Proposal proposal,
            Optional<Validation> validation,
            List<Caution> cautions,
            List<ExpectedMixture.Summary> expected,
            Optional<HardwareTable> hardware,
            NextRide nextRide,
            Optional<String> rideToRide) {
        this(
                job,
                screened,
                estimate,
                proposal,
                validation,
                cautions,
                expected,
                hardware,
                nextRide,
                rideToRide,
                Optional.empty());
    }

    /** Without a word on rides to come. */
    public Handed(
            Job job,
            List<ScreenedRide> screened,
            Estimate estimate,
            Proposal proposal,
            Optional<Validation> validation,
            List<Caution> cautions,
            List<ExpectedMixture.Summary> expected,
            Optional<HardwareTable> hardware) {
        this(
                job,
                screened,
                estimate,
                proposal,
                validation,
                cautions,
                expected,
                hardware,
                NextRide.none(),
                Optional.empty());
    }

    /** Without the expected mixture, for hardware that takes the table as it is. */
    public Handed(
            Job job,
            List<ScreenedRide> screened,
            Estimate estimate,
            Proposal proposal,
            Optional<Validation> validation,
            List<Caution> cautions) {
        this(job, screened, estimate, proposal, validation, cautions, List.of(), Optional.empty());
    }

    public Handed {
        Objects.requireNonNull(job, "job");
        screened = List.copyOf(screened);
        Objects.requireNonNull(estimate, "estimate");
        Objects.requireNonNull(proposal, "proposal");
        Objects.requireNonNull(validation, "validation");
        Objects.requireNonNull(hardware, "hardware");
        Objects.requireNonNull(nextRide, "nextRide");
        Objects.requireNonNull(rideToRide, "rideToRide");
        Objects.requireNonNull(day, "day");
        cautions = List.copyOf(cautions);
        expected = List.copyOf(expected);
        if (!expected.isEmpty() && expected.size() != screened.size()) {
            throw new IllegalArgumentException(
                    expected.size() + " expected mixtures for " + screened.size() + " rides");
        }
        if (estimate.table().cells() != proposal.before().cells()) {
            throw new IllegalArgumentException(
                    "estimate has " + estimate.table().cells() + " cells, proposal has "
                            + proposal.before().cells());
        }
    }

    /** The same, handed over on that day. */
    public Handed on(LocalDate when) {
        return new Handed(
                job,
                screened,
                estimate,
                proposal,
                validation,
                cautions,
                expected,
                hardware,
                nextRide,
                rideToRide,
                Optional.of(when));
    }

    /** Cautions of level Stop. */
    public List<Caution> stops() {
        return cautions.stream().filter(Caution::isStop).toList();
    }
}
