package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class SayTest {

    @Test
    void momentsFromOneHourOnHaveHours() {
        assertEquals("1:05.0", Say.minutes(65));
        assertEquals("14:44.8", Say.minutes(884.8));
        assertEquals("13:53:20.0", Say.minutes(50_000));
        assertEquals("−0:05.0", Say.minutes(-5));
    }
}
