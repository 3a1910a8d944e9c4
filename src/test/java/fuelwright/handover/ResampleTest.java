package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.airflow.HighLoad;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ResampleTest {

    private static final HighLoad NEVER = (rpm, throttle, kpa, barometer) -> false;
    private static final HighLoad FROM_60 = (rpm, throttle, kpa, barometer) -> throttle >= 60;
    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000, 3000, 4500, 6000, 8000);
    private static final Axis LOAD = new Axis(Axis.Kind.THROTTLE, 0, 10, 30, 60, 100);
    private static final Axis OTHER_SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 1200, 2600, 4000, 5500, 7200);
    private static final Axis OTHER_LOAD = new Axis(Axis.Kind.THROTTLE, 0, 15, 45, 80);

    private static Table fuel(Random random) {
        double[] cells = new double[SPEED.size() * LOAD.size()];
        for (int c = 0; c < cells.length; c++) {
            cells[c] = 40 + 8.0 * (c / SPEED.size()) + 10 * random.nextDouble();
        }
        return Table.of(Quantity.MULTIPLIER, SPEED, LOAD, cells);
    }

    private static RidePoints ridden(Random random) {
        RidePoints points = new RidePoints();
        for (int r = 0; r < 3000; r++) {
            double at = 70 * random.nextDouble() * random.nextDouble();
            points.add(1500 + 5000 * random.nextDouble(), at, at >= 60);
        }
        return points;
    }

    private static double rms(Resample resample, double[] figures, RidePoints ridden) {
        double sum = 0;
        for (int r = 0; r < ridden.size(); r++) {
            double off = resample.delivered(figures, ridden.speedRpm(r), ridden.load(r)) - 1;
            sum += off * off;
        }
        return Math.sqrt(sum / ridden.size());
    }

    @Test
    void theFitReproducesTheRideBetterThanReadingOffAtTheBreakpoints() {
        for (int seed = 0; seed < 50; seed++) {
            Random random = new Random(seed);
            Resample resample = new Resample(null, fuel(random), OTHER_SPEED, OTHER_LOAD, NEVER);
            RidePoints ridden = ridden(random);
            double fitted = rms(resample, resample.fit(ridden), ridden);
            double plain = rms(resample, resample.plain(), ridden);
            assertTrue(fitted < plain, seed + ": " + fitted + " against " + plain);
        }
    }

    @Test
    void whereNobodyRodeTheTableIsReadOffAtTheBreakpoints() {
        Resample resample = new Resample(null, fuel(new Random(1)), OTHER_SPEED, OTHER_LOAD, NEVER);
        double[] figures = resample.fit(new RidePoints());
        for (int k = 0; k < figures.length; k++) {
            assertEquals(resample.plain()[k], figures[k], 1e-9);
        }
    }

    /** Bilinear surfaces are kept whole by breakpoints that hold all of theirs: the hat functions of the old ones lie in the span of the new. */
    @Test
    void breakpointsThatHoldAllOfTheTablesLoseNothing() {
        Axis finer = new Axis(Axis.Kind.ENGINE_SPEED, Resample.merged(SPEED, OTHER_SPEED));
        Axis finerLoad = new Axis(Axis.Kind.THROTTLE, Resample.merged(LOAD, OTHER_LOAD));
        Random random = new Random(2);
        Resample resample = new Resample(null, fuel(random), finer, finerLoad, FROM_60);
        RidePoints ridden = ridden(random);
        assertEquals(0, rms(resample, resample.fit(ridden), ridden), 1e-9);
    }

    @Test
    void atHighLoadNoPointIsLeanerThanTheTableAnywhereNotOnlyAtBreakpoints() {
        for (int seed = 0; seed < 50; seed++) {
            Random random = new Random(seed);
            Resample resample = new Resample(null, fuel(random), OTHER_SPEED, OTHER_LOAD, FROM_60);
            double[] figures = resample.fit(ridden(random));
            for (double rpm = 500; rpm <= 9000; rpm += 70) {
                for (double at = 60; at <= 100; at += 1) {
                    double share = resample.delivered(figures, rpm, at);
                    assertTrue(share > 1 - 1e-9, seed + ": " + share + " at " + rpm + ", " + at);
                }
            }
        }
    }

    /** The fuel that a change table multiplies is divided out: delivered is base times factor. */
    @Test
    void aChangeOfOneFactorEverywhereStaysThatFactor() {
        Table base = fuel(new Random(3));
        double[] more = base.toArray();
        for (int c = 0; c < more.length; c++) {
            more[c] *= 1.12;
        }
        Resample resample = new Resample(base, base.withValues(more), OTHER_SPEED, OTHER_LOAD, FROM_60);
        for (double figure : resample.fit(ridden(new Random(4)))) {
            assertEquals(1.12, figure, 1e-9);
        }
    }
}
