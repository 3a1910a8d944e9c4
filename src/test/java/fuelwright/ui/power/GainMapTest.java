package fuelwright.ui.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.CellNeed;
import fuelwright.power.Breathing;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.theme.Theme;
import fuelwright.unit.Units;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

class GainMapTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 3000, 6000);
    private static final Axis THROTTLE = new Axis(Axis.Kind.THROTTLE, 50, 100);

    private static Breathing gain(Quantity quantity, double before, double now) {
        CellNeed known = new CellNeed(0, 0.5, 20);
        return Breathing.measured(
                        table(quantity, before),
                        table(quantity, now),
                        Optional.empty(),
                        0,
                        List.of(known, new CellNeed(12, 5, 2.9), known, known))
                .orElseThrow();
    }

    private static Table table(Quantity quantity, double figure) {
        return Table.of(quantity, SPEED, THROTTLE, new double[] {figure, figure, figure, figure});
    }

    private static HeatCell cell(Breathing gain, GainMap.Shown shown, int cell) {
        return GainMap.of(gain, shown, OptionalDouble.of(600), Set.of(2), Theme.LIGHT.palette(), Units.CANONICAL)
                .map()
                .cells()
                .get(cell);
    }

    @Test
    void aCellWithTooFewReadingsIsEmptyInEveryMap() {
        for (GainMap.Shown shown : GainMap.Shown.values()) {
            HeatCell cell = cell(gain(Quantity.VOLUMETRIC_EFFICIENCY, 80, 90), shown, 1);
            assertEquals("", cell.figure());
            assertTrue(cell.words().contains("not known"), cell.words());
        }
    }

    @Test
    void onlyMeasuredCellsAreBold() {
        CellNeed measured = new CellNeed(0, 0.5, 20);
        CellNeed thin = new CellNeed(0, 0.5, 9);
        Breathing gain = Breathing.measured(
                        table(Quantity.VOLUMETRIC_EFFICIENCY, 80),
                        table(Quantity.VOLUMETRIC_EFFICIENCY, 90),
                        Optional.empty(),
                        0,
                        List.of(measured, thin, measured, thin))
                .orElseThrow();
        assertEquals(HeatCell.Weight.STRONG, cell(gain, GainMap.Shown.GAIN, 0).weight());
        assertEquals(HeatCell.Weight.NORMAL, cell(gain, GainMap.Shown.GAIN, 1).weight());
    }

    @Test
    void differenceBeforeAndNowAreShownAndAStopIsFramed() {
        Breathing gain = gain(Quantity.VOLUMETRIC_EFFICIENCY, 80, 90);
        HeatCell change = cell(gain, GainMap.Shown.GAIN, 0);
        assertEquals("+12.5", change.figure());
        assertTrue(change.words().endsWith("From 80.0\u00a0% to 90.0\u00a0%."), change.words());
        assertFalse(change.stop());
        assertTrue(cell(gain, GainMap.Shown.GAIN, 2).stop());
        assertEquals("80.0", cell(gain, GainMap.Shown.BEFORE, 0).figure());
        assertEquals("90.0", cell(gain, GainMap.Shown.AFTER, 0).figure());
    }

    /** 600 cm³, 90 %, 101.325 kPa, 25 °C: 639.3 mg by the gas law with R = 287.05 J/(kg·K), from first principles. */
    @Test
    void theAirThatAnEfficiencyStandsForIsSaidWithItsReference() {
        HeatCell now = cell(gain(Quantity.VOLUMETRIC_EFFICIENCY, 80, 90), GainMap.Shown.AFTER, 0);
        assertTrue(now.words().contains("About 639 mg"), now.words());
        assertTrue(now.words().contains("25\u00a0°C"), now.words());
    }

    @Test
    void aTrimTellsNoAmount() {
        Breathing gain = gain(Quantity.FUEL_TRIM, 0, 10);
        assertEquals("+10.0", cell(gain, GainMap.Shown.GAIN, 0).figure());
        assertEquals("", cell(gain, GainMap.Shown.BEFORE, 0).figure());
    }
}
