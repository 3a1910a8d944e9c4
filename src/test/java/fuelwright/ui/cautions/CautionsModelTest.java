package fuelwright.ui.cautions;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import fuelwright.job.Answer;
import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.safety.Limit;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.unit.Sentence;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class CautionsModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final CautionsModel model = new CautionsModel(session);

    @Test
    void theWorstIsSelectedFirstAndStaysSelected() {
        session.openSample();
        assertEquals(Caution.Level.STOP, model.selectedProperty().get().level());
        model.selectedProperty().set(model.cautions().get(1));
        session.edit(job -> job.withName("other"));
        assertEquals(Caution.Level.CHECK, model.selectedProperty().get().level());
        assertEquals("1 Stop, 1 Check, 1 Note. Worst first.", model.summary());
    }

    @Test
    void anAnswerWorksNothingOutAgain() {
        AtomicInteger runs = new AtomicInteger();
        Session counted = new Session(
                new FixtureServices() {
                    @Override
                    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
                        runs.incrementAndGet();
                        return super.analyse(job, progress, cancellation);
                    }
                },
                new SameThreadRunner());
        CautionsModel cautions = new CautionsModel(counted);
        counted.openSample();
        int before = runs.get();
        cautions.answer(Answer.Kind.SEEN, "");
        assertEquals(before, runs.get());
        assertEquals(counted.job(), counted.analysis().job(), "what goes out has the answer");
        counted.undo();
        assertEquals(before, runs.get());
        counted.edit(job -> job.withDisplayRatio(14.1));
        assertEquals(before + 1, runs.get());
    }

    @Test
    void aCautionLeadsToItsCellAndItsMoment() {
        session.openSample();
        model.showCell();
        assertEquals(Stage.PROPOSAL, session.stageProperty().get());
        assertEquals(
                model.selectedProperty().get().cells().first(),
                session.cellProperty().get());
        Caution.Moment moment = model.selectedProperty().get().worst().orElseThrow();
        model.showMoment();
        assertEquals(Stage.RIDES, session.stageProperty().get());
        assertEquals(moment, session.momentProperty().get());
        assertTrue(model.words(moment).startsWith("ride-1.csv at 1:52.4"), model.words(moment));
        assertTrue(model.sentence(moment).endsWith(", λ 1.02"), model.sentence(moment));
    }

    @Test
    void selectingACautionSelectsTheCellOfItsWorstMoment() {
        session.openSample();
        assertEquals(-1, session.cellProperty().get());
        model.select(model.cautions().get(0));
        assertEquals("Selected: 5500\u00a0rpm × 85\u00a0% throttle", model.selectedCell());
        assertTrue(model.mapProperty()
                .get()
                .cells()
                .get(session.cellProperty().get())
                .stop());
        model.select(model.cautions().get(1));
        assertEquals(
                model.cautions().get(1).cells().first(), session.cellProperty().get());
        assertEquals(-1, model.index());
        model.select(model.cautions().get(2));
        assertEquals(
                model.cautions().get(1).cells().first(), session.cellProperty().get());
    }

    @Test
    void anAnswerStaysWithItsCautionHidesNothingAndCanBeUndone() {
        session.openSample();
        Caution stop = model.cautions().get(0);
        model.select(stop);
        model.answer(Answer.Kind.SEEN, "");
        model.answer(Answer.Kind.CAUSE_FOUND, " filter was blocked ");
        assertEquals(
                List.of(Answer.to(stop, Answer.Kind.CAUSE_FOUND, "filter was blocked")),
                session.job().answers());
        assertEquals(
                "Answered: Cause found · filter was blocked",
                CautionsModel.words(model.answer(stop).orElseThrow(), stop));
        assertEquals("1 Stop, 1 Check, 1 Note. Worst first.", model.summary());
        assertTrue(session.analysis().stops().contains(stop));
        assertTrue(model.answer(model.cautions().get(1)).isEmpty());
        session.undo();
        assertEquals(Answer.Kind.SEEN, model.answer(stop).orElseThrow().kind());
        model.takeBack();
        assertEquals(List.of(), session.job().answers());
        session.undo();
        assertEquals(1, session.job().answers().size());
    }

    @Test
    void anAnswerToSomethingElseIsShownAsBefore() {
        session.openSample();
        Caution stop = model.cautions().get(0);
        Answer other = Answer.to(
                new Caution(
                        stop.rule(),
                        Caution.Level.CHECK,
                        stop.title(),
                        Sentence.text("once"),
                        stop.todo(),
                        new java.util.TreeSet<>(Set.of(0)),
                        List.of(),
                        stop.about()),
                Answer.Kind.SEEN,
                "");
        session.edit(job -> job.withAnswers(List.of(other)));
        assertEquals(
                "Answered before, but it says something else now. Look again. Then: Noted",
                CautionsModel.words(model.answer(stop).orElseThrow(), stop));
    }

    @Test
    void limitsAreTakenWithinTheirBoundsAndRefusedInWords() {
        session.openSample();
        LimitsModel limits = new LimitsModel(session);
        assertEquals(Optional.empty(), limits.take(Limit.LEAN_EXCESS, "0,03"));
        assertEquals(0.03, session.job().limits().of(Limit.LEAN_EXCESS));
        assertTrue(limits.isChanged(Limit.LEAN_EXCESS) && !limits.isWider(Limit.LEAN_EXCESS));
        assertEquals(
                "0.5 is above 0.08 lambda, the most that may be chosen. The old figure stays.",
                limits.take(Limit.LEAN_EXCESS, "0.5").orElseThrow());
        assertTrue(limits.take(Limit.LEAN_EXCESS, "0").orElseThrow().startsWith("0 is below 0.01"));
        assertTrue(limits.take(Limit.LEAN_EXCESS, "much").orElseThrow().startsWith("'much' is no number"));
        assertTrue(limits.take(Limit.LEAN_EXCESS, "NaN").orElseThrow().startsWith("'NaN' is no number"));
        assertEquals(0.03, session.job().limits().of(Limit.LEAN_EXCESS));
        limits.backToUsual(Limit.LEAN_EXCESS);
        assertTrue(session.job().limits().changed().isEmpty());
        limits.take(Limit.BATTERY_LEAST, "12");
        assertTrue(limits.isWider(Limit.BATTERY_LEAST));
        session.undo();
        assertEquals("12.5", limits.text(Limit.BATTERY_LEAST));
    }

    @Test
    void theTableOfLimitsHasEveryLimitOnce() {
        List<Limit> shown =
                LimitsModel.GROUPS.stream().flatMap(g -> g.limits().stream()).toList();
        assertEquals(Limit.values().length, shown.size());
        assertEquals(Set.of(Limit.values()), Set.copyOf(shown));
    }

    @Test
    void momentsAreGoneThroughAndEndAtTheLast() {
        session.openSample();
        model.select(model.cautions().get(0));
        assertEquals(0, model.index());
        model.step(1);
        assertEquals(0, model.index());
        assertEquals(
                model.cautions().get(0).worst().orElseThrow(),
                model.momentProperty().get());
    }
}
