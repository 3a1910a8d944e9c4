package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import fuelwright.job.FirstStart;
import fuelwright.job.Job;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ui.Fixture;
import fuelwright.ui.FixtureServices;
import fuelwright.work.Analyse;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.FirstRide;
import fuelwright.work.OpenRide;
import fuelwright.work.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What comes next before the first ride, and while a log waits for a column. */
class NextStepTest {

    @TempDir
    Path folder;

    /** Reads and analyses as the program does. */
    private final Session session = new Session(
            new FixtureServices() {
                @Override
                public Loaded<Ride> readRide(Path file, RideOptions options, Progress p, Cancellation c) {
                    return OpenRide.read(file, options, p, c);
                }

                @Override
                public Loaded<Analysis> analyse(Job job, Progress p, Cancellation c) {
                    return Analyse.run(job, p, c);
                }

                @Override
                public Loaded<FirstRide.Outcome> firstRide(Job job) {
                    return FirstRide.of(job);
                }

                @Override
                public List<String> writeFirstRide(FirstRide.Outcome outcome, Path to, boolean replace) {
                    return List.of("first-ride.csv");
                }
            },
            new SameThreadRunner());

    private NextStep next() {
        return NextStep.of(session).orElseThrow();
    }

    private void describe(Job change) {
        session.edit(job -> change);
    }

    private static Job ready() {
        return Fixture.job().withRides(List.of());
    }

    private Path log(String name, String headings, boolean lambda) throws IOException {
        StringBuilder text = new StringBuilder(headings + "\n");
        for (int i = 0; i < 400; i++) {
            double open = 25 + 20 * Math.sin(i / 9.0);
            text.append(String.format(
                            Locale.ROOT,
                            "%d;%d;%.1f;%s;%.1f",
                            i * 50,
                            3000 + Math.round(600 * Math.sin(i / 7.0)) + name.length(),
                            open,
                            lambda ? String.format(Locale.ROOT, "%.2f", 13.2 + (i % 7) * 0.05) : "",
                            45 + i * 0.11))
                    .append('\n');
        }
        return Files.writeString(folder.resolve(name), text);
    }

    @Test
    void beforeTheFirstRideComeTheChecksAndTheFirstRideTable() {
        describe(ready());
        assertEquals("Before the first start: 4 checks", next().words());
        assertEquals(Stage.MACHINE, next().stage());
        int asked = session.selection().checksProperty().get();
        next().go(session);
        assertEquals(asked + 1, session.selection().checksProperty().get());
        session.edit(job -> job.withFirstStart(Set.of(FirstStart.values())));
        assertEquals("Write the first-ride table", next().words());
        next().go(session);
        assertEquals(Stage.TABLES, session.stageProperty().get());
        assertEquals(
                ShownTable.FIRST_RIDE, session.selection().shownTableProperty().get());
        session.outputs().firstRide(made -> session.outputs().writeFirstRide(made, folder, files -> {}));
        assertEquals("Open a ride", next().words());
        assertTrue(next().opens());
    }

    @Test
    void nobodyIsHeldUpByIt() throws IOException {
        describe(ready());
        session.outputs().firstRide(made -> session.outputs().writeFirstRide(made, folder, files -> {}));
        assertEquals("Open a ride", next().words(), "written, whatever was ticked off");
        session.edit(job -> Fixture.job().withName("ridden"));
        assertFalse(next().words().contains("first"), next().words());
        describe(ready().withMachine(fuelwright.airflow.Machine.unknown()));
        assertEquals("Open a ride", next().words(), "no bodies were changed");
    }

    @Test
    void theTargetCanBeOpenedOrMadeOnItsTab() {
        describe(Job.empty()
                .withMachine(Fixture.job().machine())
                .withFuelTable(Fixture.job().fuelTable().orElseThrow()));
        assertEquals("Open or make the target table", next().words());
        assertFalse(next().opens(), "no dialogue of files");
        next().go(session);
        assertEquals(ShownTable.TARGET, session.selection().shownTableProperty().get());
    }

    @Test
    void whileALogWaitsForAColumnThatIsAskedFor() throws IOException {
        describe(ready());
        session.open(List.of(log("odd.csv", "K1;K2;K3;BB_AFR_1;K5", true)));
        RefusedLogs.Refused odd = session.refused().all().get(0);
        assertEquals(List.of(Role.TIME, Role.ENGINE_SPEED, Role.THROTTLE), odd.missing(), "all at once");
        assertEquals("Say which column is the time", next().words());
        session.refused().leave(odd);
        session.open(List.of(log("half.csv", "t_ms;Umdr;K3;BB_AFR_1;K5", true)));
        assertEquals(1, session.job().rides().size());
        assertEquals("Say which column is the throttle", next().words());
        assertEquals(Stage.RIDES, next().stage());
        RideLacks.Lack lack = RideLacks.lacks(session).get(0);
        assertEquals(List.of(Role.THROTTLE), lack.roles());
        session.reading().again(lack.ride(), o -> o.withRole("K3", Role.THROTTLE));
        assertEquals(List.of(), RideLacks.lacks(session));
        assertFalse(next().words().contains("column"), next().words());
    }

    @Test
    void aScreenThatLacksItsChannelAsksOnceWhetherAColumnIsIt() throws IOException {
        session.open(List.of(log("cold.csv", "t_ms;Umdr;Griff_pct;BB_AFR_1;K5", true)));
        List<RideLacks.Doubt> doubts = RideLacks.doubts(session);
        assertEquals(1, doubts.size());
        assertEquals("K5", doubts.get(0).column().heading());
        assertEquals(Role.COOLANT, doubts.get(0).role());
        assertEquals(Optional.of("2 questions"), Unsettled.of(Stage.RIDES, session), "and what the AFR is divided by");
        session.reading().again(doubts.get(0).ride(), o -> o.withRole("K5", Role.OTHER));
        assertEquals(List.of(), RideLacks.doubts(session), "it isn't");
        session.undo();
        session.reading().again(doubts.get(0).ride(), o -> o.withRole("K5", Role.COOLANT));
        assertEquals(List.of(), RideLacks.doubts(session));
        assertTrue(session.job().rides().get(0).ride().channel(Role.COOLANT).isPresent());
    }

    @Test
    void aRideOfWhichNothingCountsIsSaidAndTheOthersGoOn() throws IOException {
        describe(ready().withMachine(fuelwright.airflow.Machine.unknown()));
        session.open(List.of(log("good.csv", "t_ms;Umdr;Griff_pct;BB_AFR_1;Wasser", true)));
        session.open(List.of(log("no-lambda.csv", "t_ms;Umdr;Griff_pct;K4;Wasser", false)));
        assertEquals(List.of(), session.refusalProperty().get());
        assertTrue(session.analysis() != null);
        assertEquals("no-lambda.csv", RideLacks.useless(session).get(0).ride().name());
        assertTrue(session.issues().get(0).what().startsWith("Nothing of this ride counts"), "said first");
        assertTrue(
                session.issues().toString().contains("Nothing of this ride counts"),
                session.issues().toString());
        session.edit(job -> job.withRides(job.rides().subList(0, 1)));
        assertFalse(session.issues().toString().contains("Nothing of this ride counts"));
    }

    @Test
    void whatWasSaidOfARideGoesWithIt() throws IOException {
        session.open(List.of(log("blind.csv", "t_ms;Umdr;Griff_pct;K4;Wasser", false)));
        session.issues().add(fuelwright.issue.Issue.error("blind.csv", 0, 0, "no mixture", ""));
        session.edit(job -> job.withRides(List.of()));
        assertEquals(List.of(), session.issues());
    }
}
