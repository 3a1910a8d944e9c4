package fuelwright.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.accuracy.SimulatedJob;
import fuelwright.job.Job;
import fuelwright.ride.Ride;
import fuelwright.simulated.ControlUnit.Loop;
import fuelwright.simulated.Machine;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.SimulatedMachines;
import fuelwright.simulated.Simulation;
import fuelwright.simulated.TableFlaw;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** Simulated rides with a closed loop whose trims, or long trim, aren't in the log. High load is right but for what light load lacks too. */
class HiddenLoopTest {

    private static final TableFlaw LEAN = new TableFlaw(0.008, 0.09, 0, 20_000, 0, 110);
    private static final TableFlaw RIGHT = TableFlaw.wobble(0.003);

    private static ScreenedRide screened(Loop loop, TableFlaw flaw, UnaryOperator<String> edit) {
        Machine machine = SimulatedMachines.vTwin720().withUnit(u -> u.with(loop));
        MachineTables tables = new MachineTables(machine);
        String log = Simulation.ride(tables, tables.spoilt(tables.truth(), flaw, 31), RideProfile.road(12), 4031)
                .csv();
        Job job = SimulatedJob.of(tables, tables.truth(), List.of(edit.apply(log)), false);
        Ride ride = job.rides().get(0).ride();
        return Screens.apply(
                ride,
                ScreenSettings.defaults(),
                job.fuelTable().get().speed(),
                job.fuelTable().get().load(),
                job.targetLambda(),
                () -> {});
    }

    private static int out(Loop loop, TableFlaw flaw, UnaryOperator<String> edit) {
        return screened(loop, flaw, edit).count(Screen.CLOSED_LOOP_UNLOGGED);
    }

    @Test
    void aLoopIsSeenByItsControlThoughNoContrastShowsIt() {
        ScreenedRide ride = screened(Loop.CLOSED_UNLOGGED, LEAN, UnaryOperator.identity());
        assertTrue(ride.count(Screen.CLOSED_LOOP_UNLOGGED) > 2000, "" + ride.count(Screen.CLOSED_LOOP_UNLOGGED));
        assertTrue(ride.kept() > 500, "high load still counts");
    }

    @Test
    void aRightTableWithoutALoopIsNone() {
        assertEquals(0, out(Loop.OPEN, RIGHT, UnaryOperator.identity()));
        assertEquals(0, out(Loop.OPEN, LEAN, UnaryOperator.identity()));
    }

    @Test
    void aShortTrimAboutNothingMayLeaveTheRestToALongOne() {
        assertEquals(0, out(Loop.CLOSED_LOGGED, LEAN, UnaryOperator.identity()));
        assertTrue(out(Loop.CLOSED_LOGGED, LEAN, log -> log.replace("long trim", "xyz")) > 2000);
    }
}
