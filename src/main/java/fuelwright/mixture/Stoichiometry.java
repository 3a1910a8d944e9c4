package fuelwright.mixture;

import java.util.List;

/**
 * Air that a fuel needs to burn exactly. For CₓHᵧO_z, by mass:
 *
 * <pre>ratio = (x + y/4 − z/2)·(M_air/x_O2) / (12.011·x + 1.008·y + 15.999·z)</pre>
 *
 * with M_air = 28.9647 g/mol and 20.946 % oxygen in dry air. Derived from the balance CₓHᵧO_z + (x + y/4 − z/2) O₂ → x CO₂ + y/2 H₂O.
 * Blends go by mass of their parts, not by volume.
 */
public final class Stoichiometry {

    private static final double AIR_G_PER_MOL_OXYGEN = 28.9647 / 0.20946;
    private static final double CARBON = 12.011;
    private static final double HYDROGEN = 1.008;
    private static final double OXYGEN = 15.999;

    /**
     * One part of a blend.
     *
     * @param volumeShare its volume, in any unit that all parts share
     * @param densityKgPerM3 its density, kg/m³
     * @param ratio its stoichiometric air–fuel ratio by mass
     */
    public record Part(double volumeShare, double densityKgPerM3, double ratio) {

        public Part {
            if (!(volumeShare >= 0) || !(densityKgPerM3 > 0) || !(ratio > 0)) {
                throw new IllegalArgumentException("volumeShare " + volumeShare + " must be at least 0, densityKgPerM3 "
                        + densityKgPerM3 + " and ratio " + ratio + " above 0");
            }
        }
    }

    private Stoichiometry() {}

    /**
     * Kilograms of air for each kilogram of a fuel at lambda 1.
     *
     * @param carbon atoms of carbon in a molecule, or on average
     * @param hydrogen atoms of hydrogen
     * @param oxygen atoms of oxygen
     * @throws IllegalArgumentException if nothing of it burns
     */
    public static double ratio(double carbon, double hydrogen, double oxygen) {
        double oxygenNeeded = carbon + hydrogen / 4 - oxygen / 2;
        if (!(oxygenNeeded > 0) || carbon < 0 || hydrogen < 0 || oxygen < 0) {
            throw new IllegalArgumentException(
                    "carbon " + carbon + ", hydrogen " + hydrogen + ", oxygen " + oxygen + " is no fuel");
        }
        double mass = CARBON * carbon + HYDROGEN * hydrogen + OXYGEN * oxygen;
        return oxygenNeeded * AIR_G_PER_MOL_OXYGEN / mass;
    }

    /** The ratio of a blend: Σ mᵢ·ratioᵢ / Σ mᵢ with mᵢ = volume × density. */
    public static double blend(List<Part> parts) {
        double mass = 0;
        double air = 0;
        for (Part part : parts) {
            double m = part.volumeShare() * part.densityKgPerM3();
            mass += m;
            air += m * part.ratio();
        }
        if (!(mass > 0)) {
            throw new IllegalArgumentException("parts " + parts + " have no mass");
        }
        return air / mass;
    }
}
