package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.safety.Caution;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class MixtureWordsTest {

    private static final Mixture AFR = new Mixture(true, 14.7, 14.7);

    private static String shown(String rule, String what, Mixture as) {
        Caution caution = new Caution(rule, Caution.Level.STOP, "title", what, what, new TreeSet<>(), List.of());
        Caution shown = MixtureWords.in(caution, as);
        assertEquals(shown.what(), shown.todo());
        return shown.what();
    }

    @Test
    void mixturesAreShownAsTheUserWantsThem() {
        String lean = "Worst: lambda 1.02, limit 0.92, for 0.52 s at 4000 rpm, up to lambda 1.1 and 0.95 %";
        assertEquals(lean, shown("lean-under-load", lean, new Mixture(false, 14.7, 14.7)));
        assertEquals(
                "Worst: AFR 15.0, limit 13.5, for 0.52 s at 4000 rpm, up to AFR 16.2 and 0.95 %",
                shown("lean-under-load", lean, AFR));
        assertEquals(
                "stays 8 % lean, AFR 13.8 for a target of 12.8, limit 13.5",
                shown("cap", "stays 8 % lean, lambda 0.94 for a target of 0.87, limit 0.92", AFR));
    }

    @Test
    void aFigureJustBeyondItsLimitStaysBeyondIt() {
        assertEquals("AFR 13.54, limit 13.5", shown("target-lean", "lambda 0.921, limit 0.92", AFR));
    }

    @Test
    void whatIsAboutTheScaleStays() {
        String scale = "Where the target is lambda 0.87, it reads 1.15";
        assertEquals(scale, shown("mixture-upside-down", scale, AFR));
    }

    @Test
    void anAfrIsThatOfTheUnroundedLambda() {
        String what = "Worst: lambda 1.12, limit 1.03";
        Caution caution = new Caution(
                "lean-under-load",
                Caution.Level.STOP,
                "title",
                what,
                "",
                new TreeSet<>(),
                List.of(new Caution.Moment(0, "a.csv", 1, 1, 1.1163, 5000, 80)));
        assertEquals(
                "Worst: AFR 16.4, limit 15.1", MixtureWords.in(caution, AFR).what());
        assertEquals("AFR 16.4", AFR.words(1.1163));
    }
}
