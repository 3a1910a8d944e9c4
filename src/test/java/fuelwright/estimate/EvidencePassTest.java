package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.Machine;
import fuelwright.ride.Ride;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class EvidencePassTest {

    private static final MadeUpRide MADE = new MadeUpRide((rpm, load) -> 1.05, 25, MadeUpRide.SENSOR);
    private static final Readings READINGS = readings(MADE.made(
            "lively",
            40,
            MadeUpRide.wandering(2000, 7000, 17),
            t -> 30 + 25 * Math.sin(1.3 * t) + 4 * Math.sin(3.1 * t + 1)));
    private static final int CELLS = MADE.old.cells();

    private record Reading(
            int row, double residual, double film, int place, double[] byCell, double[] byNuisance, double stepS) {}

    private static Readings readings(ScreenedRide ride) {
        return readings(ride, MADE.old, MADE.target);
    }

    private static Readings readings(ScreenedRide ride, Table madeWith, Table target) {
        return Readings.of(ride, madeWith, target, FlowModel.of(Machine.unknown(), madeWith, 0), 0);
    }

    private static List<Reading> pass(Readings readings, Table current, double[] cells, double[] nuisances) {
        List<Reading> all = new ArrayList<>();
        new EvidencePass(current.with(Quantity.MULTIPLIER, current.toArray()), cells, nuisances)
                .run(readings, (row, burntS, stepS, residual, film, place, lag, byNuisance) -> {
                    double[] byCell = new double[current.cells()];
                    for (int k = 0; k < lag.count(); k++) {
                        byCell[lag.cells()[k]] += lag.shares()[k];
                    }
                    all.add(new Reading(row, residual, film, place, byCell, byNuisance.clone(), stepS));
                });
        return all;
    }

    private static double[] someCells() {
        return new Random(2).doubles(CELLS, -0.15, 0.15).toArray();
    }

    /** Shares below 0.0002 are dropped on the way: what is lost stays below a thousandth. */
    @Test
    void derivativesByTheCellsAreThoseOfFiniteDifferences() {
        double[] cells = someCells();
        double[] nuisances = Nuisance.starts();
        List<Reading> here = pass(READINGS, MADE.old, cells, nuisances);
        double h = 1e-4;
        double most = 0;
        for (int c = 0; c < CELLS; c++) {
            double[] up = cells.clone();
            double[] down = cells.clone();
            up[c] += h;
            down[c] -= h;
            List<Reading> above = pass(READINGS, MADE.old, up, nuisances);
            List<Reading> below = pass(READINGS, MADE.old, down, nuisances);
            for (int i = 0; i < here.size(); i++) {
                // The residual falls as the prediction rises.
                double slope = (below.get(i).residual - above.get(i).residual) / (2 * h);
                assertEquals(slope, here.get(i).byCell[c], 1.5e-3, "cell " + c + ", reading " + i);
                most = Math.max(most, slope);
            }
        }
        assertTrue(most > 0.5, "the ride touches some cell well: " + most);
        for (Reading reading : here) {
            assertEquals(1, Arrays.stream(reading.byCell).sum(), 3e-3);
        }
    }

    /**
     * Root mean square of the difference, relative to that of the derivative: the film terms are exact; the lag is differentiated to one
     * side by 2 %; delays along straight lines between rows, with the engine speed and flow of the row's own moment, not of those that
     * the lag mixes in.
     */
    @ParameterizedTest
    @EnumSource
    void derivativesByTheNuisancesAreThoseOfFiniteDifferences(Nuisance nuisance) {
        double[] nuisances = Nuisance.starts();
        double h = nuisance.spread / 50;
        int q = nuisance.ordinal();
        double[] up = nuisances.clone();
        double[] down = nuisances.clone();
        up[q] += h;
        down[q] -= h;
        List<Reading> here = settled(pass(READINGS, MADE.old, someCells(), nuisances));
        List<Reading> above = settled(pass(READINGS, MADE.old, someCells(), up));
        List<Reading> below = settled(pass(READINGS, MADE.old, someCells(), down));
        assertTrue(here.size() > 900 && above.size() == here.size() && below.size() == here.size());
        double off = 0;
        double size = 0;
        for (int i = 0; i < here.size(); i++) {
            double slope = (below.get(i).residual - above.get(i).residual) / (2 * h);
            off += Math.pow(slope - here.get(i).byNuisance[q], 2);
            size += slope * slope;
        }
        double relative = size == 0 ? off : Math.sqrt(off / size);
        boolean linear = nuisance.ordinal() >= Nuisance.WALL_FILM.ordinal();
        assertTrue(relative <= (linear ? 1e-9 : 0.15), nuisance + " differs by " + relative);
        assertTrue(size > 0 || nuisance == Nuisance.WARM_UP, nuisance + " does nothing on this ride");
    }

    /** From the first second on, so that the same rows are there whatever the delay. */
    private static List<Reading> settled(List<Reading> all) {
        return all.stream().filter(r -> r.row >= 25).toList();
    }

    @Test
    void aSteadyRidePredictsNeededOverDeliveredTimesTarget() {
        double[] cells = someCells();
        double[] fuel = MADE.old.toArray();
        CellOrder order = new CellOrder(MADE.old);
        for (int c = 0; c < fuel.length; c++) {
            fuel[c] *= Math.exp(cells[order.ofCell(c)]);
        }
        Table needed = MADE.old.withValues(fuel);
        for (double[] place : new double[][] {{3100, 33}, {1500, 0}, {6789, 85}, {900, 120}}) {
            double expected = Math.log(MADE.target.value(place[0], place[1])
                    * needed.value(place[0], place[1])
                    / MADE.old.value(place[0], place[1]));
            List<Reading> all = pass(steady(place[0], place[1], 1.0), MADE.old, cells, Nuisance.starts());
            assertTrue(all.size() > 80);
            for (Reading reading : all) {
                assertEquals(-expected, reading.residual, 1e-12);
                assertEquals(0, reading.film, 1e-12);
            }
        }
    }

    private static Readings steady(double rpm, double throttle, double lambda) {
        int rows = 100;
        double[] time = new double[rows];
        Arrays.setAll(time, i -> i * 0.04);
        Ride ride = MadeUpRide.ride("steady", time, filled(rows, rpm), filled(rows, throttle), filled(rows, lambda));
        return readings(MadeUpRide.counting(ride, row -> true));
    }

    private static double[] filled(int n, double value) {
        double[] all = new double[n];
        Arrays.fill(all, value);
        return all;
    }

    @Test
    void withTheTruthPutInOnlyTheNoiseIsLeft() {
        MadeUpRide quiet = new MadeUpRide((rpm, load) -> 1 + 0.002 * load, 25, MadeUpRide.SENSOR).withNoise(0);
        ScreenedRide ride =
                quiet.made("quiet", 60, MadeUpRide.wandering(2000, 7000, 23), MadeUpRide.lively(3, 60, 1.7));
        double[] cells = new double[CELLS];
        CellOrder order = new CellOrder(quiet.old);
        for (int c = 0; c < CELLS; c++) {
            cells[order.ofCell(c)] = Math.log(quiet.needed.at(c) / quiet.old.at(c));
        }
        double[] nuisances = Nuisance.starts();
        nuisances[Nuisance.FIXED_DELAY.ordinal()] = MadeUpRide.SENSOR.fixedS();
        nuisances[Nuisance.CYCLES.ordinal()] = MadeUpRide.SENSOR.cycles();
        nuisances[Nuisance.GAS.ordinal()] = MadeUpRide.SENSOR.gasG();
        nuisances[Nuisance.LAG.ordinal()] = MadeUpRide.SENSOR.lagS();
        nuisances[Nuisance.WALL_FILM.ordinal()] = 0;
        double squares = 0;
        List<Reading> all = pass(readings(ride, quiet.old, quiet.target), quiet.old, cells, nuisances);
        for (Reading reading : all) {
            squares += reading.residual * reading.residual;
        }
        // Against a mixture that moves by 0.2: the rest is the log's straight lines between rows.
        assertTrue(Math.sqrt(squares / all.size()) < 1e-3, "left " + Math.sqrt(squares / all.size()));
    }

    @Test
    void whatHappenedBeforeAGapIsForgotten() {
        int rows = 200;
        double[] time = new double[rows];
        double[] throttle = filled(rows, 10);
        for (int i = 0; i < rows; i++) {
            time[i] = i * 0.04 + (i >= 100 ? 5 : 0);
            throttle[i] = i >= 100 ? 60 : 10;
        }
        Ride ride = MadeUpRide.ride("gap", time, filled(rows, 3000), throttle, filled(rows, 1));
        List<Reading> all =
                pass(readings(MadeUpRide.counting(ride, r -> true)), MADE.old, someCells(), Nuisance.starts());
        List<Reading> fresh = pass(steady(3000, 60, 1), MADE.old, someCells(), Nuisance.starts());
        List<Reading> after = all.stream().filter(r -> r.row >= 110).toList();
        assertTrue(after.size() > 60);
        for (Reading reading : after) {
            // The first moment after the gap is burnt in the gap, and five lags later 0.7 % of it is left.
            assertEquals(fresh.get(0).residual, reading.residual, 2e-4);
        }
        assertTrue(all.stream().noneMatch(r -> r.row >= 100 && r.row < 108), "nothing counts until it has settled");
    }

    @Test
    void aMissingReadingIsPassedOverAndTheTimeSinceTheLastOneIsTold() {
        int rows = 60;
        double[] time = new double[rows];
        Arrays.setAll(time, i -> i * 0.04);
        double[] lambda = filled(rows, 1);
        lambda[30] = Double.NaN;
        lambda[31] = 0;
        Ride ride = MadeUpRide.ride("holes", time, filled(rows, 3000), filled(rows, 20), lambda);
        List<Reading> all =
                pass(readings(MadeUpRide.counting(ride, r -> true)), MADE.old, someCells(), Nuisance.starts());
        assertTrue(all.stream().noneMatch(r -> r.row == 30 || r.row == 31));
        double stepS = all.stream().filter(r -> r.row == 32).findFirst().orElseThrow().stepS;
        assertEquals(0.12, stepS, 1e-9);
    }

    /** Doubling every table leaves nothing changed but the scale of the fuel. */
    @Test
    void theUnitOfTheFuelDoesNotMatter() {
        double[] doubled = MADE.old.toArray();
        Arrays.setAll(doubled, c -> 2 * doubled[c]);
        Table other = MADE.old.withValues(doubled);
        ScreenedRide ride = READINGS.screened;
        List<Reading> one = pass(READINGS, MADE.old, someCells(), Nuisance.starts());
        List<Reading> two = pass(readings(ride, other, MADE.target), other, someCells(), Nuisance.starts());
        assertEquals(one.size(), two.size());
        for (int i = 0; i < one.size(); i++) {
            assertEquals(one.get(i).residual, two.get(i).residual, 1e-10);
            assertArrayEquals(one.get(i).byCell, two.get(i).byCell, 1e-10);
            assertEquals(one.get(i).place, two.get(i).place);
        }
    }
}
