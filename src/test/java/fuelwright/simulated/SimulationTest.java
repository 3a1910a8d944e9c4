package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.simulated.RideFlaws.Starvation;
import java.util.Arrays;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class SimulationTest {
    private static final Machine TWIN = SimulatedMachines.vTwin720();
    private static final MachineTables TABLES = new MachineTables(TWIN);
    private static final Grid OLD = TABLES.old(1);
    private static final SimulatedRide PLAIN = ride(TABLES, RideProfile.road(5));

    private static SimulatedRide ride(MachineTables tables, RideProfile profile) {
        return Simulation.ride(tables, tables.old(1), profile, 5);
    }

    /** A column by its heading; rows in the order of the moments. */
    private static double[] column(SimulatedRide ride, String heading) {
        String[] lines = ride.csv().split("\n");
        int at = Arrays.asList(lines[0].split(",")).indexOf(heading);
        return Arrays.stream(lines)
                .skip(1)
                .mapToDouble(line -> Double.parseDouble(line.split(",")[at]))
                .toArray();
    }

    private static double meanLambda(SimulatedRide ride, Predicate<Moment> when) {
        double[] lambda = column(ride, "lambda [1]");
        double sum = 0;
        int count = 0;
        for (int i = 0; i < lambda.length; i++) {
            if (when.test(ride.moments().get(i))) {
                sum += lambda[i];
                count++;
            }
        }
        return sum / count;
    }

    @Test
    void theSameArgumentsGiveTheSameBytes() {
        assertEquals(
                PLAIN.csv(), ride(new MachineTables(TWIN), RideProfile.road(5)).csv());
    }

    @Test
    void anotherTableOrAFlawDoesNotChangeTheRoad() {
        SimulatedRide other = Simulation.ride(TABLES, TABLES.truth(), RideProfile.road(5), 5);
        assertTrue(Arrays.equals(column(PLAIN, "engine speed [rpm]"), column(other, "engine speed [rpm]")));
        SimulatedRide frozen = ride(TABLES, RideProfile.road(5).with(RideFlaws.NONE.withFrozen(100, 110)));
        assertTrue(Arrays.equals(column(PLAIN, "throttle [%]"), column(frozen, "throttle [%]")));
    }

    @Test
    void eachRowHasItsMoment() {
        double[] time = column(PLAIN, "time [s]");
        assertEquals(time.length, PLAIN.moments().size());
        for (int i = 0; i < time.length; i++) {
            assertEquals(PLAIN.moments().get(i).timeS(), time[i], 0.006);
        }
    }

    @Test
    void aFrozenSensorStandsStillAndAGapHasNoRows() {
        RideFlaws flaws = RideFlaws.NONE.withFrozen(100, 110).withGap(150, 155);
        SimulatedRide ride = ride(TABLES, RideProfile.road(5).with(flaws));
        double[] time = column(ride, "time [s]");
        double[] lambda = column(ride, "lambda [1]");
        List<Double> seen = new java.util.ArrayList<>();
        for (int i = 0; i < time.length; i++) {
            assertFalse(time[i] >= 150 && time[i] < 155);
            if (time[i] >= 100 && time[i] < 110) {
                seen.add(lambda[i]);
            }
        }
        assertEquals(200, seen.size());
        assertEquals(1, seen.stream().distinct().count());
    }

    @Test
    void aSparseRideNeverOpensFurtherThanItSays() {
        SimulatedRide ride = ride(TABLES, RideProfile.road(5).sparse(25, 0.6));
        assertTrue(ride.moments().stream().allMatch(m -> m.throttlePct() <= 25.001));
        assertTrue(ride.moments().stream().anyMatch(m -> m.throttlePct() > 24));
    }

    @Test
    void aColdEngineRunsRichUntilItIsWarm() {
        SimulatedRide cold = ride(TABLES, RideProfile.road(6).cold(10));
        Moment first = cold.moments().get(40);
        assertTrue(first.lambda() < 0.88 * first.target(), "lambda " + first.lambda());
        assertFalse(first.tableAlone());
        assertTrue(cold.moments().get(cold.moments().size() - 1).warm());
    }

    @Test
    void fuelCutShowsTheUpperLimitOfTheDisplay() {
        double[] lambda = column(PLAIN, "lambda [1]");
        int cut = 0;
        for (int i = 20; i < lambda.length; i++) {
            int now = i;
            boolean longCut = PLAIN.moments().subList(now - 20, now).stream().noneMatch(Moment::fuelOn);
            if (longCut && PLAIN.moments().get(i).speedRpm() > 2000) {
                assertEquals(1.4, lambda[i], 1e-9);
                cut++;
            }
        }
        assertTrue(cut > 20, cut + " rows of fuel cut");
    }

    @Test
    void steadyRunningShowsWhatTheTableAloneWouldGive() {
        List<Moment> moments = PLAIN.moments();
        double[] lambda = column(PLAIN, "lambda [1]");
        double sum = 0;
        int count = 0;
        for (int i = 40; i < moments.size(); i++) {
            Moment now = moments.get(i);
            boolean steady = moments.subList(i - 40, i + 1).stream()
                    .allMatch(m -> m.tableAlone()
                            && m.timeS() > TWIN.sensor().heatingS() + 1
                            && Math.abs(m.throttlePct() - now.throttlePct()) < 0.4
                            && Math.abs(m.speedRpm() / now.speedRpm() - 1) < 0.02);
            if (steady) {
                sum += Math.log(lambda[i] / now.target()) - Scores.error(TABLES, OLD, now);
                count++;
            }
        }
        assertTrue(count > 200, count + " steady rows");
        assertEquals(0, sum / count, 0.003);
    }

    @Test
    void openingTheThrottleGivesALeanMoment() {
        double leanest = 0;
        for (int i = 3; i < PLAIN.moments().size(); i++) {
            Moment m = PLAIN.moments().get(i);
            double opened = m.throttlePct() - PLAIN.moments().get(i - 3).throttlePct();
            if (opened > 8 && m.tableAlone()) {
                leanest = Math.max(leanest, Math.log(m.lambda() / m.target()) - Scores.error(TABLES, OLD, m));
            }
        }
        assertTrue(leanest > 0.05, "tip-in " + leanest);
    }

    @Test
    void aFailingSupplyLeansTheTopMoreTheLongerItLasts() {
        Starvation pump = new Starvation(0.6 * TWIN.greatestFlowGPerS(), 0.05);
        RideProfile dyno = RideProfile.dyno(100.0);
        Predicate<Moment> late = m -> m.timeS() > 18.5 && m.timeS() < 20.5;
        Predicate<Moment> early = m -> m.timeS() > 10 && m.timeS() < 12;
        SimulatedRide well = ride(TABLES, dyno);
        SimulatedRide ill = ride(TABLES, dyno.with(RideFlaws.NONE.withStarvation(pump)));
        assertEquals(meanLambda(well, early), meanLambda(ill, early), 1e-9);
        assertTrue(meanLambda(ill, late) > 1.06 * meanLambda(well, late));
    }

    @Test
    void aLeakReadsLeanWhereTheFlowIsSmall() {
        MachineTables leaking = new MachineTables(TWIN.withExhaust(e -> e.withLeak(0.06)));
        Predicate<Moment> idling = m -> m.timeS() > 13 && m.fuelOn() && m.speedRpm() < 1400;
        Predicate<Moment> full = m -> m.throttlePct() > 90 && m.speedRpm() > 4500;
        SimulatedRide leak = ride(leaking, RideProfile.road(5));
        assertTrue(meanLambda(leak, idling) > 1.02 * meanLambda(PLAIN, idling));
        assertEquals(meanLambda(PLAIN, full), meanLambda(leak, full), 0.003);
    }

    @Test
    void misfiresReadLeanAndAreKnownToTheTruth() {
        SimulatedRide ride = ride(TABLES, RideProfile.road(5).with(RideFlaws.NONE.withMisfires(6)));
        List<Boolean> blamed = ride.moments().stream().map(Moment::tableAlone).collect(Collectors.toList());
        List<Boolean> plain = PLAIN.moments().stream().map(Moment::tableAlone).collect(Collectors.toList());
        assertTrue(blamed.stream().filter(b -> !b).count()
                > plain.stream().filter(b -> !b).count());
    }

    @Test
    void aClosedLoopPullsLambdaToTheTargetAndItsTrimsSayByHowMuch() {
        MachineTables tables = new MachineTables(TWIN.withUnit(u -> u.with(ControlUnit.Loop.CLOSED_LOGGED)));
        SimulatedRide ride = ride(tables, RideProfile.road(12));
        double[] shortTrim = column(ride, "short trim [%]");
        double[] longTrim = column(ride, "long trim [%]");
        int late = ride.moments().size() / 2;
        double trim = 0;
        int count = 0;
        for (int i = late; i < shortTrim.length; i++) {
            if (Math.abs(shortTrim[i]) > 0.2) {
                trim += shortTrim[i] + longTrim[i];
                count++;
            }
        }
        assertTrue(count > 500, count + " rows in closed loop");
        assertTrue(trim / count > 5, "a lean table is trimmed up: " + trim / count);
        Predicate<Moment> light = m -> m.timeS() > 300 && m.fuelOn() && m.target() > 0.99 && m.throttlePct() > 3;
        double open = meanLambda(ride(TABLES, RideProfile.road(12)), light);
        double closed = meanLambda(ride, light);
        assertTrue(Math.abs(closed - 1) < 0.6 * Math.abs(open - 1), "open " + open + ", closed " + closed);
    }

    @Test
    void aSensorForEachCylinderSeesItsOwnCylinder() {
        Machine machine = SimulatedMachines.all().stream()
                .filter(m -> m.recorder().mixture() == Recorder.Mixture.LAMBDA_EACH_CYLINDER)
                .findFirst()
                .orElseThrow();
        SimulatedRide ride = ride(new MachineTables(machine), RideProfile.dyno(100.0));
        double[] one = column(ride, "lambda cylinder 1 [1]");
        double[] two = column(ride, "lambda cylinder 2 [1]");
        double ratio = 0;
        int from = 12 * 20;
        for (int i = from; i < 20 * 20; i++) {
            ratio += two[i] / one[i] / (20 * 20 - from);
        }
        assertEquals(1.02 / 0.96, ratio, 0.005);
    }
}
