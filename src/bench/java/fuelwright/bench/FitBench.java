package fuelwright.bench;

import fuelwright.estimate.Estimate;
import fuelwright.estimate.Estimator;
import fuelwright.job.Job;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.table.Table;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The fit alone, with all its uncertainties, of a million readings that are read and screened. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class FitBench {

    /** Breakpoints each way. */
    @Param({"16", "64"})
    public int breakpoints;

    private Job job;
    private Table target;
    private List<Estimator.Source> sources;

    /** Reads and screens. */
    @Setup
    public void prepare() {
        job = BigJob.of(breakpoints);
        Table fuel = job.fuelTable().orElseThrow();
        target = job.targetTable().orElseThrow();
        ScreenedRide ride = Screens.apply(
                job.rides().get(0).ride(), job.screens(), fuel.speed(), fuel.load(), Optional.of(target), () -> {});
        sources = List.of(new Estimator.Source(ride, fuel));
    }

    /** Delay, noise, smoothness, cells and their covariance. */
    @Benchmark
    public Estimate fit() {
        return new Estimator(
                        job.fuelTable().orElseThrow(),
                        target,
                        sources,
                        job.machine(),
                        job.proposal().deadTimeMs())
                .run(() -> {});
    }
}
