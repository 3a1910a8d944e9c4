package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class TimeWindowTest {

    @Test
    void zoomingKeepsTheSecondUnderThePointer() {
        TimeWindow window = TimeWindow.all(0, 600).at(100, 200);
        TimeWindow closer = window.zoomed(0.5, 150);
        assertEquals(100, closer.lengthS(), 1e-9);
        assertEquals(window.xOf(150, 0, 800), closer.xOf(150, 0, 800), 1e-9);
    }

    @Test
    void movingStopsAtBothEnds() {
        TimeWindow window = TimeWindow.all(10, 110).at(20, 50);
        assertEquals(10, window.moved(-5).fromS());
        assertEquals(110, window.moved(5).toS());
        assertEquals(50, window.moved(5).lengthS(), 1e-9);
    }

    @Test
    void zoomingOutEndsWithEverythingAndInWithSomething() {
        TimeWindow window = TimeWindow.all(0, 60);
        assertEquals(window, window.zoomed(10, 30));
        TimeWindow closest = window;
        for (int i = 0; i < 100; i++) {
            closest = closest.zoomed(0.5, 30);
        }
        assertTrue(closest.lengthS() > 0.199);
    }

    @Test
    void timeAndPlaceAreInverse() {
        TimeWindow window = TimeWindow.all(0, 600).at(30, 90);
        assertEquals(47.5, window.timeAt(window.xOf(47.5, 100, 700), 100, 700), 1e-9);
    }

    @Test
    void marksAreFewEnough() {
        assertEquals(120, TimeWindow.all(0, 900).tickS(8));
        assertEquals(0.1, TimeWindow.all(0, 600).at(0, 0.5).tickS(8));
    }

    @Test
    void aRestartedLogGoesOnBehindItself() {
        double[] time = {0, 1, 2, 0, 1};
        RideClock clock = new RideClock(5, i -> time[i], List.of(0, 3));
        assertEquals(4, clock.at(3));
        assertEquals(5, clock.last());
        assertEquals(3, clock.rowAtOrAfter(2.5));
        assertEquals(2, clock.nearest(2.4));
        assertEquals(5, clock.rowAtOrAfter(99));
        assertEquals(4, clock.nearest(99));
    }

    @Test
    void aSegmentThatStartsLaterKeepsItsTime() {
        double[] time = {0, 1, 10, 11};
        RideClock clock = new RideClock(4, i -> time[i], List.of(0, 2));
        assertEquals(10, clock.at(2));
    }
}
