package fuelwright.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Says in sentences what was decided on the way to an estimate. */
final class EstimateWords {

    private EstimateWords() {}

    /** Noise of each ride, smoothness, and what the rides say of the forecast. */
    static List<String> remarks(
            List<Readings> readings, List<NoiseModel> noise, Smoothness smoothness, Crowding crowding, Prior prior) {
        List<String> remarks = new ArrayList<>();
        for (int i = 0; i < readings.size(); i++) {
            NoiseModel model = noise.get(i);
            remarks.add(String.format(
                    Locale.ROOT,
                    "%s: a reading is good to ± %.1f %% when nothing moves; readings within %.2f s of each other count as one",
                    readings.get(i).screened.ride().name(),
                    100 * model.still(),
                    model.correlationS()));
        }
        remarks.add(String.format(
                Locale.ROOT,
                "A cell departs from its surroundings by ± %.1f %%, and the fuel needed from a straight line between cells by ± %.1f %%",
                100 * smoothness.own(),
                100 * crowding.misfit()));
        if (prior.isForecast()) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "The rides bear out %.0f %% of the bore forecast, with %.1f times its stated uncertainty",
                    100 * smoothness.trust(),
                    smoothness.spread()));
        }
        return remarks;
    }

    /** Delay and lag that were used, and whether the rides could tell. */
    static SensorFit sensorFit(SensorModel model, Posterior posterior) {
        double[] error = posterior.nuisanceUncertainties();
        double delayError =
                Math.hypot(error[Nuisance.FIXED_DELAY.ordinal()], 120.0 / 4000 * error[Nuisance.CYCLES.ordinal()]);
        double lagError = error[Nuisance.LAG.ordinal()];
        boolean identified = lagError < 0.5 * Nuisance.LAG.spread;
        String words = String.format(
                Locale.ROOT,
                identified
                        ? "delay %.0f ms at 4000 rpm and 15 g/s, sensor lag %.0f ms ± %.0f, found from the rides"
                        : "delay %.0f ms at 4000 rpm and 15 g/s, sensor lag %.0f ms: mostly the usual figures, these rides can't tell",
                1000 * model.delayS(4000, 15),
                1000 * model.lagS(),
                1000 * lagError);
        return new SensorFit(model, identified, delayError, lagError, words);
    }
}
