package fuelwright.mixture;

/**
 * A dry exhaust gas analysis, by volume, and the lambda that it tells (Brettschneider 1979, in its usual form):
 *
 * <pre>
 *     CO2 + CO/2 + O2 + NO/2 + [Hcv/4 · 3.5/(3.5 + CO/CO2) − Ocv/2]·(CO2 + CO)
 * λ = ------------------------------------------------------------------------
 *                (1 + Hcv/4 − Ocv/2)·(CO2 + CO + 6·HC)
 * </pre>
 *
 * with Hcv and Ocv the fuel's atoms of hydrogen and oxygen for each of carbon. It doesn't see what a misfire leaves unburnt in a form
 * that the analyser misses.
 *
 * @param co2Percent carbon dioxide, %, above 0
 * @param coPercent carbon monoxide, %
 * @param o2Percent oxygen, %
 * @param noPercent nitric oxide, %
 * @param hcPpmHexane hydrocarbons as hexane, ppm
 */
public record ExhaustGas(double co2Percent, double coPercent, double o2Percent, double noPercent, double hcPpmHexane) {

    /** Usual petrol, hydrogen to carbon (common practice with this formula). */
    public static final double USUAL_HYDROGEN = 1.7261;

    /** Usual petrol, oxygen to carbon. */
    public static final double USUAL_OXYGEN = 0.0175;

    private static final double WATER_GAS = 3.5;
    private static final double CARBON_OF_HEXANE = 6;

    public ExhaustGas {
        if (!(co2Percent > 0) || !(coPercent >= 0) || !(o2Percent >= 0) || !(noPercent >= 0) || !(hcPpmHexane >= 0)) {
            throw new IllegalArgumentException("co2Percent " + co2Percent + " must be above 0, coPercent " + coPercent
                    + ", o2Percent " + o2Percent + ", noPercent " + noPercent + ", hcPpmHexane " + hcPpmHexane
                    + " at least 0");
        }
    }

    /** Lambda for usual petrol. */
    public double lambda() {
        return lambda(USUAL_HYDROGEN, USUAL_OXYGEN);
    }

    /**
     * Lambda for a fuel CH_hO_o.
     *
     * @param hydrogen atoms of hydrogen for each of carbon
     * @param oxygen atoms of oxygen for each of carbon
     */
    public double lambda(double hydrogen, double oxygen) {
        double carbonOxides = co2Percent + coPercent;
        double water = hydrogen / 4 * WATER_GAS / (WATER_GAS + coPercent / co2Percent);
        double found = co2Percent + coPercent / 2 + o2Percent + noPercent / 2 + (water - oxygen / 2) * carbonOxides;
        double needed = (1 + hydrogen / 4 - oxygen / 2) * (carbonOxides + CARBON_OF_HEXANE * hcPpmHexane * 1e-4);
        return found / needed;
    }
}
