package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.simulated.ControlUnit;
import fuelwright.simulated.Grid;
import fuelwright.simulated.Machine;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.Recorder;
import fuelwright.simulated.RideFlaws;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.SimulatedMachines;
import fuelwright.simulated.SimulatedRide;
import fuelwright.simulated.Simulation;
import fuelwright.simulated.TableFlaw;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/**
 * Rides simulated by code that shares nothing with the program: quiet where nothing is wrong, loud where something was planted. The most
 * telling cases only; {@code fuelwright.accuracy.CautionStudy} judges many more through the whole computation.
 */
class SimulatedRidesTest {

    private static final RideProfile ROAD = RideProfile.road(6);
    private static final RideProfile PULLS = RideProfile.dyno(100.0, 60.0, 100.0, 100.0);

    private static final MachineTables TWIN = new MachineTables(SimulatedMachines.vTwin720());
    private static final Grid RIGHT = TWIN.truth();
    private static final SimulatedRide CLEAN_ROAD = Simulation.ride(TWIN, RIGHT, ROAD, 5);

    /** The most different of the machines: by throttle, pulse table, coarse and slow logger, by pressure. The study has all of them. */
    @Test
    void noStopOnCleanRides() {
        List<String> stops = new ArrayList<>();
        for (int m : new int[] {0, 6, 9, 10}) {
            MachineTables tables = new MachineTables(SimulatedMachines.all().get(m));
            Grid right = tables.truth();
            SimulatedRide ride = Simulation.ride(tables, right, ROAD, 23);
            for (Caution caution : Judge.judge(SimulatedCases.of(tables, right, List.of(ride), true))) {
                if (caution.isStop()) {
                    stops.add(tables.machine().name() + ": " + caution.sentence());
                }
            }
        }
        assertEquals(List.of(), stops);
    }

    private static CaseFile twin(Grid table, RideProfile profile) {
        return SimulatedCases.of(TWIN, table, List.of(Simulation.ride(TWIN, table, profile, 5)), false);
    }

    private static CaseFile machine(Machine machine, RideProfile profile) {
        MachineTables tables = new MachineTables(machine);
        Grid right = tables.truth();
        return SimulatedCases.of(tables, right, List.of(Simulation.ride(tables, right, profile, 5)), false);
    }

    private static void assertFound(String rule, Caution.Level level, CaseFile file) {
        List<Caution> all = Judge.judge(file);
        assertTrue(all.stream().anyMatch(c -> c.rule().equals(rule) && c.level() == level), rule + " in " + all);
    }

    @Test
    void starvationAtHighFlow() {
        RideFlaws flaws = RideFlaws.NONE.withStarvation(new RideFlaws.Starvation(30, 0.06));
        assertFound(
                "fuel-supply-fading",
                Caution.Level.STOP,
                twin(RIGHT, RideProfile.road(12).with(flaws)));
        // Sweeps are all alike: time and place can't be told apart, and the table is not let off.
        Caution sweeps = Judge.judge(twin(RIGHT, PULLS.with(flaws))).get(0);
        assertTrue(sweeps.isStop() && sweeps.what().contains("fuel supply"), sweeps.sentence());
        assertEquals("lean-under-load", sweeps.rule(), sweeps.sentence());
    }

    @Test
    void leanHoleInTheTable() {
        Grid hole = TWIN.spoilt(RIGHT, new TableFlaw(0, 0.125, 5500, 7000, 80, 100), 3);
        assertFound("lean-under-load", Caution.Level.STOP, twin(hole, PULLS));
    }

    @Test
    void theOldTableUnderBiggerBodies() {
        CaseFile file = twin(TWIN.old(3), RideProfile.road(12));
        assertFound("lean-under-load", Caution.Level.STOP, file);
        assertTrue(Judge.judge(file).stream().noneMatch(c -> c.rule().equals("fuel-supply-fading")), "not the pump");
    }

    @Test
    void frozenSensor() {
        assertFound("sensor-frozen", Caution.Level.STOP, twin(RIGHT, ROAD.with(RideFlaws.NONE.withFrozen(100, 200))));
    }

    @Test
    void injectorAtItsLimit() {
        Machine small = SimulatedMachines.vTwin720()
                .withUnit(u -> new ControlUnit(
                        u.index(), u.fuel(), u.deadTimeMs(), 0.68 * u.injectorGPerS(), u.loop(), u.tipInShare()));
        assertFound("injector-duty", Caution.Level.STOP, machine(small, PULLS));
    }

    @Test
    void highLoadNeverRidden() {
        assertFound("high-load-not-ridden", Caution.Level.CHECK, twin(RIGHT, ROAD.sparse(10, 0.5)));
    }

    @Test
    void misfire() {
        assertFound(
                "misfire", Caution.Level.CHECK, twin(RIGHT, RideProfile.road(12).with(RideFlaws.NONE.withMisfires(6))));
    }

    @Test
    void exhaustLeak() {
        Machine byPressure = SimulatedMachines.all().stream()
                .filter(m -> m.name().contains("pressure-indexed"))
                .findFirst()
                .orElseThrow()
                .withExhaust(e -> e.withLeak(0.6));
        assertFound("leak", Caution.Level.CHECK, machine(byPressure, ROAD));
    }

    @Test
    void oneLeanCylinderOfTwoWithASensorEach() {
        Machine lean = SimulatedMachines.all().stream()
                .filter(m -> m.name().contains("a sensor for each cylinder"))
                .findFirst()
                .orElseThrow();
        CaseFile file = machine(lean, PULLS);
        assertFound("sensors-apart", Caution.Level.CHECK, file);
    }

    @Test
    void mostlyCold() {
        assertFound(
                "mostly-cold",
                Caution.Level.CHECK,
                twin(RIGHT, RideProfile.road(3).cold(5)));
    }

    private static CaseFile rewritten(UnaryOperator<double[]> row) {
        return SimulatedCases.rewritten(TWIN, RIGHT, CLEAN_ROAD, row);
    }

    @Test
    void mixtureThatIsNoLambda() {
        assertFound("mixture-unit", Caution.Level.STOP, rewritten(r -> {
            r[4] *= 14.7;
            return r;
        }));
    }

    @Test
    void mixtureUpsideDown() {
        assertFound("mixture-upside-down", Caution.Level.STOP, rewritten(r -> {
            r[4] = 1 / r[4];
            return r;
        }));
    }

    @Test
    void aDisplayInHalvesOfAnAfrIsntFrozen() {
        CaseFile coarse = rewritten(r -> {
            r[4] = Math.rint(r[4] * 14.7 * 2) / 2 / 14.7;
            return r;
        });
        assertTrue(Judge.judge(coarse).stream().noneMatch(c -> c.rule().equals("sensor-frozen") && c.isStop()));
    }

    @Test
    void clockInMillisecondsTakenForSeconds() {
        assertFound("time-unit", Caution.Level.STOP, rewritten(r -> {
            r[0] *= 1000;
            return r;
        }));
    }

    @Test
    void clockInMinutesTakenForSeconds() {
        assertFound("time-unit", Caution.Level.STOP, rewritten(r -> {
            r[0] /= 60;
            return r;
        }));
    }

    @Test
    void twoFaultsAtOnceAreBothFound() {
        Grid hole = TWIN.spoilt(RIGHT, new TableFlaw(0, 0.125, 5500, 7000, 80, 100), 3);
        CaseFile file = twin(hole, PULLS.with(RideFlaws.NONE.withMisfires(6).withFrozen(40, 50)));
        assertFound("lean-under-load", Caution.Level.STOP, file);
        assertFound("sensor-frozen", Caution.Level.STOP, file);
    }

    @Test
    void recorderOfAnAfrDisplayChangesNothing() {
        Machine afr = SimulatedMachines.vTwin720().withRecorder(r -> r.with(Recorder.Mixture.AFR));
        assertEquals(
                List.of(),
                Judge.judge(machine(afr, PULLS)).stream()
                        .filter(Caution::isStop)
                        .map(Caution::sentence)
                        .toList());
    }
}
