package fuelwright.accuracy;

import static fuelwright.safety.Caution.Level.CHECK;
import static fuelwright.safety.Caution.Level.STOP;

import fuelwright.simulated.Ambient;
import fuelwright.simulated.Breathing;
import fuelwright.simulated.ControlUnit;
import fuelwright.simulated.ControlUnit.Fuel;
import fuelwright.simulated.ControlUnit.Index;
import fuelwright.simulated.ControlUnit.Loop;
import fuelwright.simulated.Engine;
import fuelwright.simulated.Exhaust;
import fuelwright.simulated.Machine;
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

/** The cases of {@link CautionStudy}: machines of its own, rides of its own, so that no rule was shaped on them. */
public final class CautionCases {

    private static final Recorder LAMBDA_20 = new Recorder(20, Mixture.LAMBDA, 0.001, true);
    private static final RideProfile PULLS = RideProfile.dyno(100.0, 80.0, 100.0, 60.0, 100.0, 40.0);

    private CautionCases() {}

    private static MachineBuilder twin() {
        return new MachineBuilder(
                "900 twin", new Engine(900, 2, 1100, 8800, 10), new ThrottleBodies(2, 42, 8, 6, 84), 48);
    }

    private static MachineBuilder single() {
        return new MachineBuilder(
                "450 single", new Engine(450, 1, 1450, 8600, 8), new ThrottleBodies(1, 36, 8, 5, 85), 42);
    }

    private static MachineBuilder four() {
        return new MachineBuilder(
                "750 four", new Engine(750, 4, 1200, 11500, 13), new ThrottleBodies(4, 36, 7, 6, 86), 40);
    }

    private static MachineBuilder triple() {
        return new MachineBuilder(
                "1000 triple", new Engine(1000, 3, 1150, 9800, 12), new ThrottleBodies(3, 44, 9, 5, 84), 50);
    }

    private static MachineBuilder lowTwin() {
        return new MachineBuilder(
                "1400 twin", new Engine(1400, 2, 950, 5900, 15), new ThrottleBodies(2, 44, 10, 5, 85), 52);
    }

    private static Breathing peaky(double redlineRpm) {
        return new Breathing(
                0.91,
                0.82 * redlineRpm,
                0.55,
                11.4,
                List.of(
                        new Breathing.Hump(0.35 * redlineRpm, 0.15, -0.05),
                        new Breathing.Hump(0.66 * redlineRpm, 0.14, 0.07)));
    }

    /** Nothing is wrong: the table is within 2 % of the truth. */
    public static List<CautionCase> clean() {
        List<CautionCase> all = new ArrayList<>();
        all.add(new CautionCase("clean single", single().build(), 901, RideProfile.road(10)));
        all.add(new CautionCase(
                "clean twin by pressure", twin().index(Index.PRESSURE).build(), 902, RideProfile.road(9)));
        all.add(new CautionCase(
                "clean four, AFR display",
                four().recorder(LAMBDA_20.with(Mixture.AFR)).build(),
                903,
                RideProfile.road(10)));
        all.add(new CautionCase(
                "clean triple, 10 Hz, coarse display, no pressure",
                triple().recorder(new Recorder(10, Mixture.LAMBDA, 0.01, false)).build(),
                904,
                RideProfile.road(12)));
        all.add(new CautionCase(
                "clean twin, noisy sensor",
                twin().sensor(new Sensor(0.07, false, 0.65, 1.4, 0.015, 0.03, 0))
                        .build(),
                905,
                RideProfile.road(9)));
        all.add(new CautionCase("clean single, dyno", single().build(), 906, PULLS));
        all.add(new CautionCase("clean low twin, dyno", lowTwin().build(), 907, PULLS));
        all.add(new CautionCase(
                "clean four, sparse", four().build(), 908, RideProfile.road(9).sparse(38, 0.6)));
        all.add(new CautionCase(
                "clean low twin, slow sensor",
                lowTwin()
                        .sensor(new Sensor(0.2, false, 0.65, 1.4, 0.004, 0.01, 15))
                        .build(),
                909,
                RideProfile.road(10)));
        all.add(new CautionCase(
                "clean four, closed loop with trims",
                four().loop(Loop.CLOSED_LOGGED).build(),
                910,
                RideProfile.road(10)));
        all.add(new CautionCase(
                "clean triple, pulse table", triple().fuel(Fuel.PULSE).build(), 911, RideProfile.road(8)));
        all.add(new CautionCase("clean twin, trim table", twin().fuel(Fuel.TRIM).build(), 912, RideProfile.road(9)));
        all.add(new CautionCase(
                "clean single, high ground",
                single().ambient(new Ambient(85_000, 280)).build(),
                913,
                RideProfile.road(9)));
        all.add(new CautionCase(
                "clean low twin, sensor far away",
                lowTwin().exhaust(new Exhaust(0.08, 1.0, 1.2, 0)).build(),
                914,
                RideProfile.road(10)));
        all.add(new CautionCase(
                "clean twin, cold start",
                twin().build(),
                915,
                RideProfile.road(12).cold(12)));
        all.add(new CautionCase("clean four, road and dyno", four().build(), 916, RideProfile.road(6), PULLS));
        all.add(new CautionCase(
                "clean triple, peaky, by pressure, noisy",
                triple().index(Index.PRESSURE)
                        .breathingAfter(peaky(9800))
                        .sensor(new Sensor(0.09, true, 0.65, 1.4, 0.012, 0.025, 0))
                        .build(),
                917,
                RideProfile.road(10)));
        all.add(new CautionCase(
                "clean twin, a sensor for each cylinder",
                twin().recorder(LAMBDA_20.with(Mixture.LAMBDA_EACH_CYLINDER))
                        .cylinderShare(1.0, 1.0)
                        .build(),
                918,
                RideProfile.road(8)));
        all.add(new CautionCase(
                "clean twin, small accel enrichment",
                twin().build()
                        .withUnit(u -> new ControlUnit(
                                u.index(), u.fuel(), u.deadTimeMs(), u.injectorGPerS(), u.loop(), 0.35)),
                919,
                RideProfile.road(9)));
        all.add(new CautionCase(
                "clean single, coarse AFR display, 10 Hz",
                single().recorder(new Recorder(10, Mixture.AFR, 0.01, true)).build(),
                920,
                RideProfile.road(12)));
        all.add(new CautionCase(
                "clean low twin, peaky, short ride",
                lowTwin().breathingAfter(peaky(5900)).build(),
                921,
                RideProfile.road(4)));
        all.addAll(MoreCautionCases.clean());
        all.addAll(HarderCautionCases.clean());
        return List.copyOf(all);
    }

    private static CautionCase of(String name, MachineBuilder machine, long seed, RideProfile... profiles) {
        return new CautionCase(name, machine.build(), seed, profiles);
    }

    private static RideProfile with(RideProfile profile, RideFlaws flaws) {
        return profile.with(flaws);
    }

    private static RideFlaws starving(Machine machine, double fromShare, double perS) {
        return RideFlaws.NONE.withStarvation(new Starvation(fromShare * machine.greatestFlowGPerS(), perS));
    }

    private static Machine injectors(MachineBuilder machine, double share) {
        return machine.build()
                .withUnit(u -> new ControlUnit(
                        u.index(), u.fuel(), u.deadTimeMs(), share * u.injectorGPerS(), u.loop(), u.tipInShare()));
    }

    /** Something was planted in each. */
    public static List<CautionCase> faulty() {
        List<CautionCase> all = new ArrayList<>();
        starvation(all);
        lean(all);
        sensors(all);
        units(all);
        engine(all);
        several(all);
        all.addAll(MoreCautionCases.faulty());
        all.addAll(HarderCautionCases.faulty());
        all.addAll(CautionWorkshopCases.faulty());
        return List.copyOf(all);
    }

    private static void starvation(List<CautionCase> all) {
        String any = "fuel-supply-fading|lean-under-load";
        all.add(of("starving twin, road", twin(), 931, with(RideProfile.road(12), starving(twin().build(), 0.55, 0.06)))
                .wants(any, STOP));
        all.add(of("starving four, dyno", four(), 932, with(PULLS, starving(four().build(), 0.6, 0.05)))
                .wants(any, STOP));
        all.add(of(
                        "starving low twin by pressure, road",
                        lowTwin().index(Index.PRESSURE),
                        933,
                        with(RideProfile.road(12), starving(lowTwin().build(), 0.5, 0.08)))
                .wants(any, STOP));
    }

    private static void lean(List<CautionCase> all) {
        all.add(of("lean hole, twin, dyno", twin(), 934, PULLS)
                .flaw(new TableFlaw(0.005, 0.12, 5200, 6800, 70, 100))
                .wants("lean-under-load", STOP));
        all.add(of("lean hole, single, road", single(), 935, RideProfile.road(12))
                .flaw(new TableFlaw(0.005, 0.13, 5000, 7000, 60, 100))
                .wants("lean-under-load", STOP));
        all.add(of("lean hole, four by pressure, road", four().index(Index.PRESSURE), 936, RideProfile.road(12))
                .flaw(new TableFlaw(0.005, 0.12, 6000, 9000, 85, 110))
                .wants("lean-under-load", STOP));
        all.add(of(
                        "lean hole, triple, 10 Hz, dyno",
                        triple().recorder(new Recorder(10, Mixture.LAMBDA, 0.01, false)),
                        937,
                        PULLS)
                .flaw(new TableFlaw(0.005, 0.12, 5500, 7500, 70, 100))
                .wants("lean-under-load", STOP));
        all.add(of("old table, twin", twin(), 938, RideProfile.road(10)).old().wants("lean-under-load", STOP));
        all.add(of("old table, four", four(), 939, RideProfile.road(10)).old().wants("lean-under-load", STOP));
        all.add(of("lean everywhere, low twin", lowTwin(), 940, RideProfile.road(10))
                .flaw(new TableFlaw(0.005, 0.15, 0, 9000, 0, 100))
                .wants("lean-under-load", STOP));
    }

    private static void sensors(List<CautionCase> all) {
        all.add(of(
                        "frozen sensor, twin, road",
                        twin(),
                        941,
                        RideProfile.road(10).with(RideFlaws.NONE.withFrozen(200, 260)))
                .wants("sensor-frozen", STOP));
        all.add(of("frozen sensor, dyno", single(), 942, PULLS.with(RideFlaws.NONE.withFrozen(50, 62)))
                .wants("sensor-frozen", STOP));
        all.add(of("sensor at its lean end all the time", twin(), 943, RideProfile.road(6))
                .edit(LogEdit.column(4, (v, share) -> 1.4))
                .wants("sensor-at-its-end|mixture-unit|lean-under-load", STOP));
        all.add(of(
                        "slow sensor",
                        four().sensor(new Sensor(0.38, false, 0.65, 1.4, 0.004, 0.012, 0)),
                        944,
                        RideProfile.road(10))
                .wants("sensor-slow", CHECK));
        all.add(of(
                        "one lean cylinder of two, a sensor each",
                        twin().recorder(LAMBDA_20.with(Mixture.LAMBDA_EACH_CYLINDER))
                                .cylinderShare(1.03, 0.90),
                        945,
                        RideProfile.road(10))
                .wants("sensors-apart", CHECK)
                .wants("lean-under-load", STOP));
        all.add(of(
                        "one cylinder 6 % leaner, a sensor each",
                        twin().recorder(LAMBDA_20.with(Mixture.LAMBDA_EACH_CYLINDER))
                                .cylinderShare(1.02, 0.96),
                        946,
                        RideProfile.road(10))
                .wants("sensors-apart", CHECK));
    }

    private static void units(List<CautionCase> all) {
        // The reader recognises three of these and overrules the heading: the figures are right, the heading is wrong
        // all the same.
        all.add(of("AFR called lambda, recognised", twin(), 951, RideProfile.road(6))
                .edit(LogEdit.column(4, (v, share) -> v * 14.7))
                .wants("unit-overruled", CHECK));
        all.add(of("equivalence ratio called lambda", twin(), 952, RideProfile.road(8))
                .edit(LogEdit.column(4, (v, share) -> Math.rint(1000 / v) / 1000))
                .wants("mixture-upside-down", STOP));
        all.add(of("milliseconds called seconds, recognised", four(), 953, RideProfile.road(6))
                .edit(LogEdit.column(0, (v, share) -> v * 1000))
                .wants("unit-overruled", CHECK));
        all.add(of("minutes called seconds", four(), 954, RideProfile.road(6))
                .edit(LogEdit.column(0, (v, share) -> v / 60))
                .wants("time-unit", STOP));
        all.add(of("seconds called milliseconds, recognised", four(), 955, RideProfile.road(6))
                .edit(LogEdit.heading("time [s]", "time [ms]"))
                .wants("unit-overruled", CHECK));
        all.add(of(
                        "alcohol figures on an AFR display",
                        twin().recorder(LAMBDA_20.with(Mixture.AFR)),
                        956,
                        RideProfile.road(6))
                .edit(LogEdit.column(4, (v, share) -> v * 6.46 / 14.7))
                .wants("mixture-unit", STOP));
    }

    private static void engine(List<CautionCase> all) {
        all.add(new CautionCase("injectors at their end", injectors(twin(), 0.66), 961, PULLS)
                .wants("injector-duty", STOP));
        all.add(new CautionCase("injectors near their end", injectors(four(), 0.8), 962, PULLS)
                .wants("injector-duty", CHECK));
        all.add(of("high load never ridden", single(), 963, RideProfile.road(9).sparse(10, 0.5))
                .wants("high-load-not-ridden", CHECK));
        all.add(of("misfire, twin", twin(), 964, RideProfile.road(12).with(RideFlaws.NONE.withMisfires(5)))
                .wants("misfire", CHECK));
        all.add(of("misfire, four, few", four(), 965, RideProfile.road(12).with(RideFlaws.NONE.withMisfires(2)))
                .wants("misfire", CHECK));
        all.add(of(
                        "exhaust leak by pressure",
                        twin().index(Index.PRESSURE).exhaust(new Exhaust(0.02, 0.9, 0.2, 0.6)),
                        966,
                        RideProfile.road(10))
                .wants("leak", CHECK));
        all.add(of("mostly cold", single(), 967, RideProfile.road(6).cold(5)).wants("mostly-cold", CHECK));
        all.add(of("closed loop, trims not logged, twin", twin().loop(Loop.CLOSED_UNLOGGED), 968, RideProfile.road(12))
                .old()
                .wants("closed-loop-unlogged", CHECK));
        all.add(of("closed loop, trims not logged, four", four().loop(Loop.CLOSED_UNLOGGED), 969, RideProfile.road(12))
                .old()
                .wants("closed-loop-unlogged", CHECK));
        all.add(of(
                        "closed loop, trims not logged, lean triple by pressure",
                        triple().index(Index.PRESSURE).loop(Loop.CLOSED_UNLOGGED),
                        970,
                        RideProfile.road(12))
                .flaw(new TableFlaw(0.005, 0.08, 0, 20_000, 0, 110))
                .wants("lean-under-load", STOP));
        all.add(of("throttle sensor never reaches 100", twin(), 971, RideProfile.road(10))
                .edit(LogEdit.column(2, (v, share) -> 0.82 * v))
                .wants("throttle-short", CHECK));
    }

    private static void several(List<CautionCase> all) {
        all.add(of(
                        "lean hole, misfire and frozen sensor",
                        twin(),
                        981,
                        PULLS.with(RideFlaws.NONE.withMisfires(6).withFrozen(40, 52)))
                .flaw(new TableFlaw(0.005, 0.125, 5200, 6800, 70, 100))
                .wants("lean-under-load", STOP)
                .wants("sensor-frozen", STOP)
                .wants("misfire", CHECK));
        all.add(new CautionCase(
                        "injectors at their end and a starving pump",
                        injectors(four(), 0.66),
                        982,
                        PULLS.with(starving(four().build(), 0.55, 0.06)))
                .wants("injector-duty", STOP)
                .wants("fuel-supply-fading|lean-under-load", STOP));
        all.add(of("old table and minutes called seconds", single(), 983, RideProfile.road(8))
                .old()
                .edit(LogEdit.column(0, (v, share) -> v / 60))
                .wants("time-unit", STOP));
        all.add(of(
                        "lean hole with no pressure and no gear, cold",
                        lowTwin(),
                        984,
                        RideProfile.road(12).cold(20))
                .flaw(new TableFlaw(0.005, 0.13, 3000, 4500, 60, 100))
                .wants("lean-under-load", STOP));
    }

    public static List<CautionCase> all() {
        List<CautionCase> all = new ArrayList<>(clean());
        all.addAll(faulty());
        return all;
    }
}
