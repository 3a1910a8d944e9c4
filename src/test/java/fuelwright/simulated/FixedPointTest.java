package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FixedPointTest {

    @ParameterizedTest
    @CsvSource({
        "1.0049, 2, 1.00",
        "-0.04, 1, 0.0",
        "-0.06, 1, -0.1",
        "12.3456, 3, 12.346",
        "0.07, 3, 0.070",
        "899.6, 0, 900"
    })
    void figuresHaveTheirDecimals(double value, int decimals, String expected) {
        StringBuilder text = new StringBuilder();
        FixedPoint.append(text, value, decimals);
        assertEquals(expected, text.toString());
    }
}
