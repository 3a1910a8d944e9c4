package fuelwright.ui.theme;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import javafx.scene.paint.Color;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** All text at 4.5:1 or better (WCAG 2.1, 1.4.3), palettes that can be told apart without full colour vision. */
class ThemeTest {

    /**
     * Machado, Oliveira and Fernandes, IEEE Trans. Visualization and Computer Graphics 15 (2009) 1291: simulation of missing cones
     * (severity 1), on linear RGB. Figures from memory.
     */
    private static final double[][] DEFICIENCIES = {
        {0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998},
        {0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881},
        {1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900}
    };

    /** WCAG 2.1, success criterion 1.4.6. */
    private static final double ENHANCED_CONTRAST = 7;

    @ParameterizedTest
    @EnumSource
    void everyTextCanBeReadOnWhatLiesBehindIt(Theme theme) {
        Palette p = theme.palette();
        for (String ink :
                List.of("ink", "muted", "accent", "stop", "check", "target", "lane-0", "lane-1", "lane-2", "lane-3")) {
            for (String ground : List.of("surface", "card", "raised")) {
                readable(p, ink, ground);
            }
        }
        readable(p, "on-accent", "accent");
        readable(p, "on-stop", "stop");
        for (String kind : List.of("stop", "check", "note")) {
            readable(p, kind, kind + "-soft");
            readable(p, "ink", kind + "-soft");
        }
        for (String ink : List.of("rail-ink", "rail-muted", "rail-done", "rail-needs", "rail-stop")) {
            readable(p, ink, "rail");
            readable(p, ink, "rail-chosen");
        }
        readable(p, "rail", "rail-needs");
        readable(p, "rail", "rail-stop");
    }

    private static void readable(Palette p, String ink, String ground) {
        double least = p == Theme.CONTRAST.palette() ? ENHANCED_CONTRAST : Colours.TEXT_CONTRAST;
        double contrast = Colours.contrast(p.role(ink), p.role(ground));
        assertTrue(contrast >= least, ink + " on " + ground + ": " + contrast);
    }

    @ParameterizedTest
    @EnumSource
    void everyFigureInEveryMapCanBeRead(Theme theme) {
        Palette p = theme.palette();
        for (int i = -100; i <= 100; i++) {
            Color full = p.diverging().at(i / 100.0);
            Color amount = p.sequential().at(i / 100.0);
            for (double strength = 0.4; strength <= 1; strength += 0.1) {
                for (Color fill :
                        List.of(Colours.mix(p.surface(), full, strength), Colours.mix(p.surface(), amount, strength))) {
                    assertTrue(
                            Colours.contrast(Colours.inkOn(fill), fill) >= Colours.TEXT_CONTRAST, i + " " + strength);
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void lessAndMoreFuelCanBeToldApartWhateverConesAreMissing(Theme theme) {
        DivergingScale scale = theme.palette().diverging();
        for (double t : new double[] {0.15, 0.25, 0.5, 0.75, 1}) {
            assertTrue(Colours.distance(scale.at(-t), scale.at(t)) > 12, "full colour " + t);
            for (double[] missing : DEFICIENCIES) {
                double distance = Colours.distance(seen(scale.at(-t), missing), seen(scale.at(t), missing));
                assertTrue(distance > 6, theme + " at ±" + t + ": " + distance);
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void eachDirectionOfTheChangeMapGrowsAwayFromItsMiddle(Theme theme) {
        DivergingScale scale = theme.palette().diverging();
        double sign = theme == Theme.LIGHT ? -1 : 1;
        for (double direction : new double[] {-1, 1}) {
            double before = Colours.lab(scale.at(0))[0];
            for (double t = 0.1; t <= 1.001; t += 0.1) {
                double now = Colours.lab(scale.at(direction * t))[0];
                assertTrue(sign * (now - before) > 0.5, theme + " " + direction * t + ": " + before + " → " + now);
                before = now;
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void amountsGrowInOneDirectionOfLightness(Theme theme) {
        SequentialScale scale = theme.palette().sequential();
        double sign = theme == Theme.LIGHT ? -1 : 1;
        double before = Colours.lab(scale.at(0))[0];
        for (double t = 0.1; t <= 1.001; t += 0.1) {
            double now = Colours.lab(scale.at(t))[0];
            assertTrue(sign * (now - before) > 2, theme + " " + t + ": " + before + " → " + now);
            before = now;
        }
    }

    @ParameterizedTest
    @EnumSource
    void beyondItsEndsAScaleKeepsItsLastColour(Theme theme) {
        DivergingScale scale = theme.palette().diverging();
        assertEquals(scale.at(1), scale.at(3));
        assertEquals(scale.at(-1), scale.at(-3));
    }

    private static Color seen(Color c, double[] m) {
        double r = Colours.linear(c.getRed());
        double g = Colours.linear(c.getGreen());
        double b = Colours.linear(c.getBlue());
        return Color.color(
                Colours.gamma(m[0] * r + m[1] * g + m[2] * b),
                Colours.gamma(m[3] * r + m[4] * g + m[5] * b),
                Colours.gamma(m[6] * r + m[7] * g + m[8] * b));
    }
}
