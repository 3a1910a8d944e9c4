package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;

class ProjectionTest {

    @Test
    void theMiddleStaysInTheMiddle() {
        for (int turn = 0; turn < 360; turn += 30) {
            Projection.Seen seen = new Projection(turn, 40, 1.3).see(0, 0, 0);
            assertEquals(0, seen.x(), 1e-12);
            assertEquals(0, seen.y(), 1e-12);
            assertEquals(0, seen.depth(), 1e-12);
        }
    }

    @Test
    void fromStraightAboveTheFloorIsSeenUpright() {
        Projection above = new Projection(0, 90, 1);
        Projection.Seen right = above.see(1, 0, 0);
        Projection.Seen away = above.see(0, 1, 0);
        assertEquals(1, right.x(), 1e-12);
        assertEquals(0, right.y(), 1e-12);
        assertEquals(0, away.x(), 1e-12);
        assertEquals(-1, away.y(), 1e-12);
        assertTrue(above.see(0, 0, 1).depth() < above.see(0, 0, -1).depth());
    }

    @Test
    void whatIsNearerLooksLarger() {
        Projection level = new Projection(0, 5, 1);
        double near = level.see(0, -1, 1).y() - level.see(0, -1, -1).y();
        double far = level.see(0, 1, 1).y() - level.see(0, 1, -1).y();
        assertTrue(Math.abs(near) > Math.abs(far));
    }

    @Test
    void turningKeepsEveryDistanceFromTheEye() {
        Random random = new Random(4);
        for (int i = 0; i < 200; i++) {
            double x = random.nextDouble() * 2 - 1;
            double y = random.nextDouble() * 2 - 1;
            double z = random.nextDouble() * 2 - 1;
            Projection p = new Projection(random.nextDouble() * 360, 5 + random.nextDouble() * 85, 1);
            Projection.Seen seen = p.see(x, y, z);
            double nearness = Projection.EYE / (Projection.EYE + seen.depth());
            double length =
                    Math.pow(seen.x() / nearness, 2) + Math.pow(seen.y() / nearness, 2) + Math.pow(seen.depth(), 2);
            assertEquals(x * x + y * y + z * z, length, 1e-9);
        }
    }

    @Test
    void aWholeTurnComesBackAndTiltAndZoomStopAtTheirEnds() {
        Projection p = Projection.usual();
        Projection round = p.turned(360, 0);
        assertEquals(p.turnDeg(), round.turnDeg(), 1e-9);
        assertEquals(90, p.turned(0, 1000).tiltDeg());
        assertEquals(5, p.turned(0, -1000).tiltDeg());
        assertEquals(4, p.zoomed(100).zoom());
        assertEquals(0.5, p.zoomed(0.001).zoom());
    }
}
