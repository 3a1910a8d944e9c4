package fuelwright.estimate;

import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Says in sentences what was decided on the way to an estimate. */
final class EstimateWords {

    /** Where the delay is told, rpm and g/s. */
    private static final double SPEED_RPM = DelayProfile.SPEED_RPM;

    private static final double FLOW_G_PER_S = DelayProfile.FLOW_G_PER_S;
    /** Share of the usual uncertainty below which the rides have told. */
    private static final double FOUND = 0.5;
    /** Unevenness of a table below which it isn't spoken of. */
    private static final double WORTH_SAYING = 0.003;

    private EstimateWords() {}

    /** Noise of each ride, smoothness, and what the rides say of the forecast. */
    static List<String> remarks(
            List<Readings> readings,
            List<NoiseModel> noise,
            Smoothness smoothness,
            Crowding crowding,
            Prior prior,
            Posterior posterior) {
        List<String> remarks = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            NoiseModel model = noise.get(i);
            remarks.add(String.format(
                    Locale.ROOT,
                    "%s: a reading is good to ±%.1f %% when nothing moves; readings within %.2f s of each other count as one",
                    readings.get(i).screened.ride().name(),
                    100 * model.still(),
                    model.correlationS()));
        }
        remarks.add(String.format(
                Locale.ROOT,
                "A cell departs from its surroundings by ±%.1f %%, and the fuel needed from a straight line between cells by ±%.1f %%",
                100 * smoothness.own(),
                100 * crowding.misfit()));
        if (prior.isForecast()) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "The rides bear out %.0f %% of the bore forecast, with %.1f times its stated uncertainty",
                    100 * smoothness.trust(),
                    smoothness.spread()));
        }
        if (prior.unevenness() > WORTH_SAYING) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "In the old table cells stand out from their neighbours by ±%.1f %%: %.0f %% ±%.0f of it is the table's own fault, so that much is smoothed away",
                    100 * prior.unevenness(),
                    100 * Prior.UNEVEN_FAULT * posterior.common(),
                    100 * Prior.UNEVEN_FAULT * posterior.commonUncertainty()));
        }
        return remarks;
    }

    /** Delay and lag that were used, and for each of them whether the rides could tell. */
    static SensorFit sensorFit(SensorModel model, Posterior posterior) {
        double[] delay = new double[Nuisance.COUNT];
        delay[Nuisance.FIXED_DELAY.ordinal()] = 1;
        delay[Nuisance.CYCLES.ordinal()] = 120 / SPEED_RPM;
        delay[Nuisance.GAS.ordinal()] = 1 / FLOW_G_PER_S;
        double delayError = posterior.uncertaintyOf(delay);
        double lagError = posterior.nuisanceUncertainties()[Nuisance.LAG.ordinal()];
        boolean delayFound = delayError < FOUND * usual(delay);
        boolean lagFound = lagError < FOUND * Nuisance.LAG.spread;
        Sentence words = Sentence.of(
                "delay %.0f ms ±%.0f at %.0f rpm and %s%s, sensor lag %.0f ms ±%.0f, %s",
                1000 * model.delayS(SPEED_RPM, FLOW_G_PER_S),
                1000 * delayError,
                SPEED_RPM,
                Measured.of(FLOW_G_PER_S, Unit.GRAM_PER_SECOND, 0),
                delayFound == lagFound ? "" : ", " + origin(delayFound),
                1000 * model.lagS(),
                1000 * lagError,
                (delayFound == lagFound ? "both " : "") + origin(lagFound));
        return new SensorFit(model, lagFound, delayError, lagError, words);
    }

    private static String origin(boolean found) {
        return found ? "found from the rides" : "mostly as usual: these rides can't tell";
    }

    /** Standard deviation of a sum of nuisances before any ride. */
    private static double usual(double[] factors) {
        double sum = 0;
        for (Nuisance nuisance : Nuisance.values()) {
            sum += Math.pow(factors[nuisance.ordinal()] * nuisance.spread, 2);
        }
        return Math.sqrt(sum);
    }
}
