package fuelwright.unit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;

class SentenceTest {

    private static final Sentence HOT = Sentence.of(
            "%s at %.0f rpm in %s; the limit is %s",
            Measured.of(931.4, Unit.CELSIUS, 0), 5000.0, "100 % of it.csv", Measured.of(930, Unit.CELSIUS, 0));

    @Test
    void aSentenceIsReadInCanonicalUnitsUnlessOthersAreAskedFor() {
        assertEquals("931 °C at 5000 rpm in 100 % of it.csv; the limit is 930 °C", HOT.toString());
        assertEquals(
                "<931.4> at 5000 rpm in 100 % of it.csv; the limit is <930.0>",
                HOT.in(figure -> "<" + figure.value() + ">"));
    }

    @Test
    void sentencesWithinSentencesKeepTheirFigures() {
        Sentence all =
                Sentence.joined(" 50 %, ", List.of(HOT, Sentence.text("100 %"))).then(HOT);
        assertEquals(HOT + " 50 %, 100 %" + HOT, all.toString());
        assertEquals(4, all.in(figure -> "§").chars().filter(c -> c == '§').count());
    }

    @Test
    void aFigureSaysItsUnitOnlyWhereItIsAsked() {
        assertEquals("lambda 0.98", Measured.of(0.98, Unit.LAMBDA, 2).canonical());
        assertEquals("0.98", Measured.of(0.98, Unit.LAMBDA, 2).alone().canonical());
        assertEquals("0.03 lambda", Measured.step(0.03, Unit.LAMBDA, 2).canonical());
        assertEquals("20 K", Measured.step(20, Unit.CELSIUS, 0).canonical());
        assertEquals("4 kPa", Measured.step(4, Unit.KILOPASCAL, 0).canonical());
        assertThrows(IllegalArgumentException.class, () -> Measured.of(1, Unit.VOLT, -4));
    }
}
