package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.airflow.Machine;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Answer;
import fuelwright.job.FirstStart;
import fuelwright.job.Job;
import fuelwright.ride.LogColumns;
import fuelwright.ride.RideOptions;
import fuelwright.ui.FixtureServices;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class UnsettledTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());

    private Optional<String> waits(Stage stage) {
        return Unsettled.of(stage, session);
    }

    private static Session refusing(Issue issue) {
        Session session = new Session(
                new FixtureServices() {
                    @Override
                    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
                        return Loaded.refused(List.of(issue));
                    }
                },
                new SameThreadRunner());
        session.openSample();
        return session;
    }

    @Test
    void theMachineWaitsForItsChecks() {
        session.openSample();
        session.edit(job -> job.withFirstStart(Set.of()));
        assertEquals(Optional.of("4 checks left"), waits(Stage.MACHINE));
        session.edit(job -> job.withFirstStart(EnumSet.complementOf(EnumSet.of(FirstStart.TRIMS))));
        assertEquals(Optional.of("1 check left"), waits(Stage.MACHINE));
        session.edit(job -> job.withFirstStart(EnumSet.allOf(FirstStart.class)));
        assertEquals(Optional.empty(), waits(Stage.MACHINE));
        session.edit(job -> job.withMachine(Machine.unknown()));
        assertEquals(Optional.of("not described"), waits(Stage.MACHINE));
        session.startNew();
        assertEquals(4, session.job().beforeFirstStart().size());
    }

    @Test
    void ridesWaitForWhatTheDisplayIsSetTo() {
        session.openSample();
        assertEquals(Optional.of("1 question"), waits(Stage.RIDES));
        session.reading().setDisplayRatio(session.job().rides().get(0).ride(), false, 14.2);
        assertEquals(Optional.empty(), waits(Stage.RIDES));
    }

    @Test
    void ridesWaitForARefusedLog() {
        session.openSample();
        session.refused()
                .add(List.of(new RefusedLogs.Refused(
                        Path.of("x.csv"), RideOptions.defaults(), new LogColumns(List.of(), List.of()), "no time")));
        assertEquals(Optional.of("1 log refused"), waits(Stage.RIDES));
        session.issues().add(Issue.error("x.csv", 1, 1, "no time", ""));
        session.refused().leave(session.refused().all().get(0));
        assertEquals(List.of(), session.issues(), "what is left out is no longer told of");
    }

    @Test
    void aRefusalWaitsWhereItCanBePutRight() {
        Session pulses = refusing(Issue.error("fuel table", 0, 0, "a cell delivers no fuel", "check the dead time"));
        assertEquals(Optional.of("refused"), Unsettled.of(Stage.TABLES, pulses));
        assertEquals(Stage.TABLES, NextStep.of(pulses).orElseThrow().stage());
        Session nothing = refusing(Issue.error("ride-1.csv", 0, 0, "no reading is left", "ride longer"));
        nothing.reading().setDisplayRatio(nothing.job().rides().get(0).ride(), false, 14.7);
        assertEquals(Optional.of("nothing counts"), Unsettled.of(Stage.RIDES, nothing));
        assertEquals(Optional.empty(), Unsettled.of(Stage.TABLES, nothing));
    }

    @Test
    void anAnswerThatFoundNoCauseLeavesTheCauseToBeFound() {
        session.openSample();
        session.edit(job -> job.withAnswers(session.analysis().stops().stream()
                .map(c -> Answer.to(c, Answer.Kind.SEEN, ""))
                .toList()));
        assertEquals(
                "Find the cause, then hand over",
                NextStep.of(session).orElseThrow().words());
    }

    @Test
    void aNewJobBeginsWithTheMachineAndThenOpensFiles() {
        session.startNew();
        session.stageProperty().set(Stage.TABLES);
        assertEquals(Stage.MACHINE, NextStep.of(session).orElseThrow().stage());
        session.stageProperty().set(Stage.MACHINE);
        boolean[] opened = new boolean[1];
        NextStep.of(session).orElseThrow().go(session, () -> opened[0] = true);
        assertEquals(Stage.TABLES, session.stageProperty().get());
        assertEquals(true, opened[0]);
    }
}
