package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SayTest {

    @Test
    void momentsFromOneHourOnHaveHours() {
        assertEquals("1:05", Say.minutes(65));
        assertEquals("59:59", Say.minutes(3599));
        assertEquals("13:53:20", Say.minutes(50_000));
        assertEquals("-0:05", Say.minutes(-5));
    }
}
