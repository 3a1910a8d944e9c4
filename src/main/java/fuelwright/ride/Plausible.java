package fuelwright.ride;

/** Canonical values that a role can't have become missing, counted and said: they are faults of the log, not readings. */
final class Plausible {

    private Plausible() {}

    static void dropImpossible(Draft draft, Channels channels) {
        double[] range = range(draft.role);
        if (range.length == 0) {
            return;
        }
        int dropped = 0;
        double example = 0;
        double[] values = draft.values;
        for (int i = 0; i < values.length; i++) {
            if (values[i] < range[0] || values[i] > range[1]) {
                example = dropped == 0 ? values[i] : example;
                dropped++;
                values[i] = Double.NaN;
            }
        }
        if (dropped > 0) {
            String what = dropped + (dropped == 1 ? " value" : " values") + " that " + draft.role.words()
                    + " can't have (such as " + Figures.plain(example) + ") taken as missing";
            draft.say(what);
            channels.warn(draft, what, "check the column's role and unit if they are many");
        }
    }

    /** Lowest and highest possible canonical value; temperatures, trims and ignition by the ranges of SAE J1979. */
    static double[] range(Role role) {
        return switch (role) {
            case ENGINE_SPEED -> new double[] {0, 30_000};
            case THROTTLE -> new double[] {-20, 120};
            case MANIFOLD_PRESSURE -> new double[] {-115, 600};
            case LAMBDA, AFR, EQUIVALENCE_RATIO, WIDEBAND_VOLTS -> new double[] {0.3, 50};
            case COMMANDED_LAMBDA -> new double[] {0.3, 2.5};
            case SHORT_TRIM, LONG_TRIM -> new double[] {-100, 100};
            case INJECTOR_PULSE -> new double[] {0, 0.2};
            case COOLANT, INTAKE_AIR -> new double[] {-60, 250};
            case EXHAUST_TEMPERATURE -> new double[] {-60, 1500};
            case BAROMETER -> new double[] {30, 120};
            case BATTERY -> new double[] {0, 60};
            case ROAD_SPEED -> new double[] {-5, 500};
            case IGNITION -> new double[] {-90, 90};
            default -> new double[0];
        };
    }
}
