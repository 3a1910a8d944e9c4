package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class AxisTest {

    private static final Axis AXIS = new Axis(Axis.Kind.THROTTLE, 0, 2, 6, 100);

    @Test
    void positionIsIndexPlusFractionAndClamped() {
        assertEquals(0, AXIS.position(-3));
        assertEquals(0.5, AXIS.position(1));
        assertEquals(1.25, AXIS.position(3));
        assertEquals(3, AXIS.position(1000));
        assertTrue(Double.isNaN(AXIS.position(Double.NaN)));
    }

    @Test
    void positionNeverFallsWhenTheValueRises() {
        Random random = new Random(2);
        double x = -5;
        double previous = 0;
        for (int i = 0; i < 2000; i++) {
            x += random.nextDouble() * 0.1;
            double position = AXIS.position(x);
            assertTrue(position >= previous);
            previous = position;
        }
    }

    @Test
    void theNearestBreakpointIsFound() {
        assertEquals(0, AXIS.nearest(0.9));
        assertEquals(2, AXIS.nearest(50));
        assertEquals(3, AXIS.nearest(54));
    }

    @Test
    void anAxisThatDoesNotAscendIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> new Axis(Axis.Kind.THROTTLE, 0));
        assertThrows(IllegalArgumentException.class, () -> new Axis(Axis.Kind.THROTTLE, 0, 2, 2));
        assertThrows(IllegalArgumentException.class, () -> new Axis(Axis.Kind.THROTTLE, 0, Double.NaN));
    }

    @Test
    void anAxisKeepsNoHandleToTheCallersArray() {
        double[] breakpoints = {0, 50, 100};
        Axis axis = new Axis(Axis.Kind.THROTTLE, breakpoints);
        breakpoints[1] = 70;
        axis.toArray()[1] = 80;
        assertEquals(50, axis.at(1));
    }
}
