package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HeldValuesTest {

    private static Column held(int rowsEach, int readings) {
        Random random = new Random(3);
        double[] values = new double[rowsEach * readings];
        for (int r = 0; r < readings; r++) {
            double value = 0.8 + 0.001 * random.nextInt(400);
            for (int k = 0; k < rowsEach; k++) {
                values[r * rowsEach + k] = value;
            }
        }
        return Column.of(values);
    }

    @Test
    void a_value_held_over_four_rows_is_one_reading() {
        HeldValues held = HeldValues.of(held(4, 200), List.of(0));
        assertEquals(4, held.periodRows());
        assertEquals(200, held.newCount());
        assertTrue(held.isNew(4) && !held.isNew(5) && !held.isNew(7) && held.isNew(8));
    }

    @Test
    void a_column_sampled_in_every_row_is_new_in_every_row_even_where_it_stands_still() {
        double[] values = held(1, 200).toArray();
        for (int i = 50; i < 80; i++) {
            values[i] = 1;
        }
        HeldValues held = HeldValues.of(Column.of(values), List.of(0));
        assertEquals(1, held.periodRows());
        assertEquals(200, held.newCount());
    }

    @Test
    void a_renewed_value_that_happens_to_be_the_same_counts_again_after_a_period() {
        double[] values = held(4, 100).toArray();
        for (int i = 40; i < 60; i++) {
            values[i] = 1;
        }
        assertEquals(100, HeldValues.of(Column.of(values), List.of(0)).newCount());
    }

    @Test
    void a_missing_value_is_no_reading_and_a_restart_holds_nothing_over() {
        double[] values = held(4, 100).toArray();
        values[17] = Double.NaN;
        values[200] = values[199];
        HeldValues held = HeldValues.of(Column.of(values), List.of(0, 200));
        assertFalse(held.isNew(17));
        assertTrue(held.isNew(200));
    }
}
