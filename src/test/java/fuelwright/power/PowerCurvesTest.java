package fuelwright.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.PowerCorrection;
import fuelwright.issue.Loaded;
import fuelwright.power.PowerCurve.Point;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import fuelwright.ride.Role;
import fuelwright.simulated.SampleData;
import fuelwright.unit.Unit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PowerCurvesTest {

    /** An engine of about 50 kW: torque with a hump, N·m to kW. */
    private static final DoubleUnaryOperator ENGINE =
            rpm -> (78 - 1.6e-6 * Math.pow(rpm - 5200, 2) + 2 * Math.sin(rpm / 700)) * rpm * 2 * Math.PI / 60_000;

    @TempDir
    Path home;

    /** P[hp] = T[lb·ft]·rpm/5252: common practice, no source; the three torques worked out from powers stated to whole hp. */
    @Test
    void powersInHorsepowerAreTheTorquesThatTheTradeCountsThemAs() {
        double[][] known = {{70, 6230, 59.0}, {76, 7400, 53.9}, {81, 7850, 54.2}};
        for (double[] k : known) {
            Point point = new Point(k[1], Unit.HORSEPOWER.toCanonical(k[0]), 0);
            assertEquals(k[2], Unit.POUND_FOOT.fromCanonical(point.torqueNm()), 0.05);
        }
    }

    @Test
    void aRoadPullGivesBackTheKnownPowerWithinItsError() {
        for (long seed = 1; seed <= 8; seed++) {
            RoadMaker maker = new RoadMaker(290, 290 * 9.80665 * 0.018, 0.5 * 1.2 * 0.55, 65, 4, seed);
            PowerCurve curve = road(maker.ride(ENGINE, 2500, 8300));
            assertTrue(curve.points().size() > 50, curve.points().size() + " points");
            int within = 0;
            for (Point p : curve.points()) {
                double off = p.powerKw() - ENGINE.applyAsDouble(p.rpm());
                within += Math.abs(off) <= 2 * p.errorKw() ? 1 : 0;
                assertTrue(Math.abs(off) <= 5 * p.errorKw() + 0.3, p + " is off by " + off);
            }
            assertTrue(
                    within >= 0.85 * curve.points().size(),
                    within + " of " + curve.points().size());
            double peak = ENGINE.applyAsDouble(curve.peakPower().rpm());
            assertEquals(peak, curve.peakPower().powerKw(), 0.03 * peak);
        }
    }

    /** From first principles: 250 kg at a steady 100 km/h roll with 44.1 N and are held back by 254.6 N of air, 8.30 kW. */
    @Test
    void theRoadTakesAtASteadySpeedWhatRollingAndAirTake() {
        RoadLoad road = new RoadLoad(250, 0.06, 0.018, 0.55, 1.2);
        assertEquals(8.299, road.powerKw(100 / 3.6, 0), 5e-4);
        assertEquals(250 * 1.06 * 2 * 100 / 3.6 / 1000, road.powerKw(100 / 3.6, 2) - road.powerKw(100 / 3.6, 0), 1e-9);
    }

    @Test
    void assumptionsOfARoadPullAreSaid() {
        RoadMaker maker = new RoadMaker(290, 51, 0.33, 65, 4, 1);
        String said = road(maker.ride(ENGINE, 2500, 8300)).remarks().toString();
        for (String word : List.of("290 kg", "0.018", "0.55 m²", "at the wheel", "rpm per km/h", "more mass")) {
            assertTrue(said.contains(word), word + " in " + said);
        }
    }

    @Test
    void aBrakedSweepIsRefusedForTheRoadMethod() throws IOException {
        Path bare = home.resolve("bare.csv");
        Files.writeString(bare, SampleData.withoutTorque(Files.readString(Path.of("sample-logs/dyno-pull.csv"))));
        Ride dyno = read(bare, RideOptions.defaults());
        List<Pull> pulls = Pull.in(dyno);
        assertEquals(2, pulls.size(), "two of the six pulls are at full throttle");
        for (Pull pull : pulls) {
            Loaded<PowerCurve> curve = PowerCurves.of(pull, Optional.of(RoadLoad.usual(300)));
            assertTrue(curve.value().isEmpty());
            assertTrue(curve.issues().get(0).sentence().contains("braked dyno's sweep"), curve.toString());
        }
    }

    @Test
    void measuredPowerInHorsepowerBecomesKilowatts() throws IOException {
        Ride ride = read(dyno("wheel power [hp]", 1 / 0.7456998715822702), RideOptions.defaults());
        holds(curve(ride));
    }

    @Test
    void measuredTorqueInPoundFeetBecomesPower() throws IOException {
        Path file = file("torque [lb-ft]", rpm -> ENGINE.applyAsDouble(rpm) * 9549.2966 / rpm / 1.3558179483314004);
        PowerCurve curve = curve(read(file, RideOptions.defaults()));
        assertEquals(PowerCurve.Source.TORQUE, curve.source());
        holds(curve);
    }

    @Test
    void powerWithoutAUnitIsNeverReadAsKilowatts() throws IOException {
        for (String heading : List.of("power", "power [cheval]")) {
            Path file = dyno(heading, 1 / 0.7456998715822702);
            Loaded<Ride> loaded = RideReader.read(file, RideOptions.defaults(), x -> {}, () -> false);
            Ride ride = loaded.value().orElseThrow();
            assertTrue(ride.channel(Role.POWER).isEmpty(), heading);
            assertTrue(loaded.issues().stream().anyMatch(i -> i.sentence().contains("could be kW, hp or PS")), heading);
            Loaded<PowerCurve> curve = PowerCurves.of(Pull.in(ride).get(0), Optional.empty());
            assertTrue(curve.issues().get(0).sentence().contains("unit"), curve.toString());
            holds(curve(read(file, RideOptions.defaults().withUnit(heading, Unit.HORSEPOWER))));
        }
    }

    @Test
    void aShiftEndsAPullAndPartThrottleIsNone() {
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            double rpm = i < 100 ? 3000 + 30 * i : i < 200 ? 4000 + 30 * (i - 100) : 3000 + 20 * (i - 200);
            rows.add(new double[] {0.05 * i, rpm, i < 200 ? 100 : 90});
        }
        List<Pull> pulls = Pull.in(ride(rows, List.of(0)));
        assertEquals(2, pulls.size());
        assertTrue(pulls.get(0).to() <= 100 && pulls.get(1).from() >= 100, pulls.toString());
        assertEquals(0, Pull.in(ride(rows, List.of(0, 50, 150))).size(), "pieces short of 1500 rpm are none");
    }

    @Test
    void correctionIsTheStandardsFactor() throws IOException {
        PowerCurve curve = curve(read(dyno("power [kW]", 1), RideOptions.defaults()));
        // SAE J1349 at 1000 hPa, 30 °C, 50 % humidity: 1.0235 by the standard's formula with the vapour pressure of
        // IAPWS
        AirOfTheDay air = new AirOfTheDay(30, 100, 50);
        PowerCurve corrected = air.corrected(curve, PowerCorrection.SAE_J1349_1990);
        assertEquals(
                1.02352, corrected.peakPower().powerKw() / curve.peakPower().powerKw(), 1e-4);
        assertEquals(1.03014, air.factor(PowerCorrection.DIN_70020), 1e-5, "DIN ignores humidity");
        assertTrue(corrected.remarks().toString().contains("SAE J1349"));
    }

    @Test
    void twoPullsShowTheBandWhereTheChangePays() throws IOException {
        PowerCurve before = curve(read(file("power [kW]", ENGINE), RideOptions.defaults()));
        DoubleUnaryOperator better = rpm -> ENGINE.applyAsDouble(rpm) * (rpm > 5500 ? 1.08 : rpm < 4000 ? 0.96 : 1);
        PowerCurve after = curve(read(file("power [kW]", better), RideOptions.defaults()));
        PullComparison comparison = PullComparison.of(before, after).value().orElseThrow();
        PullComparison.Band pays = comparison.pays().get(comparison.pays().size() - 1);
        assertEquals(5500, pays.fromRpm(), 600);
        assertTrue(pays.toRpm() >= 7900, pays.toString());
        assertEquals(8, pays.meanPercent(), 1);
        assertEquals(-4, comparison.costs().get(0).meanPercent(), 1);
        PullComparison same = PullComparison.of(before, before).value().orElseThrow();
        assertTrue(same.pays().isEmpty() && same.costs().isEmpty());
    }

    @Test
    void aMeasuredPullIsNotHeldAgainstOneOnTheRoad() throws IOException {
        PowerCurve dyno = curve(read(file("power [kW]", ENGINE), RideOptions.defaults()));
        PowerCurve road = road(new RoadMaker(290, 51, 0.33, 65, 4, 1).ride(ENGINE, 2500, 8300));
        assertFalse(PullComparison.of(dyno, road).value().isPresent());
    }

    private static void holds(PowerCurve curve) {
        for (Point p : curve.points()) {
            assertEquals(ENGINE.applyAsDouble(p.rpm()), p.powerKw(), 0.5, p.toString());
        }
    }

    private static PowerCurve road(Ride ride) {
        Pull pull = Pull.in(ride).get(0);
        Loaded<PowerCurve> loaded = PowerCurves.of(pull, Optional.of(RoadLoad.usual(290)));
        return loaded.value().orElseThrow(() -> new AssertionError(loaded.issues()));
    }

    private static PowerCurve curve(Ride ride) {
        Loaded<PowerCurve> loaded = PowerCurves.of(Pull.in(ride).get(0), Optional.empty());
        return loaded.value().orElseThrow(() -> new AssertionError(loaded.issues()));
    }

    private Path dyno(String heading, double scale) throws IOException {
        return file(heading, rpm -> scale * ENGINE.applyAsDouble(rpm));
    }

    private Path file(String heading, DoubleUnaryOperator figure) throws IOException {
        StringBuilder text = new StringBuilder("time [s],engine speed [rpm],throttle [%],lambda [1]," + heading + "\n");
        Random random = new Random(heading.length());
        for (int i = 0; i < 280; i++) {
            double rpm = i < 20 ? 2500 : i < 240 ? 2500 + 26 * (i - 20) : 2500;
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.0f,%d,0.87,%.2f%n",
                    0.05 * i,
                    rpm + 3 * random.nextGaussian(),
                    i >= 20 && i < 240 ? 100 : 5,
                    figure.applyAsDouble(rpm) * (1 + 0.003 * random.nextGaussian())));
        }
        return Files.writeString(home.resolve("pull.csv"), text);
    }

    private static Ride read(Path file, RideOptions options) throws IOException {
        Loaded<Ride> loaded = RideReader.read(file, options, x -> {}, () -> false);
        return loaded.value().orElseThrow(() -> new AssertionError(loaded.issues()));
    }

    private static Ride ride(List<double[]> rows, List<Integer> starts) {
        return new Ride(
                "made.csv",
                fuelwright.ride.Column.of(rows.stream().mapToDouble(r -> r[0]).toArray()),
                List.of(
                        RoadMaker.channel("engine speed", Role.ENGINE_SPEED, rows, 1),
                        RoadMaker.channel("throttle", Role.THROTTLE, rows, 2)),
                starts,
                List.of());
    }
}
