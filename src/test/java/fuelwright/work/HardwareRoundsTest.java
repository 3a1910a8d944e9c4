package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.Decision;
import fuelwright.handover.HardwareTable;
import fuelwright.handover.ToType;
import fuelwright.job.CellsNow;
import fuelwright.job.HardwareProfile;
import fuelwright.job.HardwareProfile.Holds;
import fuelwright.job.Job;
import fuelwright.job.PastTable;
import fuelwright.safety.Caution;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Hardware that holds changes or multipliers, from round to round: its figures stand on the table beneath them. */
class HardwareRoundsTest {

    private static final Job SAMPLE = SampleJob.load().value().orElseThrow();
    private static final Table STOCK = SAMPLE.fuelTable().orElseThrow();

    private static Job on(Job job, Holds holds, double step) {
        return job.withHardware(new HardwareProfile(
                        "",
                        holds,
                        Double.NEGATIVE_INFINITY,
                        Double.POSITIVE_INFINITY,
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        false))
                .withProposal(job.proposal().withStep(step));
    }

    private static Analysis analysed(Job job) {
        return Analyse.run(job, Progress.NONE, Cancellation.NEVER).value().orElseThrow();
    }

    private static List<Caution> untold(Analysis analysis) {
        return analysis.cautions().stream()
                .filter(c -> c.rule().equals("hardware-cells-untold"))
                .toList();
    }

    private static Table held(Analysis analysis) {
        return analysis.hardware().orElseThrow().before();
    }

    private static Table meant(Analysis analysis) {
        return analysis.hardware().orElseThrow().table();
    }

    /** The second round of the sample's rides, each cell held but for one, which is raised by 10 %. */
    private static Job second(Analysis first, int raised) {
        Job next = TableInUnit.after(first);
        Table fuel = next.fuelTable().orElseThrow();
        Map<Integer, Decision> decisions = new HashMap<>();
        for (int cell = 0; cell < fuel.cells(); cell++) {
            decisions.put(
                    cell,
                    cell == raised
                            ? new Decision(Decision.Kind.SET, 1.1 * fuel.at(cell))
                            : new Decision(Decision.Kind.HELD, fuel.at(cell)));
        }
        return next.withProposal(next.proposal().withDecisions(decisions));
    }

    @Test
    void theSecondSheetGivesTheWholeChangeAndNotOnlyWhatComesOnTop() {
        for (Holds holds : List.of(Holds.PERCENT_CHANGE, Holds.MULTIPLIER)) {
            double step = holds == Holds.MULTIPLIER ? 0.005 : 0.5;
            Analysis first = analysed(on(SAMPLE, holds, step));
            Table typed = meant(first);
            int raised = 0;
            for (int cell = 0; cell < typed.cells(); cell++) {
                raised = typed.at(cell) > typed.at(raised) ? cell : raised;
            }
            Analysis second = analysed(second(first, raised));
            assertEquals(typed.withNotes(List.of()), held(second).withNotes(List.of()), "what was typed stands there");
            for (int cell = 0; cell < typed.cells(); cell++) {
                if (cell != raised) {
                    assertEquals(typed.at(cell), meant(second).at(cell), "no change keeps its figure: cell " + cell);
                }
            }
            double whole = 1.1 * CellsNow.factor(holds, typed.at(raised));
            double got = CellsNow.factor(holds, meant(second).at(raised));
            assertTrue(whole > 1.2, "the first round must have changed something: " + whole);
            assertTrue(got >= whole - 0.0025 && got < whole + 0.0055, got + " for " + whole);
            assertEquals(List.of(), untold(second), "the program knows what was typed");
            String stands = second.hardware().orElseThrow().standsOn();
            assertTrue(stands.contains("the whole of"), stands);
            // What then is in the unit: the whole change on the table beneath.
            Table unit = TableInUnit.table(second);
            assertEquals(got * STOCK.at(raised), unit.at(raised), 1e-9 * unit.at(raised));
            Table after = first.job().hardware().cells().orElse(null);
            assertEquals(null, after, "the first round's own job is as it was");
        }
    }

    @Test
    void aCellThatIsLeftAsItIsKeepsItsFigureFromRoundToRound() {
        Analysis round = analysed(on(SAMPLE, Holds.PERCENT_CHANGE, 1));
        Table typed = meant(round);
        for (int n = 0; n < 3; n++) {
            round = analysed(second(round, -1));
            assertEquals(
                    Arrays.toString(typed.toArray()),
                    Arrays.toString(meant(round).toArray()),
                    "round " + (n + 2) + " asks for nothing");
            ToType sheet = HandOver.toType(round);
            for (int cell = 0; cell < typed.cells(); cell++) {
                assertFalse(sheet.changes(cell));
            }
        }
    }

    @Test
    void hardwareNamedOnlyInRoundTwoStandsOnTheOldestTableAndTheProgramAsks() {
        double factor = 1.3;
        Table now = STOCK.withValues(
                Arrays.stream(STOCK.toArray()).map(v -> v * factor).toArray());
        Job job = on(SAMPLE, Holds.PERCENT_CHANGE, 0.5)
                .withFuelTable(now)
                .withPast(List.of(new PastTable(STOCK, SAMPLE.rides().size(), Double.NaN)));
        Analysis analysis = analysed(job);
        HardwareTable hardware = analysis.hardware().orElseThrow();
        assertEquals(CellsNow.Known.WORKED_OUT, hardware.now().orElseThrow().known());
        for (int cell = 0; cell < now.cells(); cell++) {
            assertEquals(30, held(analysis).at(cell));
            double whole = analysis.proposal().cell(cell).after() / STOCK.at(cell);
            assertEquals(100 * (whole - 1), meant(analysis).at(cell), 0.56, "against the table beneath");
        }
        assertEquals(1, untold(analysis).size());
        assertEquals(Caution.Level.CHECK, untold(analysis).get(0).level());
        assertTrue(
                untold(analysis).get(0).what().contains("+30.0 %"),
                untold(analysis).get(0).what());

        // Said otherwise: the corrected table went into the unit itself.
        Table none = CellsNow.none(job.hardware(), now);
        Analysis flashed = analysed(job.withHardware(job.hardware().withCells(Optional.of(none))));
        assertEquals(none, held(flashed));
        assertEquals(List.of(), untold(flashed));
        for (int cell = 0; cell < now.cells(); cell++) {
            assertEquals(
                    flashed.proposal().cell(cell).changePercent(),
                    meant(flashed).at(cell),
                    0.56);
        }
    }

    @Test
    void theFirstSheetIsOnlyRightOnCellsThatHoldNothingAndThatIsSaidUntilItWasAnswered() {
        Job job = on(SAMPLE, Holds.PERCENT_CHANGE, 0.5);
        Analysis analysis = analysed(job);
        assertEquals(1, untold(analysis).size());
        assertTrue(
                untold(analysis).get(0).title().contains("holds 0 now"),
                untold(analysis).get(0).title());
        Table none = CellsNow.none(job.hardware(), STOCK);
        assertEquals(List.of(), untold(analysed(job.withHardware(job.hardware().withCells(Optional.of(none))))));

        // Cells that hold 8 % already: the change comes on top of them, in one figure.
        double[] eight = new double[STOCK.cells()];
        Arrays.fill(eight, 8);
        Analysis held = analysed(job.withHardware(job.hardware().withCells(Optional.of(none.withValues(eight)))));
        for (int cell = 0; cell < eight.length; cell++) {
            double whole = 1.08 * (1 + held.proposal().cell(cell).changePercent() / 100);
            assertEquals(100 * (whole - 1), meant(held).at(cell), 0.56);
            assertEquals(8, held(held).at(cell));
        }
    }

    @Test
    void theHardwaresRangeIsThatOfTheWholeChange() {
        Job job = on(SAMPLE, Holds.PERCENT_CHANGE, 0.5);
        double[] most = new double[STOCK.cells()];
        Arrays.fill(most, 30);
        HardwareProfile profile = new HardwareProfile(
                        "", Holds.PERCENT_CHANGE, -20, 32, Optional.empty(), Optional.empty(), Optional.empty(), false)
                .withCells(Optional.of(CellsNow.none(job.hardware(), STOCK).withValues(most)));
        Analysis analysis = analysed(job.withHardware(profile));
        assertTrue(Arrays.stream(meant(analysis).toArray()).allMatch(v -> v <= 32));
        assertTrue(analysis.cautions().stream().anyMatch(c -> c.rule().equals("hardware-range")));
    }

    @Test
    void theCheckComparesWithTheWholeChange() {
        Analysis first = analysed(on(SAMPLE, Holds.PERCENT_CHANGE, 0.5));
        Analysis second = analysed(second(first, -1));
        StringBuilder text = new StringBuilder();
        Table meant = meant(second);
        boolean down = meant.orientation() == Table.Orientation.SPEED_DOWN;
        int rows = (down ? meant.speed() : meant.load()).size();
        int columns = (down ? meant.load() : meant.speed()).size();
        for (int row = 0; row < rows; row++) {
            for (int column = 0; column < columns; column++) {
                text.append(column > 0 ? "\t" : "").append(0);
            }
            text.append("\n");
        }
        CheckEntry.Outcome outcome =
                CheckEntry.pasted(text.toString(), second).value().orElseThrow();
        assertTrue(outcome.isStop(), "what only comes on top, typed over the whole, is far too lean");
    }

    @Test
    void cellsOfAnotherQuantityOrSizeSayNothing() {
        Job job = on(SAMPLE, Holds.PERCENT_CHANGE, 0.5);
        Table other = Table.of(
                Quantity.MULTIPLIER,
                STOCK.speed(),
                STOCK.load(),
                CellsNow.none(on(SAMPLE, Holds.MULTIPLIER, 0).hardware(), STOCK).toArray());
        Job said = job.withHardware(job.hardware().withCells(Optional.of(other)));
        assertEquals(CellsNow.Known.TAKEN, CellsNow.of(said).orElseThrow().known());
    }
}
