package fuelwright.simulated;

import fuelwright.simulated.ControlUnit.Fuel;
import fuelwright.simulated.ControlUnit.Index;
import fuelwright.simulated.ControlUnit.Loop;
import java.util.ArrayList;
import java.util.List;

/** Builds a {@link Machine} from an ordinary one: only what differs need be said. */
public final class MachineBuilder {
    private static final int SPEEDS = 18;
    private static final List<Double> THROTTLES =
            List.of(0.0, 1.0, 2.0, 4.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 22.0, 27.0, 35.0, 48.0, 70.0, 100.0);
    private static final List<Double> PRESSURES =
            List.of(12.0, 16.0, 20.0, 25.0, 30.0, 36.0, 43.0, 50.0, 58.0, 66.0, 74.0, 82.0, 90.0, 96.0, 102.0);

    private final String name;
    private final Engine engine;
    private final ThrottleBodies before;
    private final ThrottleBodies after;
    private Breathing breathing;
    private Breathing breathingAfter;
    private Ambient ambient = Ambient.FAIR;
    private List<Double> speedsRpm;
    private List<Double> throttlesPct = THROTTLES;
    private ControlUnit unit;
    private TableFlaw flaw = TableFlaw.wobble(0.015);
    private Exhaust exhaust = new Exhaust(0.02, 0.9, 0.2, 0);
    private Sensor sensor = new Sensor(0.08, false, 0.65, 1.4, 0.004, 0.012, 0);
    private Recorder recorder = new Recorder(20, Recorder.Mixture.LAMBDA, 0.001, true);
    private List<Double> cylinderShare = List.of();

    public MachineBuilder(String name, Engine engine, ThrottleBodies before, double boreAfterMm) {
        this.name = name;
        this.engine = engine;
        this.before = before;
        this.after = before.withBore(boreAfterMm);
        double redline = engine.redlineRpm();
        breathing = new Breathing(
                0.93,
                0.72 * redline,
                0.5,
                10.8,
                List.of(
                        new Breathing.Hump(0.42 * redline, 0.19, 0.05),
                        new Breathing.Hump(0.57 * redline, 0.14, -0.04),
                        new Breathing.Hump(0.80 * redline, 0.17, 0.06)));
        List<Double> speeds = new ArrayList<>();
        double lowest = 0.8 * engine.idleRpm();
        for (int i = 0; i < SPEEDS; i++) {
            double ratio = StrictMath.pow(0.965 * redline / lowest, i / (SPEEDS - 1.0));
            speeds.add(Math.rint(lowest * ratio / 50) * 50);
        }
        speedsRpm = speeds;
        double fuelG = engine.displacementCc() * 1.2e-3 / engine.cylinders() / 14.6 / 0.87;
        double injector = fuelG / (0.72 * 120 / redline);
        unit = new ControlUnit(Index.THROTTLE, Fuel.EFFICIENCY, 0.9, Math.rint(injector * 100) / 100, Loop.OPEN, 0.6);
    }

    public MachineBuilder breathing(Breathing same) {
        breathing = same;
        return this;
    }

    public MachineBuilder breathingAfter(Breathing changed) {
        breathingAfter = changed;
        return this;
    }

    public MachineBuilder ambient(Ambient other) {
        ambient = other;
        return this;
    }

    public MachineBuilder speedsRpm(List<Double> other) {
        speedsRpm = other;
        return this;
    }

    public MachineBuilder throttlesPct(List<Double> other) {
        throttlesPct = other;
        return this;
    }

    public MachineBuilder index(Index other) {
        unit = unit.with(other);
        return this;
    }

    public MachineBuilder fuel(Fuel other) {
        unit = unit.with(other);
        return this;
    }

    public MachineBuilder loop(Loop other) {
        unit = unit.with(other);
        return this;
    }

    public MachineBuilder flaw(TableFlaw other) {
        flaw = other;
        return this;
    }

    public MachineBuilder exhaust(Exhaust other) {
        exhaust = other;
        return this;
    }

    public MachineBuilder sensor(Sensor other) {
        sensor = other;
        return this;
    }

    public MachineBuilder recorder(Recorder other) {
        recorder = other;
        return this;
    }

    public MachineBuilder cylinderShare(Double... shares) {
        cylinderShare = List.of(shares);
        return this;
    }

    public Machine build() {
        return new Machine(
                name,
                engine,
                before,
                after,
                breathing,
                breathingAfter == null ? breathing : breathingAfter,
                ambient,
                speedsRpm,
                unit.index() == Index.THROTTLE ? throttlesPct : PRESSURES,
                unit,
                flaw,
                exhaust,
                sensor,
                recorder,
                cylinderShare,
                Vehicle.solo(engine));
    }
}
