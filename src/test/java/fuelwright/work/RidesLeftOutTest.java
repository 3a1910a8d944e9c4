package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.accuracy.SimulatedJob;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.RideReader;
import fuelwright.ride.Role;
import fuelwright.safety.Caution;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.SimulatedMachines;
import fuelwright.simulated.Simulation;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** One ride of which nothing can be used doesn't take the others with it. */
class RidesLeftOutTest {

    private static final MachineTables TABLES = new MachineTables(SimulatedMachines.vTwin720());
    private static Job job;
    private static Analysis alone;

    @BeforeAll
    static void ride() {
        var old = TABLES.old(1);
        job = SimulatedJob.of(
                TABLES,
                old,
                List.of(Simulation.ride(TABLES, old, RideProfile.road(4), 1).csv()),
                true);
        alone = run(job).value().orElseThrow();
    }

    private static Loaded<Analysis> run(Job of) {
        return Analyse.run(of, Progress.NONE, Cancellation.NEVER);
    }

    private static JobRide blind(String name, String third) {
        StringBuilder log = new StringBuilder("time [s],engine speed [rpm]," + third + "\n");
        for (int i = 0; i < 400; i++) {
            log.append(i * 0.05)
                    .append(',')
                    .append(3000 + i + 37 * name.length())
                    .append(',')
                    .append(third.startsWith("lambda") ? 0.9 + i % 7 * 0.01 : 20 + i % 9);
            log.append('\n');
        }
        Ride ride = RideReader.read(name, log.toString().getBytes(StandardCharsets.UTF_8), RideOptions.defaults())
                .value()
                .orElseThrow();
        return new JobRide(ride, Optional.empty());
    }

    @Test
    void theOthersGoOnAsIfItWereNotThereAndThatIsSaid() {
        JobRide noMixture = blind("no-mixture.csv", "throttle [%]");
        JobRide noThrottle = blind("no-throttle.csv", "lambda [1]");
        Job all = job.withRide(noMixture).withRide(noThrottle);
        assertEquals(List.of(noMixture, noThrottle), RideNeeds.leftOut(all));
        Analysis analysis = run(all).value().orElseThrow();
        assertEquals(
                List.of(0, 0),
                analysis.screened().subList(job.rides().size(), all.rides().size()).stream()
                        .map(s -> s.kept())
                        .toList());
        for (int cell = 0; cell < job.fuelTable().orElseThrow().cells(); cell++) {
            assertEquals(
                    alone.proposal().cell(cell).after(),
                    analysis.proposal().cell(cell).after(),
                    1e-9,
                    "cell " + cell);
        }
        List<Caution> said = analysis.cautions().stream()
                .filter(c -> c.rule().equals("ride-left-out"))
                .toList();
        assertEquals(2, said.size());
        assertTrue(
                said.get(0).what().startsWith("Nothing of no-mixture.csv counts: the ride has neither"),
                said.toString());
        assertTrue(said.get(1).what().contains("indexed by"), said.toString());
    }

    @Test
    void whereNoRideCanBeUsedThatIsRefusedAsBefore() {
        Job nothing = job.withRides(List.of(blind("a.csv", "throttle [%]")));
        assertEquals(List.of(), RideNeeds.leftOut(nothing));
        List<Issue> issues = run(nothing).issues();
        assertTrue(issues.get(0).what().contains("neither a mixture nor a fuel trim"), issues.toString());
        assertEquals(
                List.of(Role.LAMBDA),
                RideNeeds.missing(nothing, nothing.rides().get(0).ride()));
        Job named = job.withRides(List.of(blind("b.csv", "BB 1")));
        assertEquals(
                new ArrayList<>(List.of(Role.THROTTLE, Role.LAMBDA)),
                RideNeeds.missing(named, named.rides().get(0).ride()));
    }
}
