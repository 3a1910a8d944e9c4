package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.accuracy.SimulatedJob;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import fuelwright.safety.Caution;
import fuelwright.screen.Screen;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.SimulatedMachines;
import fuelwright.simulated.Simulation;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Cautions of what the job itself says: how an AFR was read, and what was switched off. */
class JobCautionsTest {

    private static final MachineTables TABLES = new MachineTables(SimulatedMachines.vTwin720());
    private static Job job;

    @BeforeAll
    static void ride() {
        var old = TABLES.old(1);
        job = SimulatedJob.of(
                TABLES,
                old,
                List.of(Simulation.ride(TABLES, old, RideProfile.road(4), 1).csv()),
                true);
    }

    private static Ride afr(RideOptions options) {
        StringBuilder log = new StringBuilder("time [s],engine speed [rpm],throttle [%],AFR [1]\n");
        for (int i = 0; i < 400; i++) {
            log.append(i * 0.05).append(',').append(3000 + i).append(",20,").append(13.2 + (i % 7) * 0.05);
            log.append('\n');
        }
        return RideReader.read("afr.csv", log.toString().getBytes(StandardCharsets.UTF_8), options)
                .value()
                .orElseThrow();
    }

    private static Job with(Ride ride) {
        return job.withRides(List.of(new JobRide(ride, Optional.empty())));
    }

    private static Optional<Caution> found(Job of, String rule) {
        return Analyse.run(of, Progress.NONE, Cancellation.NEVER).value().orElseThrow().cautions().stream()
                .filter(c -> c.rule().equals(rule))
                .findFirst();
    }

    @Test
    void aRatioThatNobodyToldIsACheckUntilItIsTold() {
        Caution untold =
                found(with(afr(RideOptions.defaults())), "ratio-untold").orElseThrow();
        assertEquals(Caution.Level.CHECK, untold.level());
        assertTrue(untold.what().contains("afr.csv is divided by 14.7"), untold.what());
        assertTrue(RatioUntold.of(with(afr(RideOptions.defaults().withAfrScale(14.7))))
                .isEmpty());
        assertTrue(RatioUntold.of(job).isEmpty(), "lambda needs no ratio");
    }

    @Test
    void soIsThatOfATargetInAfr() {
        Table lambda = job.targetTable().orElseThrow();
        double[] cells = lambda.toArray();
        for (int c = 0; c < cells.length; c++) {
            cells[c] *= 14.7;
        }
        Job afr = job.withTargetTable(lambda.with(Quantity.AFR, cells));
        assertTrue(RatioUntold.of(afr).orElseThrow().what().startsWith("The AFR of the target table"));
        assertTrue(RatioUntold.of(afr.withTargetRatio(OptionalDouble.of(13.2))).isEmpty());
    }

    @Test
    void soIsTheDeadTimeInPulsesAndNoneIsAnAnswer() {
        Table table = job.fuelTable().orElseThrow();
        Job pulses = job.withFuelTable(table.with(Quantity.INJECTOR_PULSE, table.toArray()))
                .withProposal(job.proposal().withDeadTimeMs(OptionalDouble.empty()));
        assertEquals(
                Caution.Level.CHECK,
                found(pulses, "dead-time-untold").orElseThrow().level());
        Job told = pulses.withProposal(pulses.proposal().withDeadTimeMs(0));
        assertTrue(DeadTimeUntold.of(told).isEmpty());
        assertTrue(DeadTimeUntold.of(job).isEmpty(), "other tables contain none");
    }

    @Test
    void aScreenThatIsOffIsNamed() {
        assertTrue(ScreensOff.of(job).isEmpty());
        Caution off = found(job.withScreens(job.screens().with(Screen.TOO_COLD, false)), "screen-off")
                .orElseThrow();
        assertEquals(Caution.Level.CHECK, off.level());
        assertTrue(off.what().startsWith("'too cold'"), off.what());
        Caution spikes = found(job.withScreens(job.screens().with(Screen.SPIKE, false)), "screen-off")
                .orElseThrow();
        assertEquals(Caution.Level.NOTE, spikes.level());
    }
}
