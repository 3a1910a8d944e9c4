package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.Decision;
import fuelwright.estimate.Estimate;
import fuelwright.job.Job;
import fuelwright.safety.Limit;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** One change after another on one workbench gives what each job gives by itself, to the last bit. */
class WorkbenchTest {

    private static final Job SAMPLE = SampleJob.load().value().orElseThrow();
    private static final List<UnaryOperator<Job>> CHANGES = List.of(
            job -> job,
            job -> job.withProposal(job.proposal().withCaps(3, 1)),
            job -> job.withProposal(job.proposal().withStep(0.5)),
            job -> job.withProposal(job.proposal().withDecisions(Map.of(5, new Decision(Decision.Kind.HELD, 0)))),
            job -> job.withLimits(job.limits().with(Limit.LEAN_EXCESS, 0.01)),
            job -> job.withScreens(job.screens().with(Screen.THROTTLE_MOVING, false)),
            job -> job.withScreens(job.screens().with(Screen.THROTTLE_MOVING, true)),
            job -> job.withProposal(job.proposal().withDeadTimeMs(0.1)),
            job -> job.withRides(job.rides().subList(0, 1)));

    @Test
    void everyChangeGivesWhatTheJobGivesByItself() {
        Workbench workbench = new Workbench();
        Job job = SAMPLE;
        for (int i = 0; i < CHANGES.size(); i++) {
            job = CHANGES.get(i).apply(job);
            Analysis alone =
                    Analyse.run(job, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
            assertEquals(figures(alone), figures(analysed(workbench, job)), "change " + i);
        }
    }

    @Test
    void anotherCapOrAHeldCellKeepsTheFit() {
        Workbench workbench = new Workbench();
        Analysis first = analysed(workbench, SAMPLE);
        Analysis capped =
                analysed(workbench, SAMPLE.withProposal(SAMPLE.proposal().withCaps(3, 1)));
        assertSame(first.estimate(), capped.estimate());
        assertNotEquals(
                first.proposal().corrected().toArray()[40],
                capped.proposal().corrected().toArray()[40]);
        Analysis back = analysed(workbench, SAMPLE);
        assertSame(first.estimate(), back.estimate());
        assertEquals(figures(first), figures(back));
    }

    @Test
    void anotherScreenFitsAgain() {
        Workbench workbench = new Workbench();
        Analysis first = analysed(workbench, SAMPLE);
        Analysis changed =
                analysed(workbench, SAMPLE.withScreens(SAMPLE.screens().with(Screen.THROTTLE_MOVING, false)));
        assertNotSame(first.estimate(), changed.estimate());
        assertFalse(figures(first).equals(figures(changed)));
    }

    @Test
    void aCancelledAnalysisForgetsNothing() {
        Workbench workbench = new Workbench();
        Analysis first = analysed(workbench, SAMPLE);
        for (int i = 0; i < 3; i++) {
            Job other = SAMPLE.withScreens(SAMPLE.screens().with(Screen.SPIKE, false));
            assertThrows(
                    Cancellation.CancelledException.class, () -> workbench.analyse(other, Progress.NONE, () -> true));
        }
        assertSame(first.estimate(), analysed(workbench, SAMPLE).estimate());
    }

    private static final List<UnaryOperator<ScreenSettings>> SCREENS = List.of(
            s -> s.withCoolantAtLeast(82),
            s -> s.with(Screen.THROTTLE_MOVING, !s.isOn(Screen.THROTTLE_MOVING)),
            s -> s.withLambda(0.75, 1.25),
            s -> s.withSpeedRate(0.2),
            s -> s.with(Screen.AFTER_FUEL_CUT, !s.isOn(Screen.AFTER_FUEL_CUT)),
            s -> s.withFrozen(0.4),
            s -> ScreenSettings.defaults());

    /** First answers come between; no whole one is moved by them, nor by what was known from other screens. */
    @Test
    void anyRowOfScreensGivesWhatEachGivesByItself() {
        Random random = new Random(20);
        Workbench workbench = new Workbench(0);
        Job job = SAMPLE;
        analysed(workbench, job);
        int firsts = 0;
        for (int i = 0; i < 10; i++) {
            UnaryOperator<ScreenSettings> change = SCREENS.get(random.nextInt(SCREENS.size()));
            job = job.withScreens(change.apply(job.screens()));
            if (random.nextInt(3) == 0) {
                job = job.withProposal(job.proposal().withCaps(5 + random.nextInt(20), 3));
            }
            Optional<Analysis> first = workbench.first(job, Cancellation.NEVER);
            Analysis alone =
                    Analyse.run(job, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
            if (random.nextInt(4) > 0) {
                assertEquals(figures(alone), figures(analysed(workbench, job)), "change " + i);
            }
            if (first.isPresent()) {
                firsts++;
                assertFirst(first.get(), alone, job);
            }
        }
        assertTrue(firsts >= 4, firsts + " first answers");
    }

    private static void assertFirst(Analysis first, Analysis whole, Job job) {
        assertFalse(first.settled());
        assertEquals(job, first.job());
        assertEquals(
                whole.screened().stream().map(ScreenedRide::kept).toList(),
                first.screened().stream().map(ScreenedRide::kept).toList());
        assertEquals(Optional.empty(), first.rideToRide());
        for (int c = 0; c < whole.estimate().table().cells(); c++) {
            double apart =
                    Math.abs(first.estimate().logFactor(c) - whole.estimate().logFactor(c));
            assertTrue(
                    apart < 1.5 * whole.estimate().logUncertainty(c),
                    "cell " + c + " is " + apart + " off, ± " + whole.estimate().logUncertainty(c));
        }
        assertThrows(IllegalStateException.class, () -> HandOver.of(first));
        assertThrows(IllegalStateException.class, () -> HandOver.tableText(first));
        assertThrows(IllegalStateException.class, () -> HandOver.cellsText(first));
    }

    @Test
    void whereNoOtherReadingCountsTheFirstAnswerIsTheWholeOne() {
        Workbench workbench = new Workbench(0);
        Analysis before = analysed(workbench, SAMPLE);
        assertEquals(
                0,
                before.screened().stream().mapToInt(s -> s.count(Screen.SPIKE)).sum());
        Job same = SAMPLE.withScreens(SAMPLE.screens().with(Screen.SPIKE, false));
        Analysis first = workbench.first(same, Cancellation.NEVER).orElseThrow();
        for (int c = 0; c < before.estimate().table().cells(); c++) {
            // Added up in other parts: rounding only.
            assertEquals(before.estimate().logFactor(c), first.estimate().logFactor(c), 1e-9);
            assertEquals(before.estimate().logUncertainty(c), first.estimate().logUncertainty(c), 1e-9);
            assertEquals(
                    before.proposal().cell(c).after(), first.proposal().cell(c).after(), 1e-9);
        }
    }

    @Test
    void thereIsAFirstAnswerOnlyWhereItSavesWaiting() {
        Job other = SAMPLE.withScreens(SAMPLE.screens().withCoolantAtLeast(82));
        Workbench fresh = new Workbench(0);
        assertEquals(Optional.empty(), fresh.first(SAMPLE, Cancellation.NEVER), "nothing is known");
        analysed(fresh, SAMPLE);
        assertEquals(Optional.empty(), fresh.first(SAMPLE, Cancellation.NEVER), "the same job");
        Job capped = SAMPLE.withProposal(SAMPLE.proposal().withCaps(3, 1));
        assertEquals(Optional.empty(), fresh.first(capped, Cancellation.NEVER), "the same screens");
        assertTrue(fresh.first(other, Cancellation.NEVER).isPresent());
        assertEquals(
                Optional.empty(),
                fresh.first(other.withRides(SAMPLE.rides().subList(0, 1)), Cancellation.NEVER),
                "other rides");
        assertEquals(
                Optional.empty(),
                fresh.first(other.withProposal(other.proposal().withDeadTimeMs(0.1)), Cancellation.NEVER),
                "another dead time");
        assertThrows(Cancellation.CancelledException.class, () -> fresh.first(other, () -> true));
        Workbench usual = new Workbench();
        analysed(usual, SAMPLE);
        assertEquals(Optional.empty(), usual.first(other, Cancellation.NEVER), "short rides");
    }

    private static Analysis analysed(Workbench workbench, Job job) {
        return workbench.analyse(job, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
    }

    /** Everything that an analysis says, in a form that is equal only where every figure is. */
    private static List<Object> figures(Analysis analysis) {
        List<Object> all = new ArrayList<>();
        Estimate estimate = analysis.estimate();
        for (int c = 0; c < estimate.table().cells(); c++) {
            all.add(estimate.logFactor(c));
            all.add(estimate.logUncertainty(c));
            all.add(estimate.independentReadings(c));
            all.add(analysis.proposal().cell(c));
        }
        all.add(estimate.sensor());
        all.add(estimate.remarks());
        all.add(analysis.validation());
        all.add(analysis.cautions());
        analysis.screened().forEach(s -> {
            for (Screen screen : Screen.values()) {
                all.add(s.count(screen));
            }
        });
        return all;
    }
}
