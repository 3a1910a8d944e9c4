package fuelwright.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class LocalQuadraticTest {

    private static final double[] XS = {0, 1, 2, 3, 4, 5, 6, 7, 8};

    /** NumPy 2.4.6, {@code numpy.polyfit(u, y, 2, w=sqrt(tricube))}, u = (x − 3.4)/4.5; computed with it. */
    @Test
    void aWorkedCaseOfAReferenceLibraryIsMet() {
        double[] ys = {1.0, 2.1, 2.9, 4.3, 4.8, 6.4, 6.6, 8.3, 8.7};
        LocalQuadratic.At at = new LocalQuadratic(XS, ys).at(3.4, 4.5);
        assertEquals(4.481929700971829, at.value(), 1e-11);
        assertEquals(0.9921515243930402, at.slope(), 1e-11);
    }

    @Test
    void aParabolaComesBackWithoutError() {
        double[] ys = new double[XS.length];
        for (int i = 0; i < ys.length; i++) {
            ys[i] = 3 - 0.5 * XS[i] + 0.25 * XS[i] * XS[i];
        }
        LocalQuadratic.At at = new LocalQuadratic(XS, ys).at(4.25, 5);
        assertEquals(3 - 0.5 * 4.25 + 0.25 * 4.25 * 4.25, at.value(), 1e-11);
        assertEquals(-0.5 + 0.5 * 4.25, at.slope(), 1e-11);
        assertEquals(0, at.valueError(), 1e-11);
    }

    @Test
    void tooFewPointsNearbySayNothing() {
        assertTrue(Double.isNaN(new LocalQuadratic(XS, XS).at(0, 3).value()));
    }
}
