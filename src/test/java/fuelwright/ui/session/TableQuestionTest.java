package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.Decision;
import fuelwright.issue.Issue;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.table.TableWriter;
import fuelwright.ui.Fixture;
import fuelwright.ui.FixtureServices;
import fuelwright.work.AnotherTable;
import fuelwright.work.TableInUnit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which table a ride was made with is never guessed once another table may have been in the control unit. */
class TableQuestionTest {

    @TempDir
    Path folder;

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final Table fuel = Fixture.job().fuelTable().orElseThrow();

    @BeforeEach
    void open() throws IOException {
        session.open(List.of(
                file("fuel.csv", fuel),
                file("target.csv", Fixture.job().targetTable().orElseThrow()),
                log("ride-1.csv")));
        assertEquals(List.of(Optional.empty()), tables());
    }

    private Path file(String name, Table table) throws IOException {
        return Files.writeString(folder.resolve(name), TableWriter.write(table));
    }

    private Path log(String name) throws IOException {
        return Files.writeString(folder.resolve(name), "time [s],rpm\n0,1000\n");
    }

    private Table corrected() {
        return TableInUnit.table(session.analysis());
    }

    private List<Optional<Table>> tables() {
        return session.job().rides().stream().map(JobRide::madeWith).toList();
    }

    private String said() {
        return session.issues().stream().map(Issue::sentence).toList().toString();
    }

    @Test
    void ridesKeepTheirTableWhenTheCorrectedOneIsOpened() throws IOException {
        Table corrected = corrected();
        session.open(List.of(file("corrected.csv", corrected)));
        assertEquals(
                corrected.toArray()[100],
                session.job().fuelTable().orElseThrow().at(100));
        assertEquals(List.of(Optional.of(fuel)), tables());
        assertEquals(fuel, session.job().past().get(0).table());
        assertTrue(said().contains("The ride that was there keeps the fuel table"), said());
        session.open(List.of(log("ride-2.csv")));
        assertEquals(List.of("ride-2.csv"), waiting(), "either table may have been in the unit");
        session.question().madeWithFuelTable();
        assertEquals(List.of(Optional.of(fuel), Optional.empty()), tables());
        session.undo();
        session.undo();
        assertEquals(List.of(Optional.empty()), tables());
    }

    @Test
    void aRideOpenedTogetherWithATableWasMadeWithIt() throws IOException {
        session.open(List.of(log("ride-2.csv"), file("corrected.csv", corrected())));
        assertEquals(List.of(Optional.of(fuel), Optional.empty()), tables());
    }

    @Test
    void theSameFiguresAgainChangeNothing() throws IOException {
        hold();
        Job before = session.job();
        session.open(List.of(file("again.csv", fuel)));
        assertEquals(before.rides(), session.job().rides());
        assertEquals(before.proposal(), session.job().proposal());
        assertEquals(List.of(), session.issues());
    }

    private void hold() {
        session.edit(job -> job.withProposal(job.proposal()
                .withDecisions(Map.of(
                        13, new Decision(Decision.Kind.HELD, fuel.at(13)),
                        14, new Decision(Decision.Kind.SET, 50),
                        15, new Decision(Decision.Kind.SET, 51)))));
    }

    @Test
    void heldAndTypedCellsStayWhileTheBreakpointsDo() throws IOException {
        hold();
        double[] cells = fuel.toArray();
        cells[14] = 50;
        cells[100] += 2;
        session.open(List.of(file("other.csv", fuel.withValues(cells))));
        assertEquals(
                java.util.Set.of(13, 15), session.job().proposal().decisions().keySet());
        assertTrue(said().contains("A figure that you typed is in the table opened now"), said());
    }

    @Test
    void decisionsThatCannotStayAreSaid() throws IOException {
        hold();
        session.open(List.of(file("coarse.csv", fuel.sampledAt(fuel.speed(), coarse()))));
        assertEquals(Map.of(), session.job().proposal().decisions());
        assertTrue(said().contains("3 held or typed cells were given up"), said());
    }

    private fuelwright.table.Axis coarse() {
        return new fuelwright.table.Axis(fuel.load().kind(), 0, 50, 100);
    }

    @Test
    void aTableOfAnotherKindCannotServeAndThatIsSaid() throws IOException {
        double[] pulses = new double[fuel.cells()];
        java.util.Arrays.fill(pulses, 5);
        session.open(List.of(file("pulses.csv", fuel.with(Quantity.INJECTOR_PULSE, pulses))));
        assertTrue(said().contains("can't serve"), said());
    }

    @Test
    void theTableOfAnotherCylinderWasThereOnTheSameRides() throws IOException {
        session.open(List.of(file("1.csv", fuel.ofCylinder(OptionalInt.of(1)))));
        session.issues().clear();
        double[] cells = fuel.toArray();
        cells[3] += 1;
        session.open(List.of(file("2.csv", fuel.withValues(cells).ofCylinder(OptionalInt.of(2)))));
        assertEquals(List.of(Optional.empty()), tables());
        assertTrue(said().contains("feeds another cylinder"), said());
    }

    @Test
    void afterAHandoverANewRideWaitsForAnAnswer() throws IOException {
        Table corrected = corrected();
        session.outputs().export(folder, true, false, files -> {});
        Job before = session.job();
        session.open(List.of(log("ride-2.csv")));
        assertEquals(before, session.job(), "nothing is guessed");
        assertEquals(1, session.question().waitingProperty().get().size());
        assertEquals(Stage.RIDES, session.stageProperty().get());
        assertEquals(
                "Say with which table the new ride was made",
                NextStep.of(session).orElseThrow().words());
        assertTrue(said().contains("waits"), said());
        session.open(List.of(log("ride-2.csv")));
        assertEquals(1, session.question().waitingProperty().get().size(), "the same log again");
        assertEquals(TableQuestion.Other.HANDED, session.question().other());
        String words = session.question().otherWords();
        assertTrue(
                words.matches("table 2: the corrected one that was handed over \\(\\d+ \\w+, \\d\\d:\\d\\d\\)"), words);
        session.question().madeWithOther();
        assertFalse(said().contains("waits"), said());
        assertEquals(List.of(Optional.of(fuel), Optional.empty()), tables());
        assertTrue(AnotherTable.sameFigures(corrected, session.job().fuelTable().orElseThrow()));
        assertEquals(1, session.job().past().size());
        assertEquals(List.of(), session.question().waitingProperty().get());
        session.open(List.of(log("ride-3.csv")));
        assertEquals(2, session.job().rides().size(), "the job has had two tables by now: asked again");
        session.question().madeWithFuelTable();
        assertEquals(3, session.job().rides().size());
    }

    private List<String> waiting() {
        return session.question().waitingProperty().get().stream()
                .map(fuelwright.ride.Ride::name)
                .toList();
    }

    @Test
    void anAnswerThatIsUndoneIsAskedForAgain() throws IOException {
        session.outputs().export(folder, true, false, files -> {});
        session.open(List.of(log("ride-2.csv")));
        session.question().madeWithOther();
        session.edit(job -> job.withName("mine"));
        session.undo();
        assertEquals(List.of(), waiting());
        session.undo();
        assertEquals(List.of("ride-2.csv"), waiting());
        assertTrue(session.question().canBeOther());
        session.redo();
        assertEquals(List.of(), waiting());
        assertEquals(2, session.job().rides().size());
        session.undo();
        session.question().madeWithFuelTable();
        assertEquals(List.of(Optional.empty(), Optional.empty()), tables());
        session.undo();
        assertEquals(List.of("ride-2.csv"), waiting());
        session.open(List.of(file("corrected.csv", corrected())));
        assertEquals(List.of(), waiting());
        session.undo();
        assertEquals(List.of("ride-2.csv"), waiting());
        session.startNew();
        assertEquals(List.of(), waiting(), "a new job was begun");
        session.undo();
        assertEquals(List.of("ride-2.csv"), waiting());
    }

    @Test
    void whatWaitsBelongsToItsJobAndToNoOther() throws IOException {
        session.outputs().export(folder, true, false, files -> {});
        session.open(List.of(log("ride-2.csv")));
        Job mine = session.job();
        session.openSample();
        assertEquals(List.of(), waiting(), "the sample's job was never asked that");
        session.edit(job -> job.withName("another"));
        session.undo();
        assertEquals(List.of(), waiting());
        session.undo();
        assertEquals(mine, session.job());
        assertEquals(List.of("ride-2.csv"), waiting(), "nothing is lost");
        session.redo();
        assertEquals(List.of(), waiting());
        session.undo();
        session.question().madeWithOther();
        session.undo();
        assertEquals(List.of("ride-2.csv"), waiting());
    }

    @Test
    void aQuestionOfOnesOwnJobNeverComesToTheSample() throws IOException {
        Session own = new Session(new FixtureServices(), new SameThreadRunner());
        own.openSample();
        Job sample = own.job();
        double[] richer = fuel.toArray();
        richer[5] += 3;
        double[] target = Fixture.job().targetTable().orElseThrow().toArray();
        target[5] -= 0.01;
        own.open(List.of(
                file("fuel.csv", fuel.withValues(richer)),
                file("target.csv", Fixture.job().targetTable().orElseThrow().withValues(target)),
                log("mine.csv")));
        own.outputs().export(folder, true, false, files -> {});
        own.open(List.of(log("ride-2.csv")));
        assertEquals(1, own.question().waitingProperty().get().size());
        while (own.canUndoProperty().get()) {
            own.undo();
        }
        assertEquals(sample, own.job());
        assertEquals(List.of(), own.question().waitingProperty().get());
        while (own.canRedoProperty().get()) {
            own.redo();
        }
        assertEquals(1, own.question().waitingProperty().get().size());
    }

    @Test
    void refusedLogsStayWithTheirJobToo() throws IOException {
        session.refused()
                .add(List.of(new RefusedLogs.Refused(
                        folder.resolve("odd.csv"),
                        fuelwright.ride.RideOptions.defaults(),
                        new fuelwright.ride.LogColumns(List.of(), List.of()),
                        "")));
        session.startNew();
        assertEquals(List.of(), session.refused().all());
        session.undo();
        assertEquals(1, session.refused().all().size());
    }

    @Test
    void aRideThatNobodyKnowsTheTableOfCanBeLeftOut() throws IOException {
        session.outputs().export(folder, true, false, files -> {});
        Job before = session.job();
        session.open(List.of(log("ride-2.csv")));
        session.question().leaveOut();
        assertEquals(List.of(), waiting());
        assertEquals(before, session.job());
        assertFalse(said().contains("waits"), said());
        assertEquals(
                "Left out: ride-2.csv. Open it again where it should count after all.",
                session.saidProperty().get());
        session.open(List.of(log("ride-2.csv")));
        assertEquals(List.of("ride-2.csv"), waiting(), "asked again");
    }

    @Test
    void whatAJobFromItsFileAskedIsAskedAgainAsWell() throws IOException {
        session.replace(session.job().withName("from its file"));
        session.open(List.of(log("ride-2.csv")));
        session.question().madeWithFuelTable();
        session.undo();
        assertEquals(List.of("ride-2.csv"), waiting());
        assertEquals(TableQuestion.Other.PROPOSED, session.question().other());
    }

    @Test
    void aRideOnTheOldTableAfterAHandoverIsTakenAsThat() throws IOException {
        session.outputs().export(folder, true, false, files -> {});
        session.open(List.of(log("ride-2.csv")));
        session.question().madeWithFuelTable();
        assertEquals(List.of(Optional.empty(), Optional.empty()), tables());
        assertEquals(fuel, session.job().fuelTable().orElseThrow());
        session.open(List.of(log("ride-3.csv")));
        assertEquals(1, session.question().waitingProperty().get().size(), "asked for each");
    }

    @Test
    void openingTheTableAnswers() throws IOException {
        Table corrected = corrected();
        session.outputs().export(folder, true, false, files -> {});
        session.open(List.of(log("ride-2.csv")));
        session.open(List.of(file("corrected.csv", corrected)));
        assertEquals(List.of(Optional.of(fuel), Optional.empty()), tables());
        assertEquals(List.of(), session.question().waitingProperty().get());
        session.open(List.of(log("ride-3.csv")));
        assertEquals(List.of("ride-3.csv"), waiting());
    }

    @Test
    void aRideMadeWithAnEarlierTableIsToldSoAndKeepsIt() throws IOException {
        Table corrected = corrected();
        double[] cells = fuel.toArray();
        cells[3] *= 5;
        session.open(List.of(log("ride-2.csv"), file("corrected.csv", corrected)));
        session.open(List.of(file("five.csv", fuel.withValues(cells))));
        session.open(List.of(log("long.csv")));
        assertEquals(List.of("long.csv"), waiting(), "the newest table isn't therefore the one of the ride");
        List<Table> earlier = session.question().earlier();
        assertEquals(2, earlier.size());
        assertTrue(AnotherTable.sameFigures(corrected, earlier.get(0)));
        assertEquals(List.of("ride-2.csv"), session.question().ridesWith(earlier.get(0)));
        assertEquals("table 2 (ridden in ride-2.csv)", session.question().words(earlier.get(0)));
        assertEquals("table 1 (ridden in ride-1.csv)", session.question().words(earlier.get(1)));
        assertEquals(
                "table 3, the fuel table of this job (no ride yet)",
                session.question().words(session.job().fuelTable().orElseThrow()));
        session.question().madeWithEarlier(earlier.get(0));
        assertEquals(3, session.job().rides().size());
        assertTrue(AnotherTable.sameFigures(
                corrected, session.job().rides().get(2).madeWith().orElseThrow()));
        session.undo();
        assertEquals(List.of("long.csv"), waiting());
    }

    @Test
    void beforeAnythingLeftRidesBelongToTheFuelTable() throws IOException {
        session.open(List.of(log("ride-2.csv")));
        assertEquals(List.of(Optional.empty(), Optional.empty()), tables());
        assertFalse(session.question().canBeOther());
    }

    @Test
    void aJobOpenedFromItsFileAsksToo() throws IOException {
        Session later = new Session(new FixtureServices(), new SameThreadRunner());
        later.replace(session.job());
        later.open(List.of(log("ride-2.csv")));
        assertEquals(1, later.question().waitingProperty().get().size());
        assertEquals(TableQuestion.Other.PROPOSED, later.question().other());
        assertTrue(later.question().canBeOther());
        later.question().madeWithOther();
        assertEquals(
                List.of(Optional.of(fuel), Optional.empty()),
                later.job().rides().stream().map(JobRide::madeWith).toList());
    }
}
