package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Sums over blocks say what counting row by row says. */
class ShadingTest {

    @Test
    void theCommonestReasonOfAnyStretchIsFound() {
        Random random = new Random(5);
        int rows = 5000;
        int[] codes = new int[rows];
        int now = -1;
        for (int i = 0; i < rows; i++) {
            now = random.nextInt(60) == 0 ? random.nextInt(5) - 1 : now;
            codes[i] = now;
        }
        Shading shading = new Shading(rows, 4, row -> codes[row]);
        for (int i = 0; i < 3000; i++) {
            int from = random.nextInt(rows);
            int to = from + 1 + random.nextInt(i % 2 == 0 ? 40 : rows - from);
            assertEquals(plainly(codes, from, Math.min(rows, to)), shading.most(from, to), from + " to " + to);
        }
        assertEquals(-1, shading.most(10, 10));
        assertEquals(-1, Shading.none(300).most(0, 300));
    }

    private static int plainly(int[] codes, int from, int to) {
        int[] counts = new int[4];
        int all = 0;
        for (int row = from; row < to; row++) {
            if (codes[row] >= 0) {
                counts[codes[row]]++;
                all++;
            }
        }
        int best = 0;
        for (int reason = 1; reason < 4; reason++) {
            best = counts[reason] > counts[best] ? reason : best;
        }
        return 2 * all >= to - from && all > 0 ? best : -1;
    }

    @Test
    void aTimeOfARestartedLogIsShownWhereItsSegmentLies() {
        double[] timeS = {0, 1, 2, 0.5, 1.5, 8};
        RideClock clock = new RideClock(6, i -> timeS[i], List.of(0, 3));
        assertEquals(4, clock.at(3));
        assertEquals(11.5, clock.last());
        assertEquals(1, clock.shown(1));
        assertEquals(11, clock.shown(7.5));
        assertEquals(3, clock.rowAtOrAfter(3));
        assertEquals(2, clock.nearest(2.4));
    }

    @Test
    void marksThatLieOnEachOtherAreOneAndStopComesFirst() {
        Trace.Mark check = new Trace.Mark(50, 50, false, "look");
        Trace.Mark stop = new Trace.Mark(50.1, 50.1, true, "stop");
        Trace trace = new Trace(
                new RideClock(100, i -> i, List.of(0)),
                List.of(),
                Shading.none(100),
                List.of(OutKind.DATA),
                row -> "",
                List.of(check, stop, new Trace.Mark(90, 90, false, "later")));
        MarkStrip strip = new MarkStrip(trace, TimeWindow.all(0, 100), 0, 1000);
        assertEquals("stop", strip.at(500).orElseThrow().words());
        assertEquals("later", strip.at(903).orElseThrow().words());
        assertEquals(true, strip.at(700).isEmpty());
    }
}
