package fuelwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.safety.Caution;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class AnswerTest {

    private static Caution lean(Caution.Level level, double worst, Integer... cells) {
        return new Caution(
                "lean-under-load",
                level,
                "Lean under load",
                "Worst: lambda " + worst,
                "Don't load the engine",
                new TreeSet<>(List.of(cells)),
                List.of(new Caution.Moment(0, "ride", 12, 1, worst, 4000, 60)));
    }

    private static Caution apart(int percent) {
        return new Caution(
                "sensors-apart",
                Caution.Level.CHECK,
                "Two sensors disagree",
                "In ride-1.csv one reads " + percent + " % leaner",
                "Swap them",
                new TreeSet<>(),
                List.of());
    }

    private static boolean holds(Caution then, Caution now) {
        return Answer.to(then, Answer.Kind.SEEN, "").holds(now);
    }

    @Test
    void anAnswerHoldsWhileTheCautionSaysAboutTheSame() {
        Caution then = lean(Caution.Level.CHECK, 0.98, 3, 4, 5);
        assertTrue(holds(then, then));
        assertTrue(holds(then, lean(Caution.Level.CHECK, 1.0, 4, 5)));
        assertTrue(holds(then, lean(Caution.Level.NOTE, 0.98, 3, 4, 5)));
        assertFalse(holds(then, lean(Caution.Level.STOP, 0.98, 3, 4, 5)), "graver");
        assertFalse(holds(then, lean(Caution.Level.CHECK, 1.05, 3, 4, 5)), "leaner");
        assertFalse(holds(then, lean(Caution.Level.CHECK, 0.98, 30, 31)), "somewhere else");
    }

    private static Caution fading(int times, double secondsEach, double speedRpm) {
        List<Caution.Moment> moments = java.util.stream.IntStream.range(0, times)
                .mapToObj(i -> new Caution.Moment(0, "ride", 12 * i, secondsEach, 1.02, speedRpm, 100))
                .toList();
        return new Caution(
                "fuel-supply-fading",
                Caution.Level.STOP,
                "Fuel fades under load",
                times + " times",
                "Check the pump",
                new TreeSet<>(List.of(5, 6)),
                moments);
    }

    @Test
    void moreOfTheSameIsAskedAgain() {
        assertTrue(holds(fading(4, 3, 6000), fading(5, 3, 6100)));
        assertTrue(holds(fading(4, 3, 6000), fading(2, 3, 6000)), "less of it");
        assertFalse(holds(fading(4, 3, 6000), fading(15, 3, 6000)), "more often");
        assertFalse(holds(fading(4, 3, 6000), fading(4, 9, 6000)), "longer");
        assertFalse(holds(fading(4, 3, 6000), fading(4, 3, 7200)), "worst elsewhere");
        assertFalse(
                holds(lean(Caution.Level.CHECK, 0.98, 3, 4, 5), lean(Caution.Level.CHECK, 0.98, 3, 4, 5, 6, 7)),
                "new cells");
    }

    @Test
    void withoutMomentsTheFiguresOfTheSentenceTell() {
        assertTrue(holds(apart(6), apart(7)));
        assertFalse(holds(apart(6), apart(15)));
    }

    @Test
    void whatWasAnsweredOfSomethingElseIsSaidAsBefore() {
        Answer answer = Answer.to(apart(6), Answer.Kind.SEEN, "");
        assertEquals("noted", answer.words(apart(6)));
        assertEquals("noted before; it says something else now", answer.words(apart(15)));
        assertTrue(answer.isFor(apart(15)));
    }

    @Test
    void anAnswerOfAnOlderFileHolds() {
        assertTrue(new Answer("sensors-apart", "Two sensors disagree", Answer.Kind.SEEN, "").holds(apart(15)));
    }
}
