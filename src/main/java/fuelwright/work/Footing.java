package fuelwright.work;

import fuelwright.estimate.CellMeans;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Estimator;
import fuelwright.estimate.NextRide;
import fuelwright.estimate.Pace;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.ProposalMaker;
import fuelwright.handover.HardwareTable;
import fuelwright.job.Job;
import fuelwright.screen.ScreenedRide;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/** What the last analysis of some rides and tables leaves for the next one, in which other readings count. Thread-safe. */
final class Footing {

    private Estimator estimator;
    private Analysis analysis;

    /** @param ended whose run has ended; it is only asked for others */
    synchronized void stand(Estimator ended) {
        estimator = ended;
    }

    synchronized void stand(Analysis last) {
        analysis = last;
    }

    /** An estimator as new for the same rides that needn't look at what doesn't change; empty before any has run. */
    synchronized Optional<Estimator> estimator(List<Estimator.Source> sources) {
        return Optional.ofNullable(estimator).map(e -> e.rescreened(sources));
    }

    /** What can be said at once, see {@link Workbench#first}; empty before there was an analysis. */
    Optional<Analysis> first(Job job, List<Estimator.Source> sources, Cancellation cancellation) {
        Optional<Estimator> next = estimator(sources);
        Optional<Analysis> last = last();
        return next.isPresent() && last.isPresent()
                ? Optional.of(first(job, sources, next.get(), last.get(), cancellation))
                : Optional.empty();
    }

    private synchronized Optional<Analysis> last() {
        return Optional.ofNullable(analysis);
    }

    private static Analysis first(
            Job job, List<Estimator.Source> sources, Estimator next, Analysis last, Cancellation cancellation) {
        List<ScreenedRide> screened =
                sources.stream().map(Estimator.Source::screened).toList();
        CompletableFuture<CellMeans> beside = CompletableFuture.supplyAsync(next::means);
        Estimate estimate = next.first(last.estimate(), new Pace(share -> cancellation.check()));
        CellMeans means = beside.join();
        cancellation.check();
        Proposal proposal = ProposalMaker.make(estimate, means, last.highLoad(), Analyse.rules(job));
        Optional<HardwareTable> hardware = HardwareTable.of(job, proposal, screened, last.highLoad());
        return new Analysis(
                job,
                last.highLoad(),
                screened,
                means,
                estimate,
                proposal,
                Optional.empty(),
                NextRide.none(),
                Optional.empty(),
                last.cautions(),
                hardware,
                false);
    }
}
