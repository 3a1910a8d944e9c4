package fuelwright.simulated;

import java.util.List;
import java.util.function.UnaryOperator;

/**
 * One simulated machine: the engine before and after its parts change, the table that describes it, and everything between the
 * injector and the log. Change one of its parts with the {@code with…} methods.
 *
 * @param speedsRpm breakpoints of its tables
 * @param loads breakpoints in throttle % or kPa
 * @param cylinderShare fuel that each cylinder gets, as a factor of what it should get; empty where all are alike
 */
public record Machine(
        String name,
        Engine engine,
        ThrottleBodies bodiesBefore,
        ThrottleBodies bodiesAfter,
        Breathing breathingBefore,
        Breathing breathingAfter,
        Ambient ambient,
        List<Double> speedsRpm,
        List<Double> loads,
        ControlUnit unit,
        TableFlaw flaw,
        Exhaust exhaust,
        Sensor sensor,
        Recorder recorder,
        List<Double> cylinderShare,
        Vehicle vehicle) {

    /** Stoichiometric ratio of the fuel in every tank here: petrol as {@code common practice, no source}. */
    public static final double STOICHIOMETRIC = 14.6;

    public Machine {
        speedsRpm = List.copyOf(speedsRpm);
        loads = List.copyOf(loads);
        cylinderShare = List.copyOf(cylinderShare);
    }

    public Machine withUnit(UnaryOperator<ControlUnit> change) {
        return copy(change.apply(unit), flaw, exhaust, sensor, recorder);
    }

    public Machine withFlaw(TableFlaw other) {
        return copy(unit, other, exhaust, sensor, recorder);
    }

    public Machine withExhaust(UnaryOperator<Exhaust> change) {
        return copy(unit, flaw, change.apply(exhaust), sensor, recorder);
    }

    public Machine withSensor(UnaryOperator<Sensor> change) {
        return copy(unit, flaw, exhaust, change.apply(sensor), recorder);
    }

    public Machine withRecorder(UnaryOperator<Recorder> change) {
        return copy(unit, flaw, exhaust, sensor, change.apply(recorder));
    }

    private Machine copy(ControlUnit u, TableFlaw f, Exhaust e, Sensor s, Recorder r) {
        return new Machine(
                name,
                engine,
                bodiesBefore,
                bodiesAfter,
                breathingBefore,
                breathingAfter,
                ambient,
                speedsRpm,
                loads,
                u,
                f,
                e,
                s,
                r,
                cylinderShare,
                vehicle);
    }

    AirMap airBefore() {
        return new AirMap(engine, breathingBefore, bodiesBefore, ambient);
    }

    AirMap airAfter() {
        return new AirMap(engine, breathingAfter, bodiesAfter, ambient);
    }

    double fullChargeG() {
        return engine.fullChargeG(ambient);
    }

    /** The most air the engine takes in its life, g/s: full throttle at the redline. A supply that fails does so below it. */
    public double greatestFlowGPerS() {
        AirMap air = airAfter();
        return air.flowGPerS(engine.redlineRpm(), air.pressurePa(engine.redlineRpm(), 100));
    }
}
