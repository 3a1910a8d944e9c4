package fuelwright.ui.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.ui.theme.Measures;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import org.junit.jupiter.api.Test;

class ShownInTest {

    private static final ShownIn METRIC = new ShownIn(Measures.METRIC, new Mixture(false, 14.7, 14.7));
    private static final ShownIn IMPERIAL = new ShownIn(Measures.IMPERIAL, new Mixture(true, 14.7, 14.7));

    private static Measured lambda(double value, int decimals) {
        return Measured.of(value, Unit.LAMBDA, decimals);
    }

    @Test
    void aSentenceIsReadInWhatWasChosen() {
        Sentence said = Sentence.of(
                "%s, limit %s, at %s and %s",
                lambda(1.1163, 2),
                lambda(1.03, 2).alone(),
                Measured.of(70, Unit.CELSIUS, 0),
                Measured.of(98, Unit.KILOPASCAL, 0));
        assertEquals("lambda 1.12, limit 1.03, at 70 °C and 98 kPa", said.in(METRIC));
        assertEquals("AFR 16.4, limit 15.1, at 158 °F and 14.2 psi", said.in(IMPERIAL), "of the lambda unrounded");
    }

    /** 20 °C apart are 36 °F apart; 4 kPa are 0.58 psi (NIST SP 811). */
    @Test
    void aStepIsNoPlaceOnTheScale() {
        assertEquals("20 K", METRIC.words(Measured.step(20, Unit.CELSIUS, 0)));
        assertEquals("36 °F", IMPERIAL.words(Measured.step(20, Unit.CELSIUS, 0)));
        assertEquals("0.6 psi", IMPERIAL.words(Measured.step(4, Unit.KILOPASCAL, 0)));
        assertEquals("0.44 AFR", IMPERIAL.words(Measured.step(0.03, Unit.LAMBDA, 2)));
    }

    @Test
    void aFigureJustBeyondItsLimitStaysBeyondIt() {
        assertEquals("AFR 13.54", IMPERIAL.words(lambda(0.921, 3)));
        assertEquals("AFR 13.5", IMPERIAL.words(lambda(0.92, 2)));
    }

    @Test
    void whatAFieldShowsIsWhatWasMeantWhenItComesBack() {
        Measured pressure = Measured.of(98, Unit.KILOPASCAL, 0);
        assertEquals("14.2", IMPERIAL.field(pressure));
        assertEquals(98, IMPERIAL.typed(14.2, pressure, 98));
        assertEquals(97.9056, IMPERIAL.typed(14.2, pressure), 1e-3);
        assertEquals(14.2, METRIC.typed(14.2, pressure, 98));
    }

    @Test
    void whatWasTypedInAnyUnitIsShownAsItWasTyped() {
        for (double fahrenheit : new double[] {-40, 68, 165, 203}) {
            Measured like = Measured.of(0, Unit.CELSIUS, 0);
            double celsius = IMPERIAL.typed(fahrenheit, like);
            assertEquals(
                    fuelwright.ui.theme.Figures.shortest(fahrenheit),
                    IMPERIAL.field(like.with(celsius)),
                    "°C " + celsius);
        }
    }
}
