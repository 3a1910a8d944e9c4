package fuelwright.ui.session;

import fuelwright.estimate.Standing;
import fuelwright.handover.CellLook;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;

/** A cell's standing in words, with the figures that it rests on. */
public final class StandingWords {

    private StandingWords() {}

    /** A sentence that names what the cell lacks. */
    public static String of(double independentReadings, double uncertaintyPercent) {
        String readings = readings(independentReadings);
        String uncertainty = Figures.plain(
                uncertaintyPercent, Math.abs(uncertaintyPercent - Standing.MEASURED_PERCENT) < 0.05 ? 2 : 1);
        switch (Standing.of(independentReadings, uncertaintyPercent)) {
            case MEASURED:
                return Words.of("standing.measured", readings, uncertainty);
            case THIN:
                boolean few = independentReadings < Standing.MEASURED_READINGS;
                boolean wide = !(uncertaintyPercent <= Standing.MEASURED_PERCENT);
                return Words.of(
                        few && wide ? "standing.thin.both" : few ? "standing.thin.few" : "standing.thin.wide",
                        readings,
                        uncertainty);
            default:
                return Words.of(independentReadings > 0 ? "standing.inferred.few" : "standing.inferred", readings);
        }
    }

    /** A number of independent readings, never rounded up over what a standing asks for. */
    public static String readings(double independentReadings) {
        return CellLook.readings(independentReadings);
    }
}
