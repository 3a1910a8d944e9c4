package fuelwright.safety;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FuelTableKindTest {

    /** Straight from the first load to the last. */
    private static Optional<String> doubt(Quantity quantity, Axis load, double first, double last) {
        Table table = PlantedCase.table(quantity, load, c -> {
            double share = (double) (c / PlantedCase.SPEED.size()) / (load.size() - 1);
            return first + share * (last - first);
        });
        return FuelTableKind.doubt(table);
    }

    private static String said(Quantity quantity, double first, double last) {
        return doubt(quantity, PlantedCase.THROTTLE, first, last).orElseThrow();
    }

    @Test
    void anAfrTableTakenAsEfficiencyIsCalledAfr() {
        String said = said(Quantity.VOLUMETRIC_EFFICIENCY, 14.4, 12.8);
        assertTrue(
                said.startsWith("is taken as volumetric efficiency, %, and its figures lie from 12.8 to 14.4"), said);
        assertTrue(said.contains("looks like AFR"), said);
    }

    @Test
    void pulsesTakenAsEfficiencyAreCalledPulses() {
        String said = said(Quantity.VOLUMETRIC_EFFICIENCY, 0.67, 8.17);
        assertTrue(said.contains("from 0.67 to 8.17") && said.contains("looks like injector pulses, ms"), said);
    }

    @Test
    void lambdaTakenAsEfficiencyIsCalledLambda() {
        assertTrue(said(Quantity.VOLUMETRIC_EFFICIENCY, 1.0, 0.87).contains("looks like lambda"));
    }

    @Test
    void efficiencyTakenAsPulsesIsCalledEfficiencyAndAfrAfr() {
        assertTrue(said(Quantity.INJECTOR_PULSE, 20, 95).contains("looks like volumetric efficiency"));
        assertTrue(said(Quantity.INJECTOR_PULSE, 14.7, 12.5).contains("looks like AFR"));
        assertTrue(said(Quantity.MULTIPLIER, 14.7, 12.5).contains("looks like AFR"));
        assertTrue(said(Quantity.FUEL_TRIM, 60, 95).contains("volumetric efficiency"));
    }

    @Test
    void efficiencyThatFallsAsTheThrottleOpensIsAskedAboutByPressureItIsNot() {
        assertTrue(said(Quantity.VOLUMETRIC_EFFICIENCY, 90, 60).contains("fall as the throttle opens"));
        assertEquals(Optional.empty(), doubt(Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.PRESSURE, 90, 60));
    }

    @Test
    void usualTablesAreNotAskedAbout() {
        assertEquals(Optional.empty(), doubt(Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, 4, 40));
        assertEquals(Optional.empty(), doubt(Quantity.VOLUMETRIC_EFFICIENCY, PlantedCase.THROTTLE, 4, 115));
        assertEquals(Optional.empty(), doubt(Quantity.INJECTOR_PULSE, PlantedCase.THROTTLE, 0.67, 8.17));
        assertEquals(Optional.empty(), doubt(Quantity.INJECTOR_PULSE, PlantedCase.THROTTLE, 9, 18), "large injectors");
        assertEquals(Optional.empty(), doubt(Quantity.FUEL_TRIM, PlantedCase.THROTTLE, -12, 18));
        assertEquals(Optional.empty(), doubt(Quantity.FUEL_TRIM, PlantedCase.THROTTLE, 12, 14));
        assertEquals(Optional.empty(), doubt(Quantity.MULTIPLIER, PlantedCase.THROTTLE, 0.9, 1.2));
    }
}
