package fuelwright.bench;

import fuelwright.job.Job;
import fuelwright.screen.Screen;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import fuelwright.work.Workbench;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** What the window waits for, on a million readings. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class AnalysisBench {

    private Job job;
    private Job large;
    private Workbench workbench;
    private int turn;

    /** Makes what is measured on. */
    @Setup
    public void prepare() {
        job = BigJob.of(16);
        large = BigJob.of(64);
        workbench = new Workbench();
        changed(job);
    }

    private Analysis changed(Job to) {
        return workbench.analyse(to, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
    }

    /** Everything from a job that was just opened, 16 × 16. */
    @Benchmark
    public Analysis whole() {
        return BigJob.analysed(job);
    }

    /** Another cap after the analysis. */
    @Benchmark
    public Analysis changedCap() {
        return changed(job.withProposal(job.proposal().withCaps(10 + ++turn % 20, 5)));
    }

    /** Screens as they haven't been before: screened, fitted and judged again. */
    @Benchmark
    public Analysis changedScreen() {
        return changed(otherScreens());
    }

    /** The same, until the first answer is there. */
    @Benchmark
    public Analysis changedScreenFirst() {
        return workbench.first(otherScreens(), Cancellation.NEVER).orElseThrow();
    }

    private Job otherScreens() {
        return job.withScreens(
                job.screens().with(Screen.SPIKE, false).withCoolantAtLeast(60 + 0.001 * (++turn % 5000)));
    }

    /** Everything with a table of 64 × 64 and all its uncertainties. */
    @Benchmark
    public Analysis whole64() {
        return BigJob.analysed(large);
    }
}
