package fuelwright.power;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BreathingTest {

    private static final Axis SPEED = new Axis(Axis.Kind.ENGINE_SPEED, 2000, 10000);
    private static final Axis LOAD = new Axis(Axis.Kind.MANIFOLD_PRESSURE, 50, 100);

    @Test
    void fuelTimesLambdaIsAir() {
        Table before = table(Quantity.INJECTOR_PULSE, 3, 4, 5, 6);
        Table after = table(Quantity.INJECTOR_PULSE, 3, 5, 5, 8.5);
        Table same = table(Quantity.LAMBDA, 1, 1, 0.9, 0.9);
        Table richer = table(Quantity.LAMBDA, 1, 1, 0.9, 0.81);
        Breathing b = Breathing.of(before, Optional.of(same), after, Optional.of(richer), 1)
                .orElseThrow();
        assertEquals(0, b.gainPercent(0), 1e-9);
        assertEquals(100 * (4 / 3.0 - 1), b.gainPercent(1), 1e-9, "the dead time delivers nothing");
        assertEquals(100 * (7.5 * 0.81 / (5 * 0.9) - 1), b.gainPercent(3), 1e-9, "fuel that enriches isn't air");
        assertEquals(Breathing.Amount.RELATIVE, b.amount());
        assertEquals(100, b.before(3).getAsDouble(), 1e-9, "most air before");
        assertEquals(100 * 7.5 * 0.81 / (5 * 0.9), b.after(3).getAsDouble(), 1e-9);
    }

    /** 600 cm³, efficiency 90 %, 100 kPa, 25 °C: 52.580 g/s at 10 000 rpm, from the gas law. */
    @Test
    void efficiencyIsAirInGramsByTheGasLaw() {
        Table before = table(Quantity.VOLUMETRIC_EFFICIENCY, 60, 70, 80, 80);
        Table after = table(Quantity.VOLUMETRIC_EFFICIENCY, 60, 70, 80, 90);
        Breathing b = Breathing.of(before, Optional.empty(), after, Optional.empty(), 0)
                .orElseThrow();
        assertEquals(12.5, b.gainPercent(3), 1e-9);
        double mg = b.airMgPerCycle(3, b.after(3).getAsDouble(), 600, 101, 25);
        assertEquals(52.580, mg / 1000 * 10000 / 120, 0.001);
    }

    /**
     * J. B. Heywood, Internal Combustion Engine Fundamentals (1988), section 2.10, value from memory: volumetric efficiency is 2·m/(ρ·V·N), m the air
     * flow, ρ the density of the air that is drawn from, V the displacement, N the revolutions a second of a four-stroke.
     */
    @Test
    void anEfficiencyComesBackByTheHandbooksDefinition() {
        Table table = table(Quantity.VOLUMETRIC_EFFICIENCY, 31, 74, 83.5, 96);
        Breathing b = Breathing.of(table, Optional.empty(), table, Optional.empty(), 0)
                .orElseThrow();
        double displacementM3 = 720e-6;
        for (int cell = 0; cell < table.cells(); cell++) {
            double revolutionsPerS = table.speedAt(cell) / 60;
            double flowKgPerS =
                    b.airMgPerCycle(cell, b.after(cell).getAsDouble(), 720, 98, 20) * 1e-6 * revolutionsPerS / 2;
            double densityKgPerM3 = table.loadAt(cell) * 1000 / (287.05 * 293.15);
            assertEquals(
                    table.at(cell) / 100,
                    2 * flowKgPerS / (densityKgPerM3 * displacementM3 * revolutionsPerS),
                    1e-4,
                    "related to the manifold's air");
        }
    }

    /** ISO 2533:1975, Standard Atmosphere: 1.225 kg/m³ at sea level, 15 °C and 101.325 kPa. */
    @Test
    void aLitreFullOfStandardAirWeighsWhatTheStandardSays() {
        Axis throttle = new Axis(Axis.Kind.THROTTLE, 0, 100);
        Table full = Table.of(Quantity.VOLUMETRIC_EFFICIENCY, SPEED, throttle, new double[] {100, 100, 100, 100});
        Breathing b =
                Breathing.of(full, Optional.empty(), full, Optional.empty(), 0).orElseThrow();
        assertEquals(1225.0, b.airMgPerCycle(3, 100, 1000, 101.325, 15), 0.1);
    }

    @Test
    void tablesThatDontMatchGiveNothing() {
        Table pulse = table(Quantity.INJECTOR_PULSE, 3, 4, 5, 6);
        Table efficiency = table(Quantity.VOLUMETRIC_EFFICIENCY, 60, 70, 80, 80);
        assertTrue(Breathing.of(pulse, Optional.empty(), efficiency, Optional.empty(), 0)
                .isEmpty());
    }

    private static Table table(Quantity quantity, double... values) {
        return Table.of(quantity, SPEED, LOAD, values);
    }
}
