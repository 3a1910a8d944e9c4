package fuelwright.mixture;

/**
 * A fuel by its stoichiometric air–fuel ratio (kg of air for each kg of fuel). The ratios of pump fuels are usual trade figures; those
 * of pure substances follow from the formula (see the checks beside their tests).
 */
public enum Fuel {
    PETROL("petrol", 14.7),
    E5("E5", 14.4),
    E10("E10", 14.1),
    E85("E85", 9.8),
    ETHANOL("ethanol", 9.0),
    METHANOL("methanol", 6.47);

    private final String words;
    private final double stoichiometricRatio;

    Fuel(String words, double stoichiometricRatio) {
        this.words = words;
        this.stoichiometricRatio = stoichiometricRatio;
    }

    /** The name as files and screens write it. */
    public String words() {
        return words;
    }

    /** Kilograms of air for each kilogram of fuel at lambda 1. */
    public double stoichiometricRatio() {
        return stoichiometricRatio;
    }
}
