package fuelwright.work;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.estimate.CellMeans;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Estimator;
import fuelwright.estimate.NextRide;
import fuelwright.estimate.Pace;
import fuelwright.estimate.Proposal;
import fuelwright.estimate.ProposalMaker;
import fuelwright.estimate.ProposalSettings;
import fuelwright.estimate.Validation;
import fuelwright.handover.HardwareTable;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Ride;
import fuelwright.safety.CaseFile;
import fuelwright.safety.Caution;
import fuelwright.safety.Findings;
import fuelwright.safety.HighLoadOfRides;
import fuelwright.safety.Judge;
import fuelwright.safety.Limits;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CompletableFuture;

/** The whole computation: job in, {@link Analysis} out. Pure: the same job gives the same analysis. */
public final class Analyse {

    /** Cautions below a Stop that may be why no reading is left. */
    private static final Set<String> EXPLAINS =
            Set.of("mostly-cold", "heat-soaked", "sensor-frozen", "sensor-at-its-end", "throttle-short");

    /** Where stages start, as shares of the whole time. */
    private static final double FITTING = 0.3;

    private static final double CHECKING = 0.7;
    private static final double JUDGING = 0.8;

    private Analyse() {}

    /**
     * @param job must be {@link Job#isReady() ready}
     * @return the analysis, or why it can't be made (no mixture and no trims, no reading left, a load channel missing …)
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public static Loaded<Analysis> run(Job job, Progress progress, Cancellation cancellation) {
        return run(job, Memo.none(), progress, cancellation);
    }

    /** What a ride is to a table. */
    private record HeardKey(Ride ride, OptionalInt cylinder) implements Memo.Key<Ride> {
        @Override
        public boolean isLarge() {
            return false;
        }
    }

    /** What the screens say of a ride. */
    private record ScreensKey(Ride ride, Axis speed, Axis load, Table target) implements Memo.Key<Screens> {
        @Override
        public boolean isLarge() {
            return false;
        }
    }

    /** What follows from a screened ride. */
    private record ScreenKey(ScreensKey ride, ScreenSettings settings) implements Memo.Key<ScreenedRide> {
        @Override
        public boolean isLarge() {
            return false;
        }
    }

    /** What follows from rides and tables, whatever counts. */
    private record FootingKey(
            Table fuel, Table target, List<Ride> rides, List<Table> madeWith, Machine machine, double deadTimeMs)
            implements Memo.Key<Footing> {
        @Override
        public boolean isLarge() {
            return false;
        }
    }

    /** What follows from the screened rides and the tables. */
    private record FitKey(Table fuel, Table target, List<Estimator.Source> sources, Machine machine, double deadTimeMs)
            implements Memo.Key<Fit> {
        @Override
        public boolean isLarge() {
            return false;
        }

        static FitKey of(Job job, List<Estimator.Source> sources) {
            return new FitKey(
                    job.fuelTable().orElseThrow(),
                    Usable.targetLambda(job),
                    List.copyOf(sources),
                    job.machine(),
                    job.proposal().deadTimeMs());
        }

        FootingKey footing() {
            return new FootingKey(
                    fuel,
                    target,
                    sources.stream().map(s -> s.screened().ride()).toList(),
                    sources.stream().map(Estimator.Source::madeWith).toList(),
                    machine,
                    deadTimeMs);
        }
    }

    private record Fit(
            HighLoad highLoad,
            Estimate estimate,
            CellMeans means,
            Validation validation,
            NextRide nextRide,
            List<Double> rideErrors) {}

    /** What the fit and the limits say about the rides. */
    private record FindingsKey(FitKey fit, Limits limits) implements Memo.Key<Findings> {
        @Override
        public boolean isLarge() {
            return true;
        }
    }

    /** The same with what is known from before. */
    static Loaded<Analysis> run(Job job, Memo memo, Progress progress, Cancellation cancellation) {
        if (!job.isReady()) {
            throw new IllegalArgumentException("job " + job.name() + " lacks a table, a target or a ride");
        }
        Table fuel = job.fuelTable().orElseThrow();
        List<Issue> issues = Usable.problems(job);
        if (!issues.isEmpty()) {
            return Loaded.refused(issues);
        }
        Table target = Usable.targetLambda(job);
        List<Estimator.Source> sources = sources(job, memo, progress, cancellation);
        List<ScreenedRide> screened =
                sources.stream().map(Estimator.Source::screened).toList();
        if (screened.stream().mapToInt(ScreenedRide::kept).sum() == 0) {
            return Loaded.refused(refusal(job, target, sources));
        }
        FitKey fitted = FitKey.of(job, sources);
        Footing footing = memo.of(fitted.footing(), Footing::new);
        Fit fit = memo.of(fitted, () -> fit(fitted, footing, memo.keeps(), progress, cancellation));
        Estimate estimate = fit.estimate;
        HighLoad highLoad = fit.highLoad;
        progress.at(JUDGING, "proposing");
        Proposal proposal = ProposalMaker.make(estimate, fit.means, highLoad, rules(job));
        cancellation.check();
        CaseFile file = new CaseFile(
                job.machine(),
                highLoad,
                fuel,
                target,
                judged(sources),
                Optional.of(estimate),
                Optional.of(proposal),
                job.limits());
        Findings findings = memo.of(
                new FindingsKey(fitted, job.limits()),
                () -> Findings.of(file, pace(progress, cancellation, JUDGING, 1, "judging", "judging")));
        cancellation.check();
        Optional<HardwareTable> hardware = HardwareTable.of(job, proposal, screened, highLoad);
        List<Caution> cautions = new ArrayList<>(findings.judge(proposal));
        hardware.ifPresent(h -> cautions.addAll(h.cautions()));
        RatioUntold.of(job).ifPresent(cautions::add);
        DeadTimeUntold.of(job).ifPresent(cautions::add);
        ScreensOff.of(job).ifPresent(cautions::add);
        cautions.addAll(RidesLeftOut.of(job));
        RoadSpeedDoubt.of(fit.nextRide).ifPresent(cautions::add);
        cautions.sort(Comparator.comparing(Caution::level));
        Analysis analysis = new Analysis(
                job,
                highLoad,
                screened,
                fit.means,
                estimate,
                proposal,
                Optional.of(fit.validation),
                fit.nextRide,
                Optional.of(RideToRide.of(job, estimate, proposal, fit.rideErrors)),
                cautions,
                hardware);
        footing.stand(analysis);
        progress.at(1, "done");
        return Loaded.of(analysis, List.of());
    }

    /**
     * A first answer to a job of which other readings count than in the last analysis of the same rides and tables, see {@link Workbench#first}.
     *
     * @param leastRows rides with fewer rows in all are worked out whole as quickly
     */
    static Optional<Analysis> first(Job job, Memo memo, long leastRows, Cancellation cancellation) {
        boolean isLong = job.rides().stream().mapToLong(r -> r.ride().size()).sum() >= leastRows;
        if (!isLong || !job.isReady() || !Usable.problems(job).isEmpty()) {
            return Optional.empty();
        }
        List<Estimator.Source> sources = sources(job, memo, Progress.NONE, cancellation);
        FitKey fitted = FitKey.of(job, sources);
        boolean counts = sources.stream().anyMatch(s -> s.screened().kept() > 0);
        if (!counts || memo.known(fitted).isPresent()) {
            return Optional.empty();
        }
        return memo.known(fitted.footing()).flatMap(f -> f.first(job, sources, cancellation));
    }

    private static List<Estimator.Source> sources(Job job, Memo memo, Progress progress, Cancellation cancellation) {
        Table fuel = job.fuelTable().orElseThrow();
        Table target = Usable.targetLambda(job);
        List<Estimator.Source> sources = new ArrayList<>();
        for (JobRide ride : job.rides()) {
            progress.at(
                    FITTING * sources.size() / job.rides().size(),
                    "screening " + ride.ride().name());
            cancellation.check();
            Table madeWith = ride.madeWith().orElse(fuel);
            Ride heard = memo.of(new HeardKey(ride.ride(), fuel.cylinder()), () -> ride.heardBy(fuel));
            ScreensKey key = new ScreensKey(heard, madeWith.speed(), madeWith.load(), target);
            Screens screens =
                    memo.of(key, () -> Screens.of(heard, madeWith.speed(), madeWith.load(), Optional.of(target)));
            ScreenedRide one = memo.of(
                    new ScreenKey(key, job.screens()), () -> screens.screened(job.screens(), cancellation::check));
            sources.add(new Estimator.Source(one, madeWith));
        }
        return sources;
    }

    /**
     * The step is that of what is typed: the one that was told, else the table's own. Where the hardware's cells aren't the table's, only they
     * are rounded to it.
     */
    static ProposalSettings rules(Job job) {
        double step = job.proposal().step() > 0
                ? job.proposal().step()
                : job.fuelTable().orElseThrow().ownStep();
        return job.proposal().withStep(job.hardware().keepsCells() ? step : 0);
    }

    /** Why nothing is left to go by, with what the cautions say of rides like these. */
    private static List<Issue> refusal(Job job, Table target, List<Estimator.Source> sources) {
        List<ScreenedRide> screened =
                sources.stream().map(Estimator.Source::screened).toList();
        List<Issue> issues = new ArrayList<>(List.of(Usable.nothingLeft(screened)));
        CaseFile file = new CaseFile(
                job.machine(),
                highLoad(job.machine(), job.fuelTable().orElseThrow(), target, sources),
                job.fuelTable().orElseThrow(),
                target,
                judged(sources),
                Optional.empty(),
                Optional.empty(),
                job.limits());
        for (Caution caution : Judge.judge(file)) {
            if (caution.isStop() || EXPLAINS.contains(caution.rule())) {
                String ride = caution.about().isEmpty() ? screened.get(0).ride().name() : caution.about();
                issues.add(new Issue(Issue.Severity.ERROR, ride, 0, 0, caution.said(), caution.todo()));
            }
        }
        return issues;
    }

    private static HighLoad highLoad(Machine machine, Table fuel, Table target, List<Estimator.Source> sources) {
        return HighLoadOfRides.of(
                machine,
                fuel.load(),
                target,
                sources.stream().map(s -> s.screened().ride()).toList());
    }

    private static List<CaseFile.JudgedRide> judged(List<Estimator.Source> sources) {
        return sources.stream()
                .map(s -> new CaseFile.JudgedRide(s.screened(), s.madeWith()))
                .toList();
    }

    /** Asks first whether the work is still wanted: once it isn't, nothing more is said. */
    private static Pace pace(
            Progress progress, Cancellation cancellation, double from, double to, String what, String then) {
        return new Pace(share -> {
            cancellation.check();
            progress.at(from + (to - from) * share, share < 1 ? what : then);
        });
    }

    private static Fit fit(FitKey of, Footing footing, boolean kept, Progress progress, Cancellation cancellation) {
        Estimator estimator = footing.estimator(of.sources)
                .orElseGet(() -> new Estimator(of.fuel, of.target, of.sources, of.machine, of.deadTimeMs));
        CompletableFuture<CellMeans> beside = CompletableFuture.supplyAsync(estimator::means);
        Estimate estimate =
                estimator.run(pace(progress, cancellation, FITTING, CHECKING, "fitting", "checking on parts left out"));
        CellMeans means = beside.join();
        HighLoad highLoad = highLoad(of.machine, of.fuel, of.target, of.sources);
        cancellation.check();
        Validation validation = estimator.validate();
        cancellation.check();
        Fit fit = new Fit(
                highLoad,
                estimate,
                means,
                validation,
                estimator.nextRide(estimate, highLoad),
                errors(of, estimator, validation));
        if (kept) {
            footing.stand(estimator.rescreened(of.sources));
        }
        return fit;
    }

    /** Error of each ride. With one ride, made with the table that is to be corrected, the check on parts left out has told it. */
    private static List<Double> errors(FitKey of, Estimator estimator, Validation validation) {
        boolean told = of.sources.size() == 1 && of.sources.get(0).madeWith().equals(of.fuel);
        return told ? List.of(validation.errorBeforePercent()) : estimator.rideErrorsPercent();
    }
}
