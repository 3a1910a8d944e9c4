package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.estimate.BurntTrace;
import fuelwright.estimate.FlowModel;
import fuelwright.estimate.SensorModel;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import fuelwright.screen.Screens;
import fuelwright.speed.BigRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** Finding lean stretches in the trace of a million readings. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
public class LeanScanBench {

    private BurntTrace trace;
    private LeanScan.Setting setting;
    private Dossier dossier;

    /** Makes the trace. */
    @Setup
    public void prepare() throws IOException {
        Ride ride = RideReader.read(BigRide.log(1_000_000), RideOptions.defaults(), p -> {}, () -> false)
                .value()
                .orElseThrow();
        Table fuel = TableReader.read(BigRide.fuelTable()).value().orElseThrow();
        Table target = TableReader.read(BigRide.targetTable()).value().orElseThrow();
        SensorModel sensor = new SensorModel(0.02, 0.9, 0.4, 0.08);
        FlowModel flow = FlowModel.of(Machine.unknown(), fuel, 0);
        trace = BurntTrace.of(ride, 0, fuel.load().kind(), sensor, flow);
        setting = new LeanScan.Setting(
                0,
                0,
                new LoadThreshold(HighLoad.of(Machine.unknown()), Double.NaN),
                target,
                target.load().kind() == Axis.Kind.THROTTLE,
                fuel,
                Limits.usual(Machine.unknown().fuel()),
                sensor.lagS(),
                2,
                4000,
                FuelCutTimes.of(ride),
                row -> false);
        ScreenedRide screened = Screens.apply(ride, ScreenSettings.defaults(), fuel.speed(), fuel.load());
        dossier = new Dossier(new CaseFile(
                Machine.unknown(),
                HighLoad.of(Machine.unknown()),
                fuel,
                target,
                List.of(new CaseFile.JudgedRide(screened, fuel)),
                Optional.empty(),
                Optional.empty(),
                Limits.usual(Machine.unknown().fuel())));
    }

    /** Whether a fuel supply that fades explains lean stretches. */
    @Benchmark
    public Object fading() {
        return FuelFading.of(dossier, dossier.traces().get(0));
    }

    /** The scan. */
    @Benchmark
    public Object scan() {
        return LeanScan.of(trace, setting);
    }
}
