package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.ProposalSettings;
import fuelwright.estimate.Validation;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.job.PartGain;
import fuelwright.job.Results;
import fuelwright.power.Breathing;
import fuelwright.safety.Caution;
import fuelwright.simulated.Grid;
import fuelwright.simulated.SampleData;
import fuelwright.simulated.Scores;
import fuelwright.simulated.SimulatedRide;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The whole sample, from the files inside the program to the proposal, judged with the truth on a ride that it hasn't seen. */
class SampleJobTest {

    private static final SampleData SAMPLE = new SampleData();
    private static final Analysis ANALYSIS = analysis();

    private static Analysis analysis() {
        Loaded<Job> job = SampleJob.load();
        Loaded<Analysis> analysis = Analyse.run(job.value().orElseThrow(), Progress.NONE, Cancellation.NEVER);
        return analysis.value().orElseThrow();
    }

    @Test
    void theSampleIsTheGeneratorsFirstRideAndDynoPullWithItsTable() {
        Job job = ANALYSIS.job();
        assertEquals(ProposalSettings.defaults(), job.proposal());
        Table fuel = job.fuelTable().orElseThrow();
        Grid planted = SAMPLE.table();
        for (int c = 0; c < planted.cells(); c++) {
            assertEquals(planted.at(c), fuel.at(c), 0.051, "cell " + c);
        }
        assertEquals(
                List.of("ride-1-cold-start.csv", "dyno-pull.csv"),
                job.rides().stream().map(r -> r.ride().name()).toList());
    }

    @Test
    void theCorrectedTableCutsTheMixtureErrorOfAnotherRideToLessThanAQuarter() {
        SimulatedRide other = SAMPLE.secondRide();
        double before = Scores.mixtureError(SAMPLE.table(), other);
        Grid corrected = SAMPLE.table().with(ANALYSIS.proposal().corrected().toArray());
        double after = Scores.mixtureError(corrected, other);
        assertTrue(after < before / 4, before + " became " + after);
    }

    @Test
    void theLeftOutBlocksShowTheSameImprovement() {
        Validation validation = ANALYSIS.validation().orElseThrow();
        assertTrue(validation.errorAfterPercent() < validation.errorBeforePercent() / 3, validation.toString());
    }

    @Test
    void thePlantedLeanHoleIsAStopWithItsCells() {
        Table fuel = ANALYSIS.job().fuelTable().orElseThrow();
        List<Caution> stops =
                ANALYSIS.stops().stream().filter(c -> touchesHole(c, fuel)).toList();
        assertTrue(!stops.isEmpty(), "no Stop in the hole, only " + ANALYSIS.cautions());
        List<Caution.Moment> there = stops.stream()
                .flatMap(c -> c.moments().stream())
                .filter(m -> m.load() >= 85 && m.speedRpm() > 5300 && m.speedRpm() < 7200)
                .toList();
        for (String ride : List.of("ride-1-cold-start.csv", "dyno-pull.csv")) {
            assertTrue(there.stream().anyMatch(m -> m.rideName().equals(ride) && m.lengthS() > 0.5), ride);
        }
    }

    private static boolean touchesHole(Caution caution, Table fuel) {
        return caution.cells().stream()
                .anyMatch(c -> fuel.speedAt(c) >= 5500 && fuel.speedAt(c) <= 7000 && fuel.loadAt(c) >= 85);
    }

    /** What is right lies within the usual caps, so that no ridden cell at high load stays lean. */
    @Test
    void noHighLoadCellThatWasRiddenStaysMoreThanThreePercentLean() {
        Grid corrected = SAMPLE.table().with(ANALYSIS.proposal().corrected().toArray());
        for (SimulatedRide ride : List.of(SAMPLE.firstRide(), SAMPLE.dynoPull())) {
            Scores.leanestHighLoadCell(corrected, ride, 20)
                    .ifPresent(leanest -> assertTrue(leanest.shortfallPct() < 3, leanest.toString()));
        }
    }

    /** The old table is right within some per cent, but for its hole, which looks like a gain: the note beside the map says so. */
    @Test
    void whatThePartGaveIsWhatTheSimulatedEngineDrawsMore() {
        Breathing gain =
                PartGain.of(ANALYSIS.job(), ANALYSIS.results().cells()).value().orElseThrow();
        assertEquals(Breathing.Amount.EFFICIENCY, gain.amount());
        List<Double> wrong = new ArrayList<>();
        int inferred = 0;
        for (int c = 0; c < gain.cells(); c++) {
            double rpm = gain.axes().speedAt(c);
            double load = gain.axes().loadAt(c);
            if (gain.isKnown(c)) {
                wrong.add(Math.abs(gain.gainPercent(c) - SAMPLE.tables().gainPct(rpm, load)));
            } else {
                inferred++;
                assertTrue(gain.before(c).isEmpty() && gain.after(c).isEmpty());
            }
        }
        wrong.sort(null);
        assertTrue(wrong.size() > 40 && inferred > 20, wrong.size() + " known, " + inferred + " not");
        assertTrue(wrong.get(wrong.size() / 2) < 2, "median " + wrong.get(wrong.size() / 2));
        assertTrue(wrong.get(wrong.size() * 9 / 10) < 5, "nine of ten " + wrong.get(wrong.size() * 9 / 10));
    }

    /** The simulated engine's torque at the crank is what the brake logged, to a tenth. */
    @Test
    void theDynosTorqueGivesThePowerCurveAndItsPeakIsKept() {
        List<Results.Peak> peaks = ANALYSIS.results().peaks();
        assertEquals(1, peaks.size());
        assertEquals("dyno-pull.csv", peaks.get(0).ride());
        assertTrue(peaks.get(0).rpm() > 6000 && peaks.get(0).rpm() <= 8500, peaks.toString());
        assertTrue(peaks.get(0).powerKw() > 35 && peaks.get(0).powerKw() < 60, peaks.toString());
    }
}
