package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

/** Figures derived from first principles: crank degrees over engine speed, gas mass over flow. */
class SensorModelTest {

    private static final double INFINITE_FLOW = Double.POSITIVE_INFINITY;

    @Test
    void crankDegreesTakeTheirTimeByEngineSpeed() {
        double[] speedsRpm = {1000, 1500, 3000, 6000, 12000};
        double[] after540Ms = {90, 60, 30, 15, 7.5};
        double[] after720Ms = {120, 80, 40, 20, 10};
        for (int i = 0; i < speedsRpm.length; i++) {
            SensorModel threeQuarters = new SensorModel(0, 540.0 / 720, 0, 0);
            SensorModel cycle = new SensorModel(0, 1, 0, 0);
            assertEquals(after540Ms[i], 1000 * threeQuarters.delayS(speedsRpm[i], INFINITE_FLOW), 1e-9);
            assertEquals(after720Ms[i], 1000 * cycle.delayS(speedsRpm[i], INFINITE_FLOW), 1e-9);
        }
    }

    /** A pipe of 0.8 m × 40 mm at 100 kPa, R 287 J/(kg·K), of which only the gas mass counts. */
    @Test
    void gasInThePipeTakesItsMassOverTheFlow() {
        double[] flowsGPerS = {1, 3, 10, 30, 60};
        double[] temperaturesK = {700, 800, 900, 1050, 1100};
        double[] transportMs = {500.4, 145.95, 38.92, 11.12, 5.31};
        double volumeM3 = 0.8 * Math.PI / 4 * 0.04 * 0.04;
        for (int i = 0; i < flowsGPerS.length; i++) {
            double gasG = 1000 * volumeM3 * 100e3 / (287 * temperaturesK[i]);
            SensorModel pipe = new SensorModel(0, 0, gasG, 0);
            assertEquals(transportMs[i], 1000 * pipe.delayS(3000, flowsGPerS[i]), 0.05 + 1e-9);
        }
    }

    @Test
    void thePartsOfTheDelayAddUp() {
        SensorModel model = new SensorModel(0.02, 0.9, 0.4, 0.08);
        assertEquals(0.02 + 0.9 * 0.04 + 0.4 / 10, model.delayS(3000, 10), 1e-12);
        assertEquals(0, SensorModel.none().delayS(3000, 10), 0.0);
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new SensorModel(-0.001, 1, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new SensorModel(0, Double.NaN, 1, 1));
        assertThrows(IllegalArgumentException.class, () -> new SensorModel(0, 1, Double.POSITIVE_INFINITY, 1));
        assertThrows(IllegalArgumentException.class, () -> new SensorModel(0, 1, 1, 100));
    }
}
