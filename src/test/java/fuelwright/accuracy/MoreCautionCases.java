package fuelwright.accuracy;

import static fuelwright.safety.Caution.Level.CHECK;
import static fuelwright.safety.Caution.Level.NOTE;
import static fuelwright.safety.Caution.Level.STOP;

import fuelwright.job.Job;
import fuelwright.mixture.Fuel;
import fuelwright.simulated.Ambient;
import fuelwright.simulated.ControlUnit.Index;
import fuelwright.simulated.ControlUnit.Loop;
import fuelwright.simulated.Engine;
import fuelwright.simulated.MachineBuilder;
import fuelwright.simulated.Recorder;
import fuelwright.simulated.Recorder.Mixture;
import fuelwright.simulated.RideFlaws;
import fuelwright.simulated.RideFlaws.Starvation;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.Sensor;
import fuelwright.simulated.TableFlaw;
import fuelwright.simulated.ThrottleBodies;
import java.util.ArrayList;
import java.util.List;

/** Further cases of {@link CautionStudy}: other machines, other conditions, other faults. Planted after the rules were written, but for the clock's. */
final class MoreCautionCases {

    private static final Recorder LAMBDA_20 = new Recorder(20, Mixture.LAMBDA, 0.001, true);

    private MoreCautionCases() {}

    private static MachineBuilder small() {
        return new MachineBuilder(
                "190 single", new Engine(190, 1, 1500, 9800, 6), new ThrottleBodies(1, 26, 6, 6, 84), 30);
    }

    private static MachineBuilder bigSingle() {
        return new MachineBuilder(
                "650 single", new Engine(650, 1, 1300, 7600, 9), new ThrottleBodies(1, 40, 9, 5, 85), 46);
    }

    private static MachineBuilder parallel() {
        return new MachineBuilder(
                "820 twin", new Engine(820, 2, 1150, 9200, 10), new ThrottleBodies(2, 40, 8, 5, 84), 45);
    }

    private static MachineBuilder four() {
        return new MachineBuilder(
                "600 four", new Engine(600, 4, 1300, 13_500, 14), new ThrottleBodies(4, 34, 7, 6, 86), 38);
    }

    private static CautionCase of(String name, MachineBuilder machine, long seed, RideProfile... profiles) {
        return new CautionCase(name, machine.build(), seed, profiles);
    }

    private static Job fuel(Job job, Fuel fuel) {
        return job.withMachine(job.machine().with(fuel));
    }

    static List<CautionCase> clean() {
        List<CautionCase> all = new ArrayList<>();
        all.add(of("clean small single", small(), 1001, RideProfile.road(10)));
        all.add(of("clean small single, dyno", small(), 1002, RideProfile.dyno(100.0, 70.0, 100.0, 50.0, 100.0)));
        all.add(of("clean big single by pressure", bigSingle().index(Index.PRESSURE), 1003, RideProfile.road(10)));
        all.add(of(
                "clean twin by pressure, sparse",
                parallel().index(Index.PRESSURE),
                1004,
                RideProfile.road(9).sparse(30, 0.6)));
        all.add(of("clean twin, two loggers", parallel(), 1005, RideProfile.road(10))
                .twoLoggers(3.7));
        all.add(of("clean four by pressure, two loggers", four().index(Index.PRESSURE), 1006, RideProfile.road(10))
                .twoLoggers(-12.4));
        all.add(of(
                        "clean twin on E85, AFR display at 14.7",
                        parallel().recorder(LAMBDA_20.with(Mixture.AFR)),
                        1007,
                        RideProfile.road(10))
                .told(j -> fuel(j, Fuel.E85)));
        all.add(of(
                "clean twin by pressure, closed loop with trims",
                parallel().index(Index.PRESSURE).loop(Loop.CLOSED_LOGGED),
                1008,
                RideProfile.road(10)));
        all.add(of(
                "clean big single, cold morning ridden warm",
                bigSingle(),
                1009,
                RideProfile.road(20).cold(4)));
        all.add(of(
                "clean four, hot day on high ground",
                four().ambient(new Ambient(84_000, 306)),
                1010,
                RideProfile.road(10)));
        all.add(of(
                "clean twin, 5 Hz, coarse",
                parallel().recorder(new Recorder(5, Mixture.LAMBDA, 0.01, true)),
                1011,
                RideProfile.road(14)));
        all.add(of(
                "clean four, a sensor for each cylinder, dyno",
                four().recorder(LAMBDA_20.with(Mixture.LAMBDA_EACH_CYLINDER)).cylinderShare(1.0, 1.01, 0.99, 1.0),
                1012,
                RideProfile.dyno(100.0, 80.0, 100.0, 60.0)));
        all.add(of(
                "clean small single, noisy and slow",
                small().sensor(new Sensor(0.15, false, 0.65, 1.4, 0.012, 0.025, 10)),
                1013,
                RideProfile.road(10)));
        return all;
    }

    static List<CautionCase> faulty() {
        List<CautionCase> all = new ArrayList<>();
        table(all);
        supply(all);
        sensors(all);
        conditions(all);
        return all;
    }

    private static void table(List<CautionCase> all) {
        all.add(of("lean hole of one column of cells", parallel(), 1021, RideProfile.dyno(100.0, 90.0, 100.0, 80.0))
                .flaw(new TableFlaw(0.005, 0.16, 5700, 6300, 60, 100))
                .wants("lean-under-load", STOP));
        all.add(of("injector a fifth too small", bigSingle(), 1022, RideProfile.road(10))
                .flaw(new TableFlaw(0.005, 0.2, 0, 20_000, 0, 200))
                .wants("lean-under-load", STOP));
        all.add(of("injector half as large again", parallel(), 1023, RideProfile.road(10))
                .flaw(new TableFlaw(0.005, -0.5, 0, 20_000, 0, 200))
                .wants("sensor-at-its-end|mixture-unit", STOP));
        all.add(of("E30 in the tank of a petrol table", four(), 1024, RideProfile.road(10))
                .flaw(new TableFlaw(0.005, 0.117, 0, 20_000, 0, 200))
                .wants("lean-under-load", STOP));
        all.add(of(
                        "E85 scale on the AFR display",
                        parallel().recorder(LAMBDA_20.with(Mixture.AFR)),
                        1025,
                        RideProfile.road(8))
                .edit(LogEdit.column(LogEdit.MIXTURE, (v, share) -> Math.rint(100 * v * 9.77 / 14.7) / 100))
                .wants("mixture-unit|sensor-at-its-end", STOP));
    }

    private static void supply(List<CautionCase> all) {
        String supply = "fuel-supply-fading";
        all.add(of(
                        "pump fades, recovers slowly",
                        parallel(),
                        1031,
                        starving(RideProfile.road(14), parallel(), 0.5, 0.05, 0, 0.01))
                .wants(supply + "|lean-under-load", STOP));
        all.add(of(
                        "pump fades after a reserve",
                        four(),
                        1032,
                        starving(RideProfile.road(14), four(), 0.5, 0.08, 3, 0.05))
                .wants(supply + "|lean-under-load", STOP));
        all.add(of(
                        "filter clogs, recovers at rest",
                        bigSingle(),
                        1033,
                        starving(RideProfile.road(14), bigSingle(), 0.55, 0.07, 0, 0.4))
                .wants(supply, STOP));
        all.add(of(
                        "filter clogs by pressure",
                        parallel().index(Index.PRESSURE),
                        1034,
                        starving(RideProfile.road(14), parallel(), 0.5, 0.07, 0, 0.4))
                .wants(supply, STOP));
        all.add(of(
                        "filter clogs, small single",
                        small(),
                        1035,
                        starving(RideProfile.road(14), small(), 0.55, 0.06, 0, 0.3))
                .wants(supply, STOP));
        all.add(of(
                        "fuel pressure sinks all the ride",
                        four(),
                        1036,
                        starving(RideProfile.road(10), four(), 0, 0.0004, 0, 0))
                .wants("lean-under-load|" + supply, STOP)
                .wants("reading-drifts", CHECK));
    }

    private static RideProfile starving(
            RideProfile profile,
            MachineBuilder machine,
            double fromShare,
            double perS,
            double reserveS,
            double backPerS) {
        double from = fromShare * machine.build().greatestFlowGPerS();
        return profile.with(RideFlaws.NONE.withStarvation(new Starvation(from, perS, reserveS, backPerS)));
    }

    private static void sensors(List<CautionCase> all) {
        all.add(of(
                        "sensors of two cylinders swapped, one lean",
                        parallel()
                                .recorder(LAMBDA_20.with(Mixture.LAMBDA_EACH_CYLINDER))
                                .cylinderShare(1.04, 0.91),
                        1041,
                        RideProfile.road(10))
                .edit(LogEdit.swapped(LogEdit.MIXTURE, LogEdit.MIXTURE + 1))
                .wants("sensors-apart", CHECK)
                .wants("lean-under-load", STOP));
        all.add(of(
                        "a lean cylinder by pressure, a sensor each",
                        parallel()
                                .index(Index.PRESSURE)
                                .recorder(LAMBDA_20.with(Mixture.LAMBDA_EACH_CYLINDER))
                                .cylinderShare(1.03, 0.9),
                        1042,
                        RideProfile.road(10))
                .wants("sensors-apart", CHECK)
                .wants("lean-under-load", STOP));
        all.add(of(
                        "a lean cylinder that the one sensor can't see",
                        parallel().cylinderShare(1.08, 0.92),
                        1043,
                        RideProfile.road(10))
                .wants("one-sensor", NOTE));
        all.add(of("clock of the wideband drifts by 4 s", parallel(), 1044, RideProfile.road(12))
                .edit(LogEdit.delayed(4))
                .wants("mixture-clock", CHECK));
        all.add(of("throttle sensor slipped down", bigSingle(), 1045, RideProfile.road(10))
                .edit(LogEdit.column(LogEdit.THROTTLE, (v, share) -> Math.max(0, v - 9)))
                .wants("throttle-short", CHECK));
    }

    private static void conditions(List<CautionCase> all) {
        all.add(of(
                        "closed loop, trims not logged, lean alike everywhere",
                        parallel().loop(Loop.CLOSED_UNLOGGED),
                        1101,
                        RideProfile.road(12))
                .flaw(new TableFlaw(0.008, 0.09, 0, 20_000, 0, 110))
                .wants("closed-loop-unlogged", CHECK));
        all.add(of("closed loop, long trim not logged", parallel().loop(Loop.CLOSED_LOGGED), 1102, RideProfile.road(12))
                .flaw(new TableFlaw(0.004, 0.09, 0, 20_000, 0, 110))
                .edit(LogEdit.heading("long trim [%]", "xyz"))
                .wants("long-trim-unlogged", CHECK));
        all.add(of("heat soak", parallel(), 1051, RideProfile.road(10))
                .edit(LogEdit.hot())
                .wants("heat-soaked", CHECK)
                .wants("intake-hot", CHECK));
        all.add(of("a pass climbed on the way", four(), 1052, RideProfile.road(10))
                .edit(LogEdit.barometer(101, 84))
                .wants("barometer-moves", CHECK));
        all.add(of("two rides at different heights", four(), 1053, RideProfile.road(5), RideProfile.road(5))
                .edit(LogEdit.everyOther(LogEdit.barometer(101, 101), LogEdit.barometer(90, 90)))
                .wants("barometer-apart", CHECK));
    }
}
