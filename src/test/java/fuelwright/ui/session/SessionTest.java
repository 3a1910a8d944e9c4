package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Standing;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Answer;
import fuelwright.job.Job;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.TableOptions;
import fuelwright.table.TableWriter;
import fuelwright.table.Unsaid;
import fuelwright.ui.Fixture;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.handover.HandoverModel;
import fuelwright.ui.theme.Measures;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SessionTest {

    private final SameThreadRunner runner = new SameThreadRunner();
    private final Session session = new Session(new FixtureServices(), runner);

    @Test
    void theSampleJobIsAnalysedByItself() {
        session.openSample();
        assertNotNull(session.analysis());
        assertSame(session.job(), session.analysis().job());
        assertFalse(session.workingProperty().get());
        assertEquals(List.of(), session.issues());
    }

    @Test
    void undoAndRedoGoThroughJobsAndTheAnalysisFollows() {
        session.openSample();
        Job before = session.job();
        session.edit(job -> job.withName("other"));
        session.undo();
        assertSame(before, session.job());
        assertSame(before, session.analysis().job());
        assertTrue(session.canRedoProperty().get());
        session.redo();
        assertEquals("other", session.job().name());
        session.edit(job -> job.withName("third"));
        assertFalse(session.canRedoProperty().get());
    }

    @Test
    void undoSaysWhatItTookBack() {
        session.openSample();
        session.edit(job -> job.withDisplayRatio(14.2));
        assertEquals("", session.saidProperty().get());
        session.undo();
        assertEquals(
                "Taken back: what the AFR display is set to (stage 3).",
                session.saidProperty().get());
        session.redo();
        assertEquals(
                "Done again: what the AFR display is set to (stage 3).",
                session.saidProperty().get());
        session.edit(job -> job.withRides(List.of()));
        session.undo();
        assertTrue(session.saidProperty().get().contains("the rides (stage 3)"));
        session.startNew();
        session.undo();
        assertEquals(
                "Taken back: another job in place of this one.",
                session.saidProperty().get());
    }

    @Test
    void aChangeThatChangesNothingIsNoStep() {
        session.edit(job -> job.withName(job.name()));
        assertFalse(session.canUndoProperty().get());
    }

    @Test
    void onlyTheNewestOfManyChangesIsAnalysed() {
        session.openSample();
        runner.hold();
        session.edit(job -> job.withName("a"));
        session.edit(job -> job.withName("b"));
        assertTrue(session.workingProperty().get());
        runner.release();
        assertEquals("b", session.analysis().job().name());
        assertFalse(session.workingProperty().get());
    }

    /** Gives a first answer to every job that is named. */
    private static final class FirstThenWhole extends FixtureServices {
        private boolean stops;

        @Override
        public Optional<Analysis> firstAnswer(Job job, Cancellation cancellation) {
            return job.name().startsWith("first")
                    ? Fixture.analyse(job).value().map(Fixture::unsettled)
                    : Optional.empty();
        }

        @Override
        public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
            if (stops && job.name().startsWith("first")) {
                ((Cancellation) () -> true).check();
            }
            return super.analyse(job, progress, cancellation);
        }
    }

    @Test
    void aFirstAnswerIsShownAsSuchUntilTheWholeOneIsThere() {
        Session patient = new Session(new FirstThenWhole(), runner);
        patient.openSample();
        List<String> seen = new ArrayList<>();
        patient.analysisProperty()
                .addListener((p, old, now) -> seen.add(now.job().name() + " settled " + now.settled()
                        + ", stale " + patient.staleProperty().get() + ", settling "
                        + patient.settlingProperty().get() + ", working "
                        + patient.workingProperty().get()));
        patient.edit(job -> job.withName("first"));
        assertEquals(
                List.of(
                        "first settled false, stale true, settling true, working true",
                        "first settled true, stale false, settling false, working false"),
                seen);
        assertFalse(patient.workingProperty().get());
    }

    @Test
    void withOnlyAFirstAnswerNothingMayLeave() {
        FirstThenWhole services = new FirstThenWhole();
        services.stops = true;
        Session halfway = new Session(services, runner);
        halfway.openSample();
        halfway.edit(job -> job.withName("first"));
        assertFalse(halfway.analysis().settled());
        assertTrue(halfway.staleProperty().get());
        assertEquals(Optional.empty(), NextStep.of(halfway));
        HandoverModel handover = new HandoverModel(halfway);
        handover.stopsReadProperty().set(true);
        assertFalse(handover.mayLeave());
        halfway.edit(job -> job.withName("whole"));
        handover.stopsReadProperty().set(true);
        assertTrue(handover.mayLeave());
    }

    @Test
    void cancellingKeepsWhatWasThere() {
        session.openSample();
        Analysis before = session.analysis();
        runner.hold();
        session.edit(job -> job.withName("a"));
        session.cancel();
        runner.release();
        assertSame(before, session.analysis());
        assertFalse(session.workingProperty().get());
    }

    @Test
    void withoutARideThereIsNoAnalysis() {
        session.openSample();
        session.edit(job -> job.withRides(List.of()));
        assertNull(session.analysis());
    }

    @Test
    void aRefusalIsSaidAndNothingIsProposed() {
        Session refusing = new Session(
                new FixtureServices() {
                    @Override
                    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
                        return Loaded.refused(Issue.error("", 0, 0, "no reading is left", "Switch a screen off"));
                    }
                },
                runner);
        refusing.openSample();
        assertNull(refusing.analysis());
        assertEquals(
                "no reading is left. Switch a screen off",
                refusing.issues().get(0).sentence());
        assertEquals(
                "No reading is left. Switch a screen off.",
                Missing.what(refusing, "proposal.empty").get());
        assertEquals(Stage.RIDES, NextStep.of(refusing).orElseThrow().stage());
    }

    @Test
    void aRefusalIsReadInTheUnitsThatWereChosen() {
        Sentence cold = Sentence.of("The coolant is below %s", Measured.of(70, Unit.CELSIUS, 0));
        Issue refusal = new Issue(Issue.Severity.ERROR, "a.csv", 0, 0, cold, "Warm the engine");
        Session refusing = new Session(
                new FixtureServices() {
                    @Override
                    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
                        return Loaded.refused(refusal);
                    }
                },
                runner);
        refusing.openSample();
        var words = Missing.what(refusing, "proposal.empty");
        assertEquals("a.csv: The coolant is below 70\u00a0°C. Warm the engine.", words.get());
        refusing.measuresProperty().set(Measures.IMPERIAL);
        assertEquals("a.csv: The coolant is below 158\u00a0°F. Warm the engine.", words.get());
    }

    @Test
    void figuresOfAnOlderJobAreKnownAsSuch() {
        session.openSample();
        runner.hold();
        session.edit(job -> job.withName("a"));
        assertTrue(session.staleProperty().get());
        assertTrue(NextStep.of(session).isEmpty());
        session.cancel();
        assertTrue(session.staleProperty().get());
        runner.release();
        session.analyse();
        assertFalse(session.staleProperty().get());
        assertEquals("a", session.analysis().job().name());
    }

    @Test
    void theNextStepFollowsTheWork() {
        assertEquals(Stage.TABLES, NextStep.of(session).orElseThrow().stage());
        session.openSample();
        assertEquals(Stage.CAUTIONS, NextStep.of(session).orElseThrow().stage());
        session.edit(job -> job.withRides(List.of()));
        assertEquals(Stage.MACHINE, NextStep.of(session).orElseThrow().stage(), "what comes before the first start");
    }

    private String next() {
        return NextStep.of(session).orElseThrow().words();
    }

    @Test
    void anUnansweredStopIsTheNextStepWhereverOneLooksAndWhateverWasWritten(@TempDir Path folder) {
        session.openSample();
        for (Stage stage : Stage.values()) {
            session.stageProperty().set(stage);
            assertEquals("Read and answer the Stop caution", next());
        }
        session.outputs().export(folder, false, false, files -> {});
        assertEquals("Read and answer the Stop caution", next());
    }

    @Test
    void afterTheAnswerCameTheHandoverItsCheckAndTheNextRide(@TempDir Path folder) {
        session.openSample();
        session.edit(job -> job.withAnswers(session.analysis().stops().stream()
                .map(c -> Answer.to(c, Answer.Kind.CAUSE_FOUND, "pump"))
                .toList()));
        assertEquals("Hand the table over", next());
        NextStep.of(session).orElseThrow().go(session);
        assertEquals("Write the folder", next());
        session.outputs().export(folder, false, false, files -> {});
        assertEquals("Check what was typed", next());
        NextStep.of(session).orElseThrow().go(session);
        assertTrue(session.outputs().checkingProperty().get());
        String old = TableWriter.write(session.job().fuelTable().orElseThrow());
        session.outputs().check(old, found -> {});
        assertEquals("Check what was typed", next());
        // What was read back holds the same figures, but isn't the program's own text.
        String readBack = session.outputs()
                .tableText()
                .lines()
                .filter(l -> !l.startsWith("#"))
                .map(l -> l.replace(",", " , "))
                .collect(java.util.stream.Collectors.joining("\n"));
        session.outputs().check(readBack, found -> {});
        assertEquals("Deal with the Stop, then ride again and open the new log", next());
        session.edit(job -> job.withName("other"));
        assertEquals("Write the folder", next());
    }

    @Test
    void aBreakdownIsASentenceAndNothingIsLost() {
        Session broken = new Session(
                new FixtureServices() {
                    @Override
                    public Loaded<Job> sampleTables() {
                        throw new IllegalStateException("the disk is full");
                    }
                },
                runner);
        broken.openSample();
        assertEquals("the disk is full", broken.issues().get(0).what());
        assertFalse(broken.workingProperty().get());
        assertFalse(broken.canUndoProperty().get());
    }

    @Test
    void filesGoWhereTheyBelong(@TempDir Path folder) throws IOException {
        Path target = Files.writeString(
                folder.resolve("t.csv"),
                "# quantity: lambda [1]\nengine speed [rpm] \\ throttle [%],0,50\n1000,0.98,0.9\n8000,0.95,0.87\n");
        Path fuel = Files.writeString(
                folder.resolve("f.csv"),
                "# quantity: volumetric efficiency [%]\nengine speed [rpm] \\ throttle [%],0,50\n1000,20,80\n8000,15,90\n");
        Path ride = Files.writeString(folder.resolve("r.csv"), "time [s],rpm\n0,1000\n");
        session.open(List.of(target, fuel, ride));
        assertEquals(Quantity.LAMBDA, session.job().targetTable().orElseThrow().quantity());
        assertEquals(
                Quantity.VOLUMETRIC_EFFICIENCY,
                session.job().fuelTable().orElseThrow().quantity());
        assertEquals("r.csv", session.job().rides().get(0).ride().name());
    }

    @Test
    void aTableThatDoesNotSayWhatItHoldsIsAskedAboutAndNeverTakenForARide(@TempDir Path folder) throws IOException {
        String grid = "engine speed [rpm] \\ throttle [%],0,50,100\n1000,1.2,4,5\n4000,1.5,5,6\n8000,1.4,5,6.5\n";
        for (String first : List.of("", "# quantity: injection time [ms]\n")) {
            session.startNew();
            session.open(List.of(Files.writeString(folder.resolve("pulses.csv"), first + grid)));
            assertEquals(List.of(), session.issues());
            assertEquals(List.of(), session.refused().all());
            assertEquals(Stage.TABLES, session.stageProperty().get());
            Unsaid asked = session.unsaid().all().get(0);
            assertTrue(asked.quantities().contains(Quantity.INJECTOR_PULSE), asked::toString);
            assertEquals(List.of(), asked.loads(), "the corner says that");
            session.unsaid().tell(asked, TableOptions.none().withQuantity(Quantity.INJECTOR_PULSE));
            assertTrue(
                    session.issues().get(0).what().contains("dead time can't be seen"),
                    session.issues().toString());
            assertEquals(
                    Quantity.INJECTOR_PULSE,
                    session.job().fuelTable().orElseThrow().quantity());
            assertEquals(List.of(), session.unsaid().all());
        }
    }

    @Test
    void whatIsBrokenIsJudgedAsATableWhereTablesAreOpened(@TempDir Path folder) throws IOException {
        Path ragged = Files.writeString(
                folder.resolve("ragged.csv"), "engine speed [rpm] \\ throttle [%],0,50,100\n1000,1,2\n4000,1,2,3\n");
        session.stageProperty().set(Stage.TABLES);
        session.open(List.of(ragged));
        assertTrue(
                session.issues().stream().anyMatch(i -> i.what().contains("line of breakpoints")),
                session.issues().toString());
        assertEquals(List.of(), session.refused().all());
    }

    @Test
    void aCopiedBlockWithItsAxesBecomesATable() {
        session.unsaid().paste("\t0\t50\t100\n1000\t20\t80\t90\n8000\t15\t85\t95\n");
        Unsaid asked = session.unsaid().all().get(0);
        assertEquals(List.of(Axis.Kind.THROTTLE), asked.loads().subList(0, 1));
        session.unsaid()
                .tell(
                        asked,
                        TableOptions.none()
                                .withQuantity(Quantity.VOLUMETRIC_EFFICIENCY)
                                .withLoadKind(Axis.Kind.THROTTLE));
        assertEquals(95, session.job().fuelTable().orElseThrow().at(5));
        session.unsaid()
                .paste(
                        "# quantity: lambda [1]\nengine speed [rpm] \\ throttle [%]\t0\t50\n1000\t0.98\t0.9\n8000\t0.95\t0.87\n");
        assertEquals(Quantity.LAMBDA, session.job().targetTable().orElseThrow().quantity());
        session.unsaid().paste("20\t80\n15\t90\n");
        assertTrue(
                session.issues().get(0).what().contains("no axes"),
                session.issues().toString());
        session.unsaid().paste("");
        assertEquals(1, session.issues().size());
    }

    @Test
    void ownFilesAreNeverMixedWithTheSamplesRides(@TempDir Path folder) throws IOException {
        session.openSample();
        assertFalse(session.canUndoProperty().get());
        Job before = session.job();
        Path ride = Files.writeString(folder.resolve("mine.csv"), "time [s],rpm\n0,1000\n");
        session.open(List.of(ride));
        assertEquals(1, session.job().rides().size());
        assertTrue(session.job().fuelTable().isEmpty());
        assertTrue(session.issues().get(0).what().contains("sample"));
        session.undo();
        assertSame(before, session.job());
    }

    @Test
    void aNewJobKnowsNothingAndTheOldOneComesBack() {
        session.openSample();
        Job before = session.job();
        session.startNew();
        assertEquals(Job.empty(), session.job());
        assertNull(session.analysis());
        session.undo();
        assertSame(before, session.job());
    }

    @Test
    void aFileThatIsNotThereIsSaid(@TempDir Path folder) {
        session.open(List.of(folder.resolve("none.csv")));
        assertTrue(
                session.issues().get(0).what().contains("none.csv"),
                session.issues().toString());
    }

    @Test
    void stagesSayWhatTheyNeed() {
        assertEquals(StageState.NEEDS_YOU, state(Stage.TABLES));
        assertEquals(StageState.EMPTY, state(Stage.RIDES));
        assertEquals(StageState.EMPTY, state(Stage.PROPOSAL));
        session.openSample();
        assertEquals(StageState.DONE, state(Stage.MACHINE));
        assertEquals(StageState.DONE, state(Stage.RIDES));
        assertEquals(StageState.STOP, state(Stage.CAUTIONS));
        assertEquals(StageState.NEEDS_YOU, state(Stage.HANDOVER));
    }

    @Test
    void aNewJobBegunWhileTheSampleIsReadStaysEmpty() {
        runner.hold();
        session.openSample();
        runner.release();
        runner.hold();
        session.openSample();
        session.startNew();
        runner.release();
        assertEquals(Job.empty(), session.job());
        assertEquals(StageState.EMPTY, state(Stage.RIDES));
    }

    @Test
    void whileTheSampleIsReadItsStagesWork() {
        assertEquals(StageState.WORKING, StageState.of(Stage.TABLES, session.job(), session.analysis(), true, false));
        assertEquals(StageState.WORKING, StageState.of(Stage.PROPOSAL, session.job(), session.analysis(), true, false));
    }

    private StageState state(Stage stage) {
        return StageState.of(stage, session.job(), session.analysis(), false, false);
    }

    @Test
    void theLeanestCellThatWasRiddenIsFound() {
        session.openSample();
        session.selection().selectLeanest(session.analysis());
        CellProposal found =
                session.analysis().proposal().cell(session.cellProperty().get());
        assertTrue(found.standing() != Standing.INFERRED);
        assertTrue(session.analysis().proposal().cells().stream()
                .filter(c -> c.standing() != Standing.INFERRED)
                .allMatch(c -> c.neededFactor() <= found.neededFactor()));
    }
}
