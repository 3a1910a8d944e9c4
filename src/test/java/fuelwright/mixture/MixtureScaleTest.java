package fuelwright.mixture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class MixtureScaleTest {

    /** Best power of petrol at lambda 0.85–0.90 is AFR 12.5–13.2 on a display set to 14.7 (common practice, no source). */
    @Test
    void aDisplaysRatioIsLambdaTimesWhatItIsSetTo() {
        assertEquals(12.5, MixtureScale.afrOfLambda(0.85, 14.7), 0.01);
        assertEquals(13.2, MixtureScale.afrOfLambda(0.90, 14.7), 0.04);
        assertEquals(0.88, MixtureScale.lambdaOfAfr(MixtureScale.afrOfLambda(0.88, 14.1), 14.1), 1e-12);
    }

    @Test
    void lambdaIsTheReciprocalOfTheEquivalenceRatio() {
        assertEquals(0.8, MixtureScale.lambdaOfEquivalenceRatio(1.25), 1e-12);
    }

    @Test
    void twoPointsSetAWidebandsScale() {
        assertEquals(0.7, MixtureScale.lambdaOfVolts(0.5, 0.5, 0.7, 4.5, 1.3), 1e-12);
        assertEquals(1, MixtureScale.lambdaOfVolts(2.5, 0.5, 0.7, 4.5, 1.3), 1e-12);
    }

    @Test
    void impossibleScalesAreRefused() {
        assertThrows(IllegalArgumentException.class, () -> MixtureScale.lambdaOfAfr(13, 0));
        assertThrows(IllegalArgumentException.class, () -> MixtureScale.afrOfLambda(1, -1));
        assertThrows(IllegalArgumentException.class, () -> MixtureScale.lambdaOfVolts(1, 2, 0.7, 2, 1.3));
    }
}
