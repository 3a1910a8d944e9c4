package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Against Aquino's equations (SAE 810494), solved by hand for a step. */
class WallFilmTest {
    private static final double DT_S = 0.001;

    @Test
    void steadyFlowPassesUnchanged() {
        WallFilm film = new WallFilm(0.3, 0.5, 2);
        for (int i = 0; i < 1000; i++) {
            assertEquals(2, film.step(2, DT_S), 1e-9);
        }
    }

    @Test
    void afterAStepTheCylinderLacksXTimesTheStepAndCatchesUpWithTheTimeConstant() {
        WallFilm film = new WallFilm(0.3, 0.5, 2);
        assertEquals(4 - 0.3 * 2, film.step(4, DT_S), 2e-3);
        double got = 0;
        for (int i = 1; i < 500; i++) {
            got = film.step(4, DT_S);
        }
        assertEquals(4 - 0.3 * 2 * Math.exp(-1), got, 2e-3);
    }

    @Test
    void fuelIsNeitherMadeNorLost() {
        WallFilm film = new WallFilm(0.3, 0.5, 0);
        double in = 0;
        double out = 0;
        for (int i = 0; i < 10_000; i++) {
            double injected = i < 400 ? 5 : 0;
            in += injected;
            out += film.step(injected, DT_S);
        }
        assertEquals(in, out, 1e-6 * in);
    }
}
