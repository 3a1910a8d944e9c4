package fuelwright.ui.machine;

import fuelwright.airflow.BoreForecast;
import fuelwright.airflow.Machine;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.plot.Curves;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The bore forecast as curves over throttle and as a map, in % of air for each cycle. Pure; takes some tens of
 * milliseconds, so it is made off the window's thread.
 *
 * @param forecast what is drawn
 * @param topRpm the highest engine speed drawn
 * @param range ±% of the map's colours
 * @param words the bold curve in words
 */
record BoreForecastPicture(BoreForecast forecast, double topRpm, Curves curves, HeatMap map, int range, String words) {

    private static final int COLUMNS = 7;
    private static final double FIRST_RPM = 1000;
    private static final double[] THROTTLES = {0, 3, 6, 10, 15, 25, 40, 60, 80, 100};
    private static final double USUAL_TOP_RPM = 8000;
    private static final double LEAST_RPM = 1500;
    private static final int CURVES = 5;
    private static final double UNSURE_PERCENT = 5;
    private static final double TINT = 0.65;

    /**
     * Empty where the machine doesn't allow a forecast.
     */
    static Optional<BoreForecastPicture> of(Machine machine, Palette palette) {
        return BoreForecast.of(machine).map(f -> new Maker(f, machine, axes(top(machine)), palette).make());
    }

    /** Between what and what the air changes at that throttle, over all engine speeds drawn, a sentence. */
    String airWords(double throttle) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < COLUMNS; i++) {
            double rpm = FIRST_RPM + i * (topRpm - FIRST_RPM) / (COLUMNS - 1);
            double percent = 100 * Math.expm1(forecast.logFactor(rpm, throttle));
            least = Math.min(least, percent);
            most = Math.max(most, percent);
        }
        String low = Figures.signed(least, 0);
        String high = Figures.signed(most, 0);
        return low.equals(high) ? Words.of("machine.bores.air.one", high) : Words.of("machine.bores.air", low, high);
    }

    private static double top(Machine machine) {
        return Math.max(LEAST_RPM * 2, machine.redlineRpm().orElse(USUAL_TOP_RPM));
    }

    /** Few enough cells that their figures can be read beside the curves. */
    private static Table axes(double topRpm) {
        double[] speeds = new double[COLUMNS];
        for (int i = 0; i < COLUMNS; i++) {
            speeds[i] = 100 * Math.rint((FIRST_RPM + i * (topRpm - FIRST_RPM) / (COLUMNS - 1)) / 100);
        }
        return Table.of(
                Quantity.CHANGE,
                new Axis(Axis.Kind.ENGINE_SPEED, speeds),
                new Axis(Axis.Kind.THROTTLE, THROTTLES),
                new double[COLUMNS * THROTTLES.length]);
    }

    private record Maker(BoreForecast forecast, Machine machine, Table axes, Palette palette) {

        BoreForecastPicture make() {
            double most = 0;
            double[] change = new double[axes.cells()];
            for (int cell = 0; cell < change.length; cell++) {
                change[cell] = percent(axes.speedAt(cell), axes.loadAt(cell));
                most = Math.max(most, Math.abs(change[cell]));
            }
            int range = most <= 10 ? 10 : most <= 20 ? 20 : 40;
            Curves curves = curves();
            Curves.Line bold = curves.lines().get(CURVES / 2);
            String words = Words.of(
                    "machine.forecast.words",
                    bold.name(),
                    Figures.signed(bold.ys().get(0), 1),
                    Figures.shortest(curves.xs().get(0)),
                    Figures.signed(bold.ys().get(bold.ys().size() - 1), 1));
            return new BoreForecastPicture(forecast, top(machine), curves, map(change, range), range, words);
        }

        private double percent(double rpm, double throttle) {
            return 100 * Math.expm1(forecast.logFactor(rpm, throttle));
        }

        private HeatMap map(double[] change, int range) {
            return TableWords.map(axes, cell -> {
                double factor = 1 + change[cell] / 100;
                double doubt = 100 * factor * forecast.logUncertainty(axes.speedAt(cell), axes.loadAt(cell));
                // What may be either way must not look like a cell that needs no change.
                boolean open = Math.abs(change[cell]) < 0.5 && doubt >= UNSURE_PERCENT;
                String figure = open ? "?" : Figures.signed(change[cell], 0);
                return new HeatCell(
                        figure,
                        Figures.plusMinus(doubt, 0),
                        Colours.mix(palette.surface(), palette.diverging().at(change[cell] / range), TINT),
                        HeatCell.Weight.SMALL,
                        true,
                        false,
                        HeatCell.Mark.NONE,
                        false,
                        Words.of(
                                "machine.forecast.cell", TableWords.cell(axes, cell), figure, Figures.plain(doubt, 0)));
            });
        }

        private Curves curves() {
            double top = top(machine);
            List<Double> xs = new ArrayList<>();
            for (double throttle = 0; throttle <= 100; throttle += throttle < 20 ? 1 : 4) {
                xs.add(throttle);
            }
            List<Curves.Line> lines = new ArrayList<>();
            for (int i = 0; i < CURVES; i++) {
                double rpm = 100 * Math.rint((LEAST_RPM + i * (top - LEAST_RPM) / (CURVES - 1)) / 100);
                lines.add(new Curves.Line(
                        Figures.plain(rpm, 0),
                        xs.stream().map(t -> percent(rpm, t)).toList(),
                        i == CURVES / 2 ? Curves.Weight.BOLD : Curves.Weight.CHOSEN));
            }
            return new Curves(xs, lines, Words.of("machine.forecast.x"), Words.of("machine.forecast.y"), List.of());
        }
    }
}
