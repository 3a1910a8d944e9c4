package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Check bytes derived from the formulas of SAE J1979 / ISO 15031-5 mode 01. */
class J1979Test {

    private static double value(int parameter, int raw) {
        return J1979.of(parameter).orElseThrow().value(raw);
    }

    @Test
    void check_bytes_give_their_values() {
        assertEquals(1726.0, value(0x0C, 0x1AF8));
        assertEquals(1.0, value(0x24, 0x8000));
        assertEquals(0.880005, value(0x34, 0x70A4), 5e-7);
        assertEquals(1.999969, value(0x44, 0xFFFF), 5e-7);
        assertEquals(7.8125, value(0x06, 0x8A));
        assertEquals(-7.8125, value(0x07, 0x76));
        assertEquals(20.0, value(0x11, 0x33));
        assertEquals(83, value(0x05, 0x7B));
    }

    @Test
    void ranges_are_the_standards() {
        assertEquals(16383.75, J1979.ENGINE_SPEED.highest());
        assertEquals(-40, J1979.COOLANT.lowest());
        assertEquals(215, J1979.COOLANT.highest());
        assertEquals(99.22, J1979.SHORT_TRIM_BANK_1.highest(), 0.005);
        assertEquals(63.5, J1979.IGNITION_ADVANCE.highest());
    }

    /** A published reply of item 34 pairs 7B D1, 0.967, with a negative, that is rich, current: the item is lambda. */
    @Test
    void the_items_called_equivalence_ratio_are_lambda() {
        assertEquals(0.967, value(0x34, 0x7BD1), 5e-4);
        assertEquals(Role.LAMBDA, J1979.of(0x3B).orElseThrow().role());
        assertEquals(Role.COMMANDED_LAMBDA, J1979.of(0x44).orElseThrow().role());
    }

    @Test
    void every_value_that_can_be_sent_is_one_that_its_role_can_have() {
        for (J1979 item : J1979.values()) {
            double[] range = Plausible.range(item.role());
            if (range.length > 0
                    && item.role() != Role.LAMBDA
                    && item.role() != Role.COMMANDED_LAMBDA
                    && item.role() != Role.BAROMETER
                    && item != J1979.MODULE_VOLTAGE) {
                assertEquals(item.lowest(), Math.max(range[0], item.lowest()));
                assertEquals(item.highest(), Math.min(range[1], item.highest()));
            }
        }
    }
}
