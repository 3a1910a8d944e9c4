package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class LaneTest {

    private static Lane lane(double least, double most, double highest) {
        return Lane.fitted("x", "1", "lane-0", 2, row -> row == 0 ? least : most, Optional.empty(), 0, highest, 0, 1);
    }

    private static void edges(double low, double high, Lane lane) {
        assertEquals(low, lane.low(), 1e-9);
        assertEquals(high, lane.high(), 1e-9);
    }

    @Test
    void edgesAreRoundFiguresThatHoldTheValues() {
        edges(1000, 9000, lane(1132, 8382, 20000));
        edges(0, 100, lane(0, 100, 100));
        edges(0, 120, lane(9, 102, 400));
        edges(0, 1, lane(0, 0, 100));
    }

    @Test
    void otherEdgesKeepTheRest() {
        Lane lane = lane(0, 100, 100).within(0.9, 1.1);
        edges(0.9, 1.1, lane);
        assertEquals(100, lane.values().at(1));
    }
}
