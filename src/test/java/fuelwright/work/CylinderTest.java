package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.accuracy.SimulatedJob;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Standing;
import fuelwright.handover.Exports;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.safety.Caution;
import fuelwright.simulated.Machine;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.Recorder;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.SimulatedMachines;
import fuelwright.simulated.Simulation;
import fuelwright.simulated.TableFlaw;
import fuelwright.table.Table;
import fuelwright.table.TableReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A machine with a mixture sensor in each cylinder's pipe and a fuel table for each: the first gets too much fuel, the second too little. */
class CylinderTest {

    private static Machine machine;
    private static Job job;
    private static Analysis together;
    private static Analysis first;
    private static Analysis second;

    @BeforeAll
    static void ride() {
        machine = SimulatedMachines.all().stream()
                .filter(m -> m.recorder().mixture() == Recorder.Mixture.LAMBDA_EACH_CYLINDER)
                .findFirst()
                .orElseThrow();
        MachineTables tables = new MachineTables(machine);
        var inUnit = tables.spoilt(tables.truth(), TableFlaw.wobble(0.02), 4);
        job = SimulatedJob.of(
                tables,
                inUnit,
                List.of(Simulation.ride(tables, inUnit, RideProfile.road(10), 4).csv()),
                true);
        together = analysed(of(0));
        first = analysed(of(1));
        second = analysed(of(2));
    }

    private static Job of(int cylinder) {
        Table fuel = job.fuelTable().orElseThrow();
        return job.withFuelTable(fuel.ofCylinder(cylinder == 0 ? OptionalInt.empty() : OptionalInt.of(cylinder)));
    }

    private static Analysis analysed(Job of) {
        return Analyse.run(of, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
    }

    /** Median over measured cells of how much more fuel one needs than the other, ln. */
    private static double apart(Analysis one, Analysis other) {
        Estimate a = one.estimate();
        Estimate b = other.estimate();
        double[] all = IntStream.range(0, a.table().cells())
                .filter(c -> a.standing(c) == Standing.MEASURED && b.standing(c) == Standing.MEASURED)
                .mapToDouble(c -> a.logFactor(c) - b.logFactor(c))
                .sorted()
                .toArray();
        assertTrue(all.length > 8, Arrays.toString(all));
        return all[all.length / 2];
    }

    @Test
    void eachTableIsCorrectedByItsOwnCylindersSensor() {
        List<Double> shares = machine.cylinderShare();
        double planted = Math.log(shares.get(0) / shares.get(1));
        assertEquals(planted, apart(second, first), 0.006);
        double fromMean = apart(second, together);
        assertTrue(fromMean > 0.3 * planted && fromMean < 0.7 * planted, "together is the mean of both: " + fromMean);
    }

    @Test
    void whatIsHandedOverNamesTheCylinder() {
        Map<String, byte[]> files = Exports.files(HandOver.of(second));
        for (String name : List.of(Exports.CORRECTED, Exports.CHANGE, Exports.UNCERTAINTY, Exports.READINGS)) {
            String text = new String(files.get(name), StandardCharsets.UTF_8);
            assertEquals(
                    OptionalInt.of(2),
                    TableReader.read(name, text).value().orElseThrow().cylinder(),
                    name);
        }
        for (String name : List.of(Exports.REPORT, Exports.ENTRY_SHEET)) {
            assertTrue(new String(files.get(name), StandardCharsets.UTF_8).contains(", cylinder 2"), name);
        }
        assertTrue(together.proposal().corrected().cylinder().isEmpty());
    }

    @Test
    void aLeanCylinderThatTheTableDoesntFeedIsAStopOfItsOwn() {
        List<Caution> all = first.cautions();
        Caution other = all.stream()
                .filter(c -> c.rule().equals("lean-other-cylinder"))
                .findFirst()
                .orElseThrow(() -> new AssertionError(all.toString()));
        assertTrue(
                other.isStop() && other.cells().isEmpty() && other.what().contains("lambda cylinder 2"), other.what());
        assertTrue(together.cautions().stream().noneMatch(c -> c.rule().equals("lean-other-cylinder")));
    }

    @Test
    void aCylinderWithoutASensorIsRefusedWithTheSensorsThatThereAre() {
        Loaded<Analysis> refused = Analyse.run(of(3), Progress.NONE, Cancellation.NEVER);
        assertTrue(refused.value().isEmpty());
        String said = refused.issues().get(0).toString();
        assertTrue(said.contains("cylinder 3") && said.contains("lambda cylinder 2"), said);
    }

    @Test
    void sensorsInAnotherOrderAreRefused() {
        Job second = of(2);
        Ride ride = second.rides().get(0).ride();
        List<Channel> turned = new ArrayList<>(ride.channels());
        int left = turned.indexOf(ride.mixtures().get(0));
        int right = turned.indexOf(ride.mixtures().get(1));
        Collections.swap(turned, left, right);
        Ride other = new Ride("turned.csv", ride.timeS(), turned, ride.segmentStarts(), List.of());
        Loaded<Analysis> refused =
                Analyse.run(second.withRide(new JobRide(other, Optional.empty())), Progress.NONE, Cancellation.NEVER);
        assertTrue(refused.value().isEmpty());
        assertTrue(
                refused.issues().get(0).what().contains("another order"),
                refused.issues().toString());
    }

    @Test
    void aRideMadeWithAnotherCylindersTableIsRefused() {
        Job second = of(2);
        Table other = of(1).fuelTable().orElseThrow();
        List<JobRide> rides = second.rides().stream()
                .map(r -> new JobRide(r.ride(), Optional.of(other)))
                .toList();
        Loaded<Analysis> refused = Analyse.run(second.withRides(rides), Progress.NONE, Cancellation.NEVER);
        assertTrue(refused.value().isEmpty());
        assertTrue(
                refused.issues().get(0).what().contains("feeds cylinder 1"),
                refused.issues().toString());
    }

    @Test
    void theOnlySensorIsTakenForTheTablesCylinderAndThatIsSaid() {
        MachineTables tables = new MachineTables(SimulatedMachines.vTwin720());
        var right = tables.truth();
        Job one = SimulatedJob.of(
                tables,
                right,
                List.of(Simulation.ride(tables, right, RideProfile.road(4), 5).csv()),
                true);
        Table fuel = one.fuelTable().orElseThrow();
        Analysis alone = analysed(one.withFuelTable(fuel.ofCylinder(OptionalInt.of(2))));
        assertTrue(alone.cautions().stream().anyMatch(c -> c.rule().equals("one-sensor-of-cylinder")));
        assertTrue(alone.cautions().stream().noneMatch(c -> c.rule().equals("one-sensor")));
        assertEquals(0, apart(alone, analysed(one)), 1e-12);
    }
}
