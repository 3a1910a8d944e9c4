package fuelwright.accuracy;

import static fuelwright.accuracy.LogEdit.column;
import static fuelwright.accuracy.LogEdit.everyOther;
import static fuelwright.accuracy.LogEdit.fadingFrom;
import static fuelwright.accuracy.LogEdit.figure;
import static fuelwright.accuracy.LogEdit.heading;
import static fuelwright.accuracy.LogEdit.missing;
import static fuelwright.accuracy.LogEdit.without;
import static fuelwright.safety.Caution.Level.CHECK;
import static fuelwright.safety.Caution.Level.STOP;

import fuelwright.simulated.ControlUnit.Fuel;
import fuelwright.simulated.ControlUnit.Index;
import fuelwright.simulated.Engine;
import fuelwright.simulated.Exhaust;
import fuelwright.simulated.MachineBuilder;
import fuelwright.simulated.Recorder;
import fuelwright.simulated.Recorder.Mixture;
import fuelwright.simulated.RideFlaws;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.Sensor;
import fuelwright.simulated.TableFlaw;
import fuelwright.simulated.ThrottleBodies;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/** Cases of {@link CautionStudy} as an adversary would plan them: faults that hide, and clean rides that look like faults. */
final class HarderCautionCases {

    private static final Recorder LAMBDA_20 = new Recorder(20, Mixture.LAMBDA, 0.001, true);
    private static final RideProfile PULLS = RideProfile.dyno(100.0, 85.0, 100.0, 60.0, 100.0);
    private static final String SUPPLY = "fuel-supply-fading|lean-under-load";

    private HarderCautionCases() {}

    private static MachineBuilder twin() {
        return twin(45);
    }

    private static MachineBuilder twin(double boreAfterMm) {
        return new MachineBuilder(
                "780 twin", new Engine(780, 2, 1100, 8900, 10), new ThrottleBodies(2, 39, 8, 5, 85), boreAfterMm);
    }

    private static MachineBuilder single() {
        return new MachineBuilder(
                "510 single", new Engine(510, 1, 1400, 8200, 8), new ThrottleBodies(1, 38, 8, 6, 84), 44);
    }

    private static MachineBuilder four() {
        return new MachineBuilder(
                "850 four", new Engine(850, 4, 1150, 11_200, 14), new ThrottleBodies(4, 37, 7, 5, 85), 41);
    }

    private static MachineBuilder triple() {
        return new MachineBuilder(
                "700 triple", new Engine(700, 3, 1200, 10_800, 11), new ThrottleBodies(3, 36, 8, 5, 85), 41);
    }

    private static Recorder at(double hz) {
        return new Recorder(hz, Mixture.LAMBDA, 0.001, true);
    }

    private static CautionCase of(String name, MachineBuilder machine, long seed, RideProfile... profiles) {
        return new CautionCase(name, machine.build(), seed, profiles);
    }

    static List<CautionCase> clean() {
        List<CautionCase> all = new ArrayList<>();
        all.add(of("clean four, two loggers", four(), 1201, RideProfile.road(10))
                .twoLoggers(5.2));
        all.add(of("clean four, two loggers, 10 Hz", four().recorder(at(10)), 1202, RideProfile.road(10))
                .twoLoggers(-31));
        all.add(of(
                "clean twin, 5 Hz, by pressure",
                twin().index(Index.PRESSURE).recorder(at(5)),
                1203,
                RideProfile.road(12)));
        all.add(of("clean single, 100 Hz", single().recorder(at(100)), 1204, RideProfile.road(8)));
        all.add(of("clean four, 100 Hz, dyno", four().recorder(at(100)), 1205, PULLS));
        all.add(of(
                "clean twin, sensor behind by 0.35 s",
                twin().exhaust(new Exhaust(0.35, 0.9, 0.2, 0)),
                1206,
                RideProfile.road(10)));
        all.add(of("clean twin, nothing shown during fuel cut", twin(), 1207, RideProfile.road(10))
                .edit(missing(LogEdit.MIXTURE, r -> figure(r, LogEdit.MIXTURE) > 1.2)));
        all.add(of("clean four, rows of fuel cut not logged", four(), 1208, RideProfile.road(10))
                .edit(without(r -> figure(r, LogEdit.MIXTURE) > 1.2)));
        all.add(of("clean single, throttle from 0 to 1", single(), 1209, RideProfile.road(10))
                .edit(column(LogEdit.THROTTLE, (v, share) -> v / 100)));
        all.add(
                of("clean twin, throttle from 0 to 1, no unit", twin(), 1210, RideProfile.road(10))
                        .edit(column(LogEdit.THROTTLE, (v, share) -> v / 100)
                                .andThen(heading("throttle [%]", "throttle"))::apply));
        all.add(of(
                        "clean twin by pressure, throttle from 0 to 1",
                        twin().index(Index.PRESSURE),
                        1211,
                        RideProfile.road(10))
                .edit(column(LogEdit.THROTTLE, (v, share) -> v / 100)));
        all.add(of("clean four, ignition cut at each shift", four(), 1212, RideProfile.road(10))
                .edit(LogEdit.shiftCuts()));
        all.add(of("clean twin, every fifth row lost", twin(), 1213, RideProfile.road(10))
                .edit(without(r -> ((int) (20 * figure(r, LogEdit.TIME))) % 5 == 0)));
        all.add(of("clean twin, log begins in a pull", twin(), 1214, PULLS)
                .edit(without(r -> figure(r, LogEdit.TIME) < 9)));
        all.add(of("clean triple, three short rides", triple(), 1215, RideProfile.road(3), RideProfile.road(3), PULLS));
        all.add(of(
                        "clean twin, mixture of free air 20.9 on AFR",
                        twin().recorder(LAMBDA_20.with(Mixture.AFR)),
                        1216,
                        RideProfile.road(10))
                .edit(column(LogEdit.MIXTURE, (v, share) -> v > 19.5 ? 20.9 : v)));
        all.add(of(
                "clean four, noisy and fast sensor, 100 Hz",
                four().recorder(at(100)).sensor(new Sensor(0.03, false, 0.65, 1.6, 0.02, 0.03, 0)),
                1217,
                RideProfile.road(6)));
        all.add(of(
                "clean triple, pulse table by pressure",
                triple().index(Index.PRESSURE).fuel(Fuel.PULSE),
                1218,
                RideProfile.road(8)));
        all.add(of("clean twin, display of 0 where it sees nothing", twin(), 1219, RideProfile.road(10))
                .edit(column(LogEdit.MIXTURE, (v, share) -> v > 1.3 ? 0 : v)));
        all.add(of(
                "clean single, much unrest in the mixture",
                single().sensor(new Sensor(0.06, false, 0.65, 1.4, 0.01, 0.06, 0)),
                1220,
                RideProfile.road(10)));
        return all;
    }

    static List<CautionCase> faulty() {
        List<CautionCase> all = new ArrayList<>();
        table(all);
        supply(all);
        sensors(all);
        engine(all);
        units(all);
        several(all);
        return all;
    }

    private static void table(List<CautionCase> all) {
        TableFlaw hole = new TableFlaw(0.005, 0.13, 5200, 6900, 60, 110);
        all.add(of(
                        "lean hole by pressure, 5 Hz",
                        twin().index(Index.PRESSURE).recorder(at(5)),
                        1301,
                        RideProfile.road(12))
                .flaw(hole)
                .wants("lean-under-load", STOP));
        all.add(of("lean hole, 100 Hz", twin().recorder(at(100)), 1302, RideProfile.road(8))
                .flaw(hole)
                .wants("lean-under-load", STOP));
        all.add(of("lean hole, sensor behind by 0.35 s", twin().exhaust(new Exhaust(0.35, 0.9, 0.2, 0)), 1303, PULLS)
                .flaw(hole)
                .wants("lean-under-load", STOP));
        all.add(of("lean hole, throttle from 0 to 1", single(), 1304, RideProfile.road(10))
                .flaw(hole)
                .edit(column(LogEdit.THROTTLE, (v, share) -> v / 100))
                .wants("lean-under-load", STOP));
        all.add(of("lean hole, nothing shown beyond 1.2 and gaps in fuel cut", twin(), 1305, RideProfile.road(12))
                .flaw(hole)
                .edit(missing(LogEdit.MIXTURE, r -> figure(r, LogEdit.MIXTURE) > 1.2))
                .wants("lean-under-load", STOP));
        all.add(of("one lean cell among rich ones", twin(), 1306, PULLS)
                .flaw(new TableFlaw(0.005, 0.2, 5600, 6300, 90, 110))
                .edit(column(LogEdit.MIXTURE, (v, share) -> v * 0.96))
                .wants("lean-under-load", STOP));
        all.add(of("one lean cell by pressure", twin().index(Index.PRESSURE), 1307, RideProfile.road(12))
                .flaw(new TableFlaw(0.005, 0.25, 5600, 6300, 94, 98))
                .wants("lean-under-load", STOP));
        all.add(of("lean hole in a pulse table, two loggers", four().fuel(Fuel.PULSE), 1308, RideProfile.road(12))
                .flaw(new TableFlaw(0.005, 0.14, 6500, 9000, 60, 110))
                .twoLoggers(8.1)
                .wants("lean-under-load", STOP));
        all.add(of("lean hole, every other row without mixture", four().recorder(at(10)), 1309, RideProfile.road(12))
                .flaw(new TableFlaw(0.005, 0.14, 6500, 9000, 60, 110))
                .edit(missing(LogEdit.MIXTURE, r -> ((int) Math.rint(10 * figure(r, LogEdit.TIME))) % 2 == 0))
                .wants("lean-under-load", STOP));
        all.add(of("lean only at the top of the speed range", triple(), 1310, PULLS)
                .flaw(new TableFlaw(0.005, 0.15, 9500, 12_000, 60, 110))
                .wants("lean-under-load", STOP));
        all.add(of(
                        "lean at half throttle, low engine speed, full load",
                        twin(),
                        1311,
                        RideProfile.dyno(35.0, 48.0, 100.0))
                .flaw(new TableFlaw(0.005, 0.16, 0, 3600, 30, 110))
                .wants("lean-under-load", STOP));
    }

    private static void supply(List<CautionCase> all) {
        all.add(of("pump fades in the last third", twin(), 1321, RideProfile.road(14))
                .edit(fadingFrom(0.67, 5000, 50, 0.08))
                .wants(SUPPLY, STOP));
        all.add(of(
                        "pump fades in the last third, by pressure, 10 Hz",
                        twin().index(Index.PRESSURE).recorder(at(10)),
                        1322,
                        RideProfile.road(14))
                .edit(fadingFrom(0.67, 5000, 50, 0.08))
                .wants(SUPPLY, STOP));
        all.add(of("pump fades in the second of two rides", four(), 1323, RideProfile.road(8), RideProfile.road(10))
                .edit(everyOther(UnaryOperator.identity(), fadingFrom(0, 6500, 45, 0.07)))
                .wants(SUPPLY, STOP));
        all.add(of("injectors end above a speed", twin(), 1324, PULLS)
                .edit(LogEdit.injectorsEndAt(0.56))
                .wants("lean-under-load", STOP));
    }

    private static void sensors(List<CautionCase> all) {
        all.add(of("sensor in free air for a fifth of the ride", twin(), 1331, RideProfile.road(12))
                .edit(column(LogEdit.MIXTURE, (v, share) -> share > 0.4 && share < 0.6 ? 1.4 : v))
                .wants("lean-under-load|sensor-at-its-end", STOP));
        all.add(of(
                        "sensor in free air for a part, AFR",
                        four().recorder(LAMBDA_20.with(Mixture.AFR)),
                        1332,
                        RideProfile.road(12))
                .edit(column(LogEdit.MIXTURE, (v, share) -> share > 0.5 && share < 0.62 ? 20.9 : v))
                .wants("lean-under-load|sensor-at-its-end", STOP));
        all.add(of("sensor at its rich end at high load", twin(), 1333, RideProfile.road(10))
                .edit(column(LogEdit.MIXTURE, (v, share) -> v < 0.9 ? 0.65 : v))
                .wants("sensor-at-its-end", CHECK));
        all.add(of("sensor frozen in the last third", triple(), 1334, RideProfile.road(12))
                .edit(column(LogEdit.MIXTURE, (v, share) -> share > 0.67 ? 0.871 : v))
                .wants("sensor-frozen", STOP));
        all.add(of("sensor dead but noisy", twin(), 1335, RideProfile.road(10))
                .edit(LogEdit.rows((rows, i) -> LogEdit.put(rows.get(i), LogEdit.MIXTURE, 0.93 + 0.001 * (i * 7 % 3))))
                .wants("sensor-still", STOP));
        all.add(of(
                        "sensor of 0.6 s",
                        twin().sensor(new Sensor(0.6, false, 0.65, 1.4, 0.004, 0.012, 0)),
                        1336,
                        RideProfile.road(10))
                .wants("sensor-slow", CHECK));
        all.add(of(
                        "one lean cylinder of two, 6 %, 10 Hz",
                        twin().recorder(new Recorder(10, Mixture.LAMBDA_EACH_CYLINDER, 0.001, true))
                                .cylinderShare(1.02, 0.96),
                        1337,
                        RideProfile.road(10))
                .wants("sensors-apart", CHECK));
        all.add(of(
                        "one lean cylinder of three at high load",
                        triple().recorder(LAMBDA_20.with(Mixture.LAMBDA_EACH_CYLINDER))
                                .cylinderShare(1.0, 1.01, 0.88),
                        1338,
                        PULLS)
                .wants("lean-under-load", STOP)
                .wants("sensors-apart", CHECK));
        all.add(of("one sensor lags behind by 3 s all the ride", twin(), 1339, RideProfile.road(10))
                .edit(LogEdit.rows((rows, i) -> rows.get(rows.size() - i)[LogEdit.MIXTURE] =
                        rows.get(Math.max(1, rows.size() - i - 60))[LogEdit.MIXTURE]))
                .wants("mixture-clock", CHECK));
        all.add(of("throttle sensor slips in the ride", twin(), 1340, RideProfile.road(12))
                .edit(column(LogEdit.THROTTLE, (v, share) -> share > 0.5 ? Math.max(0, v - 7) : v))
                .wants("throttle-slipped|throttle-short", CHECK));
        all.add(of("throttle sensor creeps up", four(), 1341, RideProfile.road(12))
                .edit(column(LogEdit.THROTTLE, (v, share) -> Math.min(100, v + 6 * share)))
                .wants("throttle-slipped", CHECK));
        all.add(of("throttle sensor slips between two rides", twin(), 1342, RideProfile.road(8), RideProfile.road(8))
                .edit(everyOther(
                        UnaryOperator.identity(), column(LogEdit.THROTTLE, (v, share) -> Math.min(100, v + 5))))
                .wants("throttle-slipped", CHECK));
        all.add(of("throttle sensor slips, by pressure", twin().index(Index.PRESSURE), 1343, RideProfile.road(12))
                .edit(column(LogEdit.THROTTLE, (v, share) -> share > 0.6 ? Math.min(100, v + 5) : v))
                .wants("throttle-slipped", CHECK));
    }

    private static void engine(List<CautionCase> all) {
        all.add(of(
                        "misfire, 100 Hz",
                        twin().recorder(at(100)),
                        1351,
                        RideProfile.road(8).with(RideFlaws.NONE.withMisfires(4)))
                .wants("misfire", CHECK));
        all.add(of(
                        "misfire, 10 Hz, by pressure",
                        four().index(Index.PRESSURE).recorder(at(10)),
                        1352,
                        RideProfile.road(12).with(RideFlaws.NONE.withMisfires(5)))
                .wants("misfire", CHECK));
        all.add(of("misfire, two loggers", twin(), 1353, RideProfile.road(12).with(RideFlaws.NONE.withMisfires(5)))
                .twoLoggers(4.4)
                .wants("misfire", CHECK));
        all.add(of(
                        "misfire, slow sensor",
                        single().sensor(new Sensor(0.18, false, 0.65, 1.4, 0.004, 0.012, 0)),
                        1354,
                        RideProfile.road(12).with(RideFlaws.NONE.withMisfires(6)))
                .wants("misfire", CHECK));
        all.add(of("misfire on pulls", four(), 1355, PULLS.with(RideFlaws.NONE.withMisfires(12)))
                .wants("misfire|lean-under-load", CHECK));
        all.add(of(
                        "leak by pressure, 10 Hz",
                        single().index(Index.PRESSURE).recorder(at(10)).exhaust(new Exhaust(0.02, 0.9, 0.2, 0.5)),
                        1356,
                        RideProfile.road(10))
                .wants("leak", CHECK));
        all.add(of(
                        "leak, same bodies, by throttle",
                        twin(39).exhaust(new Exhaust(0.02, 0.9, 0.2, 0.6)),
                        1357,
                        RideProfile.road(10))
                .wants("leak", CHECK));
        all.add(of(
                        "high load never ridden, by pressure, two rides",
                        twin().index(Index.PRESSURE),
                        1358,
                        RideProfile.road(6).sparse(12, 0.5),
                        RideProfile.road(6).sparse(10, 0.6))
                .wants("high-load-not-ridden", CHECK));
        all.add(of("no mixture at high load", twin(), 1359, RideProfile.road(10))
                .edit(missing(LogEdit.MIXTURE, r -> figure(r, LogEdit.THROTTLE) > 40 || figure(r, 3) > 80))
                .wants("high-load-not-ridden", CHECK));
        all.add(of("injectors at their end, pulse table", twin().fuel(Fuel.PULSE), 1360, PULLS)
                .edit(column(LogEdit.PULSE, (v, share) -> 1.4 * v))
                .wants("injector-duty", STOP));
    }

    private static void units(List<CautionCase> all) {
        String unit = "mixture-unit|mixture-upside-down|unit-overruled";
        all.add(of("AFR called lambda by pressure", twin().index(Index.PRESSURE), 1361, RideProfile.road(8))
                .edit(column(LogEdit.MIXTURE, (v, share) -> v * 14.7))
                .wants(unit, CHECK));
        all.add(of("lambda called AFR", four(), 1362, RideProfile.road(8))
                .edit(heading("lambda [1]", "AFR [1]"))
                .wants(unit, CHECK));
        all.add(of("lambda called equivalence ratio", four(), 1363, RideProfile.road(8))
                .edit(heading("lambda [1]", "equivalence ratio [1]"))
                .wants("mixture-upside-down", STOP));
        all.add(of("milliseconds called seconds, 100 Hz", twin().recorder(at(100)), 1364, RideProfile.road(6))
                .edit(column(LogEdit.TIME, (v, share) -> v * 1000))
                .wants("time-unit|unit-overruled", CHECK));
        all.add(of("milliseconds called seconds, 200 Hz", twin().recorder(at(200)), 1365, RideProfile.road(4))
                .edit(column(LogEdit.TIME, (v, share) -> v * 1000))
                .wants("time-unit|unit-overruled", CHECK));
        all.add(of("tenths of a second called seconds", twin(), 1366, RideProfile.road(6))
                .edit(column(LogEdit.TIME, (v, share) -> v * 10))
                .wants("time-unit|sensor-slow", CHECK));
        all.add(of("seconds called milliseconds, 5 Hz", twin().recorder(at(5)), 1367, RideProfile.road(8))
                .edit(heading("time [s]", "time [ms]"))
                .wants("time-unit|unit-overruled", CHECK));
        all.add(of("percent of lambda", twin(), 1368, RideProfile.road(6))
                .edit(column(LogEdit.MIXTURE, (v, share) -> v * 100))
                .wants("mixture-unit|unit-overruled", CHECK));
        all.add(of("volts of the wideband called lambda", twin(), 1369, RideProfile.road(6))
                .edit(column(LogEdit.MIXTURE, (v, share) -> (v * 14.7 - 10) / 2))
                .wants("mixture-unit|mixture-upside-down|sensor-at-its-end", STOP));
    }

    private static void several(List<CautionCase> all) {
        all.add(of(
                        "three rides, the second frozen",
                        twin(),
                        1371,
                        RideProfile.road(5),
                        RideProfile.road(5),
                        RideProfile.road(5))
                .edit(nth(1, column(LogEdit.MIXTURE, (v, share) -> share > 0.3 ? 0.9 : v)))
                .wants("sensor-frozen", STOP));
        all.add(of(
                        "three rides, the last with another display",
                        four().recorder(LAMBDA_20.with(Mixture.AFR)),
                        1372,
                        RideProfile.road(5),
                        RideProfile.road(5),
                        RideProfile.road(5))
                .edit(nth(2, column(LogEdit.MIXTURE, (v, share) -> v * 9.77 / 14.7)))
                .wants("mixture-unit|sensor-at-its-end", STOP));
        all.add(of(
                        "four rides, one lean throughout",
                        twin(),
                        1373,
                        RideProfile.road(4),
                        RideProfile.road(4),
                        RideProfile.road(4),
                        RideProfile.road(4))
                .edit(nth(1, column(LogEdit.MIXTURE, (v, share) -> v * 1.14)))
                .wants("lean-under-load|fuel-supply-fading", STOP)
                .wants("rides-apart", STOP));
        all.add(of(
                        "a lean hole, a leak and a misfire by pressure",
                        twin().index(Index.PRESSURE).exhaust(new Exhaust(0.02, 0.9, 0.2, 0.6)),
                        1374,
                        RideProfile.road(12).with(RideFlaws.NONE.withMisfires(5)))
                .flaw(new TableFlaw(0.005, 0.13, 5200, 6900, 60, 110))
                .wants("lean-under-load", STOP)
                .wants("misfire", CHECK));
    }

    private static UnaryOperator<String> nth(int which, UnaryOperator<String> change) {
        int[] count = {0};
        return csv -> count[0]++ == which ? change.apply(csv) : csv;
    }
}
