package fuelwright.airflow;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What a change of throttle bodies does to the air of each cycle at equal engine speed and throttle, from the bore alone: the intake
 * model ({@link IntakeModel}) solved for the old and the new body. At small openings the flow is choked and the answer is the ratio of
 * open areas, diluted by the idle bypass; near full throttle the engine and not the plate sets the flow, and it tends to 0.
 *
 * <p>The uncertainty isn't a curve somebody drew: each {@link ForecastUnknown} is varied over its range and the effects are added in
 * quadrature, with {@value #MODEL_ERROR} for the kind of model (a mean-value engine model is good to ±2 %: Hendricks and Sorenson,
 * American Control Conference 1990, known by its abstract). Below about 12–25 % opening that makes it wide. Immutable, thread-safe.
 */
public final class BoreForecast {

    /** Why the forecast leaves a table alone that is indexed by manifold pressure. */
    public static final String WHY_PRESSURE_TABLES_KEEP =
            "This table is indexed by manifold pressure: a bigger body lets the pressure rise sooner, so the engine moves to other cells,"
                    + " but the air of a cell stays nearly what it was; the bore alone asks for almost no change";

    /** Standard uncertainty of the kind of model, of a logarithm. */
    static final double MODEL_ERROR = 0.02;

    private static final double FLOW_STEP_RPM = 250;
    private static final int FLOW_SPEEDS = 65;
    private static final int FLOW_THROTTLES = 101;

    private final ForecastUnknown.Pair nominal;
    private final List<List<ForecastUnknown.Pair>> variants = new ArrayList<>();
    private final float[] airGPerS = new float[FLOW_SPEEDS * FLOW_THROTTLES];

    private BoreForecast(ForecastUnknown.Pair nominal) {
        this.nominal = nominal;
        for (ForecastUnknown unknown : ForecastUnknown.values()) {
            variants.add(List.of(unknown.at(nominal, -1), unknown.at(nominal, 1)));
        }
        for (int i = 0; i < FLOW_SPEEDS; i++) {
            for (int j = 0; j < FLOW_THROTTLES; j++) {
                airGPerS[i * FLOW_THROTTLES + j] =
                        (float) nominal.after().airGPerS(i * FLOW_STEP_RPM, j, Atmosphere.SEA_LEVEL_PRESSURE_PA);
            }
        }
    }

    /** Present where displacement, number of bodies and both bores are known. */
    public static Optional<BoreForecast> of(Machine machine) {
        if (!machine.hasBodyChange()) {
            return Optional.empty();
        }
        return Optional.of(new BoreForecast(new ForecastUnknown.Pair(
                BypassAir.intake(machine, machine.before().get()),
                BypassAir.intake(machine, machine.after().get()))));
    }

    /** Natural log of air per cycle after over before. */
    public double logFactor(double speedRpm, double throttlePercent) {
        return nominal.logFactor(speedRpm, throttlePercent);
    }

    /** Standard uncertainty of {@link #logFactor}. */
    public double logUncertainty(double speedRpm, double throttlePercent) {
        double variance = MODEL_ERROR * MODEL_ERROR;
        for (double part : doubts(speedRpm, throttlePercent)) {
            variance += part * part;
        }
        return Math.sqrt(variance);
    }

    /** What each unknown adds, in the order of {@link ForecastUnknown}. */
    private double[] doubts(double speedRpm, double throttlePercent) {
        double middle = logFactor(speedRpm, throttlePercent);
        double[] doubts = new double[variants.size()];
        for (int i = 0; i < doubts.length; i++) {
            double low = variants.get(i).get(0).logFactor(speedRpm, throttlePercent) - middle;
            double high = variants.get(i).get(1).logFactor(speedRpm, throttlePercent) - middle;
            doubts[i] = Math.max(Math.abs(low), Math.abs(high)) / Math.sqrt(3);
        }
        return doubts;
    }

    /** What the physics says of one place, for a person: areas, pressures, air, doubt and what most of the doubt comes from. */
    public String sentence(double speedRpm, double throttlePercent) {
        double[] doubts = doubts(speedRpm, throttlePercent);
        int largest = 0;
        for (int i = 1; i < doubts.length; i++) {
            largest = doubts[i] > doubts[largest] ? i : largest;
        }
        double factor = Math.exp(logFactor(speedRpm, throttlePercent));
        double uncertainty = logUncertainty(speedRpm, throttlePercent);
        return String.format(
                Locale.ROOT,
                "At %.0f rpm and %s %% throttle the plate opens %.1f mm² instead of %.1f mm² for each body; the pressure behind it"
                        + " becomes %.0f %% of the barometer instead of %.0f %%; so each cycle gets %+.1f %% air, ±%.1f %%, in"
                        + " doubt mostly for %s",
                speedRpm,
                new DecimalFormat("0.##", DecimalFormatSymbols.getInstance(Locale.ROOT)).format(throttlePercent),
                PlateArea.atThrottle(nominal.after().body(), throttlePercent),
                PlateArea.atThrottle(nominal.before().body(), throttlePercent),
                100 * nominal.after().pressureRatio(speedRpm, throttlePercent),
                100 * nominal.before().pressureRatio(speedRpm, throttlePercent),
                100 * (factor - 1),
                100 * factor * uncertainty,
                doubts[largest] > MODEL_ERROR ? ForecastUnknown.values()[largest].words() : "the kind of model");
    }

    /** Pressure behind the new body's plate over the ambient one, 0 to 1. */
    public double pressureRatio(double speedRpm, double throttlePercent) {
        return nominal.after().pressureRatio(speedRpm, throttlePercent);
    }

    /**
     * Air that the engine draws with the new bodies at sea level, g/s: from a grid worked out once, so that it can be asked for every
     * reading. Clamped to 0 … 16 000 rpm and 0 … 100 %.
     */
    public double air(double speedRpm, double throttlePercent) {
        if (Double.isNaN(speedRpm) || Double.isNaN(throttlePercent)) {
            return Double.NaN;
        }
        double p = Math.min(Math.max(speedRpm / FLOW_STEP_RPM, 0), FLOW_SPEEDS - 1.0);
        double q = Math.min(Math.max(throttlePercent, 0), FLOW_THROTTLES - 1.0);
        int i = Math.min((int) p, FLOW_SPEEDS - 2);
        int j = Math.min((int) q, FLOW_THROTTLES - 2);
        double f = p - i;
        double g = q - j;
        int at = i * FLOW_THROTTLES + j;
        return (1 - f) * ((1 - g) * airGPerS[at] + g * airGPerS[at + 1])
                + f * ((1 - g) * airGPerS[at + FLOW_THROTTLES] + g * airGPerS[at + FLOW_THROTTLES + 1]);
    }
}
