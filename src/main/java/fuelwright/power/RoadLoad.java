package fuelwright.power;

import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.List;

/**
 * What a road pull is worked out with: P = v·(m_eff·a + m·g·crr + ½·ρ·cdA·v²), on a level road without wind.
 *
 * @param massKg machine, rider and fuel, above 0
 * @param rotatingShare wheels, crank and clutch as a share of the mass, at least 0: m_eff = m·(1 + share)
 * @param rollingCoefficient crr, at least 0
 * @param dragAreaM2 cdA, m², at least 0
 * @param airDensityKgPerM3 ρ, above 0
 */
public record RoadLoad(
        double massKg, double rotatingShare, double rollingCoefficient, double dragAreaM2, double airDensityKgPerM3) {

    /** Common practice for a solo machine with an upright rider, no source. */
    public static final double USUAL_ROLLING = 0.018;

    public static final double USUAL_DRAG_AREA_M2 = 0.55;
    public static final double USUAL_ROTATING = 0.06;
    public static final double USUAL_DENSITY = 1.2;

    private static final double GRAVITY = 9.80665;

    public RoadLoad {
        if (!(massKg > 0
                && rotatingShare >= 0
                && rollingCoefficient >= 0
                && dragAreaM2 >= 0
                && airDensityKgPerM3 > 0)) {
            throw new IllegalArgumentException("mass " + massKg + ", rotating " + rotatingShare + ", rolling "
                    + rollingCoefficient + ", drag " + dragAreaM2 + ", density " + airDensityKgPerM3
                    + " must be a mass and density above 0 and the others at least 0");
        }
    }

    /** The usual figures around a mass. */
    public static RoadLoad usual(double massKg) {
        return new RoadLoad(massKg, USUAL_ROTATING, USUAL_ROLLING, USUAL_DRAG_AREA_M2, USUAL_DENSITY);
    }

    /** Power at the wheel, kW, at a speed (m/s) and acceleration (m/s²). */
    double powerKw(double speedMPerS, double accelerationMPerS2) {
        double force = effectiveMassKg() * accelerationMPerS2
                + massKg * GRAVITY * rollingCoefficient
                + 0.5 * airDensityKgPerM3 * dragAreaM2 * speedMPerS * speedMPerS;
        return speedMPerS * force / 1000;
    }

    double effectiveMassKg() {
        return massKg * (1 + rotatingShare);
    }

    /** The assumptions as sentences. */
    List<Sentence> words() {
        return List.of(Sentence.of(
                "assumed: %s, %.0f %% more for what rotates, rolling resistance %.3f, drag area %s, air %s, level road,"
                        + " no wind; power at the wheel",
                Measured.of(massKg, Unit.KILOGRAM, 0),
                100 * rotatingShare,
                rollingCoefficient,
                Measured.of(dragAreaM2, Unit.SQUARE_METRE, 2),
                Measured.of(airDensityKgPerM3, Unit.KILOGRAM_PER_CUBIC_METRE, 3)));
    }
}
