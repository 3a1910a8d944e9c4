package fuelwright.bench;

import fuelwright.job.Job;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.table.Table;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Reading and screening a million rows. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class ReadBench {

    private Path log;
    private Job job;

    /** Makes what is measured on. */
    @Setup
    public void prepare() {
        log = BigJob.log();
        job = BigJob.of(16);
    }

    /** File to ride: dialect, figures, time, roles, units. */
    @Benchmark
    public Ride read() {
        return RideReader.read(log, RideOptions.defaults(), p -> {}, () -> false)
                .value()
                .orElseThrow();
    }

    /** All screens. */
    @Benchmark
    public ScreenedRide screens() {
        Table fuel = job.fuelTable().orElseThrow();
        return Screens.apply(job.rides().get(0).ride(), job.screens(), fuel.speed(), fuel.load());
    }
}
