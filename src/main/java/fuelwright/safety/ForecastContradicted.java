package fuelwright.safety;

import fuelwright.estimate.Estimate;
import java.util.List;
import java.util.TreeSet;

/** Says that the rides contradict the bore forecast, so that it hardly counts: what was said of the bodies may be wrong. */
final class ForecastContradicted implements Rule {

    @Override
    public List<Caution> judge(Dossier d) {
        if (!d.file.estimate().map(Estimate::forecastContradicted).orElse(false)) {
            return List.of();
        }
        return List.of(new Caution(
                "forecast-contradicted",
                Caution.Level.CHECK,
                "The rides contradict the bore forecast",
                "What the rides read doesn't go with the forecast from what was said of the bodies, so little or nothing of it was used."
                        + " Where nobody rode the figures come from what was ridden alone",
                "Check the bores before and after, the number of bodies and the engine speeds on the stage Machine; if they are right, look for another change: injectors, fuel pressure, sensor, target",
                new TreeSet<>(),
                List.of()));
    }
}
