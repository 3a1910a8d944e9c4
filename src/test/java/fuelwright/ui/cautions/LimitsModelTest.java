package fuelwright.ui.cautions;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.safety.Limit;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import org.junit.jupiter.api.Test;

class LimitsModelTest {

    private final LimitsModel model = new LimitsModel(new Session(new FixtureServices(), new SameThreadRunner()));

    @Test
    void everyFigureOfALineHasAsManyDecimals() {
        for (Limit limit : Limit.values()) {
            String[] bounds = model.bounds(limit).split(" to ");
            assertEquals(decimals(bounds[0]), decimals(bounds[1]), limit.key());
            assertEquals(decimals(bounds[0]), decimals(model.usual(limit)), limit.key());
            assertEquals(decimals(bounds[0]), decimals(model.text(limit)), limit.key());
        }
    }

    private static int decimals(String figure) {
        return figure.indexOf('.') < 0 ? 0 : figure.length() - figure.indexOf('.');
    }
}
