package fuelwright.simulated;

/**
 * What a parts change leaves as it is.
 *
 * @param bypassMm2 effective area of the idle bypass, all bodies together
 */
public record Engine(double displacementCc, int cylinders, double idleRpm, double redlineRpm, double bypassMm2) {

    /** Air that would fill all cylinders once at the given density, g. */
    double fullChargeG(Ambient ambient) {
        return displacementCc * 1e-6 * ambient.densityKgPerM3() * 1000;
    }
}
