package fuelwright.simulated;

/** The air of the day. */
public record Ambient(double pressurePa, double temperatureK) {

    public static final Ambient FAIR = new Ambient(101325, 293.15);

    double densityKgPerM3() {
        return pressurePa / (Orifice.GAS_CONSTANT * temperatureK);
    }
}
