package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.accuracy.SimulatedJob;
import fuelwright.simulated.Grid;
import fuelwright.simulated.Machine;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.Scores;
import fuelwright.simulated.SimulatedMachines;
import fuelwright.simulated.SimulatedRide;
import fuelwright.simulated.Trial;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.work.Analyse;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What stands out in a table, and what the rides make of it. */
class UnevennessTest {

    private static final Axis SPEED =
            new Axis(Axis.Kind.ENGINE_SPEED, 900, 1300, 1800, 2400, 3000, 3800, 4600, 5500, 6500, 7600, 9000);
    private static final Axis LOAD = new Axis(Axis.Kind.THROTTLE, 0, 2, 5, 9, 14, 20, 30, 45, 70, 100);

    private static Table smooth() {
        double[] cells = new double[SPEED.size() * LOAD.size()];
        for (int c = 0; c < cells.length; c++) {
            double rpm = SPEED.at(c % SPEED.size());
            double load = LOAD.at(c / SPEED.size());
            double filling = 1 - Math.exp(-(load + 3) * 5000 / rpm / 18);
            cells[c] = filling * (80 + 8 * Math.sin(rpm / 1400));
        }
        return Table.of(Quantity.VOLUMETRIC_EFFICIENCY, SPEED, LOAD, cells);
    }

    private static double[] of(Table table) {
        return new CellOrder(table).toTable(Unevenness.of(table));
    }

    private static double rms(double[] values) {
        return Math.sqrt(Arrays.stream(values).map(v -> v * v).average().orElseThrow());
    }

    @Test
    void aSmoothTableHardlyStandsOutAnywhere() {
        assertTrue(rms(of(smooth())) < 0.01, "rms " + rms(of(smooth())));
    }

    @Test
    void oneCellThatStandsOutIsSeenThereAndNotInItsNeighbours() {
        double[] before = of(smooth());
        for (int load = 0; load < LOAD.size(); load += 3) {
            for (int speed = 0; speed < SPEED.size(); speed += 2) {
                double[] cells = smooth().toArray();
                int wrong = load * SPEED.size() + speed;
                cells[wrong] *= 0.8;
                double[] after = of(smooth().withValues(cells));
                for (int c = 0; c < after.length; c++) {
                    double change = after[c] - before[c];
                    assertTrue(
                            c == wrong ? change < -0.1 : Math.abs(change) < 0.05, c + " by " + wrong + ": " + change);
                }
            }
        }
    }

    @Test
    void whatWasPlantedIsSeenButForWhatIsSmoothInIt() {
        Random random = new Random(5);
        double[] cells = smooth().toArray();
        double[] planted = random.doubles(cells.length, -0.06, 0.06).toArray();
        for (int c = 0; c < cells.length; c++) {
            cells[c] *= Math.exp(planted[c]);
        }
        double[] seen = of(smooth().withValues(cells));
        double along = 0;
        for (int c = 0; c < cells.length; c++) {
            along += seen[c] * planted[c];
        }
        assertTrue(along / cells.length / rms(seen) / rms(planted) > 0.75, "correlation");
    }

    @Test
    void theTablesUnitsDoNotMatterAndSmallTablesHaveNone() {
        Table table = smooth();
        double[] twice = Arrays.stream(table.toArray()).map(v -> 2 * v).toArray();
        assertArrayEquals(of(table), of(table.withValues(twice)), 1e-12);
        Axis few = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 3000, 5000, 8000);
        assertEquals(0, rms(of(table.sampledAt(few, LOAD))));
    }

    /** Error of the next ride with the table that the estimate gives, with the part and without it. */
    private static double[] errors(Machine machine) {
        Trial trial = Trial.withOldTable(machine.name(), machine, 6, RideProfile.road(12));
        Grid old = trial.table();
        Analysis analysis = Analyse.run(
                        SimulatedJob.of(
                                trial.tables(),
                                old,
                                trial.rides().stream().map(SimulatedRide::csv).toList(),
                                true),
                        Progress.NONE,
                        Cancellation.NEVER)
                .value()
                .orElseThrow();
        Table fuel = analysis.estimate().table();
        List<Estimator.Source> sources = analysis.screened().stream()
                .map(s -> new Estimator.Source(s, fuel))
                .toList();
        double[] errors = new double[2];
        for (int without = 0; without < 2; without++) {
            Estimate estimate = PartsStudy.run(
                    without == 0 ? 0 : 1 + Part.UNEVENNESS.ordinal(),
                    fuel,
                    analysis.job().targetTable().orElseThrow(),
                    sources,
                    analysis.job().machine(),
                    0);
            double[] cells = old.toArray();
            for (int c = 0; c < cells.length; c++) {
                cells[c] *= Math.exp(estimate.logFactor(c));
            }
            errors[without] = 100 * Scores.mixtureError(old.with(cells), trial.exam());
        }
        return errors;
    }

    @Test
    void unevennessThatIsTheTablesOwnFaultIsLearntAndTakenOut() {
        Machine poor = SimulatedMachines.all().stream()
                .filter(m -> m.name().contains("poor old table"))
                .findFirst()
                .orElseThrow();
        double[] errors = errors(poor);
        assertTrue(errors[0] < 0.75 * errors[1], Arrays.toString(errors));
    }

    @Test
    void unevennessThatTheEngineNeedsIsLeftAlone() {
        double[] errors = errors(SimulatedMachines.resonant());
        assertTrue(errors[0] < 1.05 * errors[1], Arrays.toString(errors));
    }
}
