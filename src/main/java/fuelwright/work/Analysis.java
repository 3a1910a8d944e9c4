package fuelwright.work;

import fuelwright.airflow.HighLoad;
import fuelwright.estimate.CellMeans;
import fuelwright.estimate.CellNeed;
import fuelwright.estimate.DelayProfile;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Estimator;
import fuelwright.estimate.ExpectedMixture;
import fuelwright.estimate.FlowModel;
import fuelwright.estimate.HighLoadCells;
import fuelwright.estimate.NextRide;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.Validation;
import fuelwright.handover.HardwareTable;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.job.PartGain;
import fuelwright.job.Results;
import fuelwright.power.Breathing;
import fuelwright.safety.Caution;
import fuelwright.safety.CellLoads;
import fuelwright.safety.LeftLean;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Table;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SortedSet;
import java.util.stream.IntStream;

/**
 * Everything that follows from a job, computed in one go: what window, command line, exports and report show.
 *
 * @param job what it follows from
 * @param highLoad what counts as high load for this machine
 * @param screened the job's rides in order, with what was kept out
 * @param means plain cell means, for comparison
 * @param estimate what each cell needs
 * @param proposal what to put into each cell
 * @param validation error before and after on parts of the ride the fit hadn't seen; empty where the ride is too short
 * @param nextRide what to ride next
 * @param rideToRide how the newest ride did, and whether it is done; empty where it wasn't worked out
 * @param cautions worst first
 * @param hardware what goes into the tuning hardware, where it doesn't take the table as it is
 * @param settled false for a first answer while the whole one is worked out ({@link Workbench#first}): its screens, estimate and proposal are
 *     those of the job, its cautions still those from before the change, and validation, next ride and ride to ride aren't there yet. It must
 *     not leave the program
 */
public record Analysis(
        Job job,
        HighLoad highLoad,
        List<ScreenedRide> screened,
        CellMeans means,
        Estimate estimate,
        Proposal proposal,
        Optional<Validation> validation,
        NextRide nextRide,
        Optional<RideToRide> rideToRide,
        List<Caution> cautions,
        Optional<HardwareTable> hardware,
        boolean settled) {

    /** An analysis that suggests nothing to ride. */
    public Analysis(
            Job job,
            HighLoad highLoad,
            List<ScreenedRide> screened,
            CellMeans means,
            Estimate estimate,
            Proposal proposal,
            Optional<Validation> validation,
            List<Caution> cautions) {
        this(
                job,
                highLoad,
                screened,
                means,
                estimate,
                proposal,
                validation,
                NextRide.none(),
                Optional.empty(),
                cautions,
                Optional.empty());
    }

    /** One that is settled. */
    public Analysis(
            Job job,
            HighLoad highLoad,
            List<ScreenedRide> screened,
            CellMeans means,
            Estimate estimate,
            Proposal proposal,
            Optional<Validation> validation,
            NextRide nextRide,
            Optional<RideToRide> rideToRide,
            List<Caution> cautions,
            Optional<HardwareTable> hardware) {
        this(
                job,
                highLoad,
                screened,
                means,
                estimate,
                proposal,
                validation,
                nextRide,
                rideToRide,
                cautions,
                hardware,
                true);
    }

    public Analysis {
        screened = List.copyOf(screened);
        cautions = List.copyOf(cautions);
    }

    /**
     * A ride's mixture as it would have been with the proposed table. Worked out when asked for: one pass over the ride.
     *
     * @param ride number of the ride in the job
     */
    public ExpectedMixture expectedMixture(int ride) {
        return ExpectedMixture.of(
                source(ride),
                proposal.corrected(),
                Usable.targetLambda(job),
                FlowModel.of(job.machine(), madeWith(ride), job.proposal().deadTimeMs()),
                estimate.sensor().model(),
                highLoad,
                job.proposal().deadTimeMs());
    }

    /** What speaks for the delay that was found. Worked out when asked for, by fitting anew. */
    public DelayProfile delayProfile(Runnable check) {
        Estimator estimator = new Estimator(
                proposal.before(),
                Usable.targetLambda(job),
                IntStream.range(0, screened.size()).mapToObj(this::source).toList(),
                job.machine(),
                job.proposal().deadTimeMs());
        estimator.run(check);
        return estimator.delayProfile();
    }

    private Estimator.Source source(int ride) {
        return new Estimator.Source(screened.get(ride), madeWith(ride));
    }

    private Table madeWith(int ride) {
        return job.rides().get(ride).madeWith().orElseGet(proposal::before);
    }

    /** What is kept with the job. Finding peaks of power is one pass over each ride. */
    public Results results() {
        double error = rideToRide.map(RideToRide::errorPercent).orElse(Double.NaN);
        return new Results(
                CellNeed.of(estimate),
                Double.isFinite(error) ? OptionalDouble.of(Math.rint(1000 * error) / 1000) : OptionalDouble.empty(),
                rideToRide.map(RideToRide::done).orElse(false),
                stops().size(),
                PowerPulls.peaks(job.rides().stream().map(JobRide::ride).toList()),
                Optional.of(HighLoadCells.of(proposal)));
    }

    /** What the part gave, cell by cell, or why that can't be told. */
    public Loaded<Breathing> partGain() {
        return PartGain.of(job, CellNeed.of(estimate));
    }

    /**
     * The same for a job that differs only in the answers to cautions, from which nothing is worked out; empty where it differs in more.
     */
    public Optional<Analysis> of(Job other) {
        boolean same = job.withAnswers(other.answers()).equals(other);
        return same
                ? Optional.of(new Analysis(
                        other,
                        highLoad,
                        screened,
                        means,
                        estimate,
                        proposal,
                        validation,
                        nextRide,
                        rideToRide,
                        cautions,
                        hardware,
                        settled))
                : Optional.empty();
    }

    /** The cells that the proposal leaves short of fuel by more than matters, as the cautions judge them. */
    public List<LeftLean> leftLean() {
        CellLoads loads = cellLoads();
        SortedSet<Integer> seenLean = LeftLean.seenLean(cautions);
        return proposal.cells().stream()
                .flatMap(c -> LeftLean.of(loads, job.limits(), seenLean, c).stream())
                .toList();
    }

    /** How the cells of the fuel table lie to high load. */
    public CellLoads cellLoads() {
        return CellLoads.of(proposal.before(), Usable.targetLambda(job), highLoad, job.limits());
    }

    /** Cautions of level Stop. */
    public List<Caution> stops() {
        return cautions.stream().filter(Caution::isStop).toList();
    }
}
