package fuelwright.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.table.Axis;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AxisCursorTest {

    @Test
    void wherever_it_was_before_it_says_what_the_axis_says() {
        Random random = new Random(8);
        Axis axis = new Axis(Axis.Kind.ENGINE_SPEED, 0, 1.5, 800, 1000, 1250.7, 3000, 9000);
        AxisCursor cursor = new AxisCursor(axis);
        double x = 900;
        for (int i = 0; i < 20_000; i++) {
            x = switch (random.nextInt(20)) {
                case 0 -> random.nextDouble() * 11_000 - 1000;
                case 1 -> axis.at(random.nextInt(axis.size()));
                case 2 -> Math.nextDown(axis.at(random.nextInt(axis.size())));
                case 3 -> Double.NaN;
                default -> x + 10 * random.nextGaussian();
            };
            assertEquals(axis.position(x), cursor.position(x), "at " + x);
            x = Double.isNaN(x) ? 5000 : x;
        }
    }
}
