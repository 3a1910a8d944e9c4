package fuelwright.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class MomentTest {

    @Test
    void fromOneHourOnATimeOfARideHasHours() {
        assertEquals("1:52.4", Figures.moment(112.4));
        assertEquals("59:59.9", Figures.moment(3599.9));
        assertEquals("1:00:00.0", Figures.moment(3599.96));
        assertEquals("13:53:20.5", Figures.moment(50_000.5));
        assertEquals("–", Figures.moment(Double.NaN).substring(0, 1));
    }
}
