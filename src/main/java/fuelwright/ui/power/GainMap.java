package fuelwright.ui.power;

import fuelwright.power.Breathing;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Measured;
import fuelwright.unit.Unit;
import fuelwright.unit.Units;
import fuelwright.work.JobsCompared;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.IntStream;
import javafx.scene.paint.Color;

/**
 * What a part gave, as a grid to be drawn: cells without readings are empty. Pure.
 *
 * @param map what is drawn
 * @param range ±% of a map of differences; 0 for one of amounts
 * @param most the greatest amount; 0 for a map of differences
 */
public record GainMap(HeatMap map, int range, double most) {

    /** What the cells show. */
    public enum Shown {
        GAIN,
        BEFORE,
        AFTER
    }

    /** Uncertainty at which a fill is palest, %. */
    private static final double VERY_UNSURE_PERCENT = 8;

    /** The air that a table by throttle is filled from, where nothing else is said (ISO 2533 at sea level, but 25 °C). */
    private static final double BAROMETER_KPA = 101.325;

    private static final double AIR_C = 25;

    /**
     * @param displacementCc cm³, for the mass of air that an efficiency stands for
     * @param stops cells that a Stop caution concerns: what looks like a gain there may be the old table's own hole
     */
    public static GainMap of(
            Breathing gain,
            Shown shown,
            OptionalDouble displacementCc,
            Set<Integer> stops,
            Palette palette,
            Units units) {
        if (shown == Shown.GAIN) {
            int range = range(IntStream.range(0, gain.cells())
                    .filter(gain::isKnown)
                    .mapToDouble(c -> Math.abs(gain.gainPercent(c)))
                    .max()
                    .orElse(0));
            return new GainMap(
                    TableWords.map(
                            gain.axes(),
                            c -> gain.isKnown(c)
                                    ? change(gain, c, range, stops.contains(c), palette)
                                    : nothing(gain, c, palette)),
                    range,
                    0);
        }
        double most = IntStream.range(0, gain.cells())
                .mapToDouble(
                        c -> Math.max(gain.before(c).orElse(0), gain.after(c).orElse(0)))
                .max()
                .orElse(1);
        return new GainMap(
                TableWords.map(gain.axes(), c -> {
                    OptionalDouble amount = shown == Shown.BEFORE ? gain.before(c) : gain.after(c);
                    return amount.isPresent()
                            ? amount(gain, c, amount.getAsDouble(), most, displacementCc, palette, units)
                            : nothing(gain, c, palette);
                }),
                0,
                most);
    }

    /** How much more one part gave than another, in points. */
    public static GainMap of(JobsCompared.Difference difference, Palette palette) {
        int range = range(difference.points().stream()
                .filter(p -> !p.isNaN())
                .mapToDouble(Math::abs)
                .max()
                .orElse(0));
        return new GainMap(
                TableWords.map(difference.axes(), c -> {
                    double points = difference.points().get(c);
                    String place = TableWords.cell(difference.axes(), c);
                    return Double.isNaN(points)
                            ? HeatCell.plain("", palette.surface(), Words.of("gain.cell.none", place))
                            : HeatCell.plain(
                                    Figures.signed(points, 1),
                                    palette.diverging().at(points / range),
                                    Words.of("gain.cell.points", place, Figures.signed(points, 1)));
                }),
                range,
                0);
    }

    private static int range(double most) {
        return most <= 10 ? 10 : most <= 20 ? 20 : 40;
    }

    private static HeatCell nothing(Breathing gain, int cell, Palette palette) {
        return HeatCell.plain("", palette.surface(), Words.of("gain.cell.none", TableWords.cell(gain.axes(), cell)));
    }

    private static HeatCell change(Breathing gain, int cell, int range, boolean stop, Palette palette) {
        double error = gain.gainErrorPercent(cell);
        double certainty = 1 - Math.min(1, error / VERY_UNSURE_PERCENT);
        Color full = palette.diverging().at(gain.gainPercent(cell) / range);
        String figure = Figures.signed(gain.gainPercent(cell), 1);
        return new HeatCell(
                figure,
                Figures.plusMinus(error, 1),
                Colours.mix(palette.surface(), full, 0.5 + 0.5 * certainty),
                gain.isMeasured(cell) ? HeatCell.Weight.STRONG : HeatCell.Weight.NORMAL,
                false,
                stop,
                HeatCell.Mark.NONE,
                false,
                Words.of("gain.cell", TableWords.cell(gain.axes(), cell), figure, Figures.plain(error, 1))
                        + amounts(gain, cell)
                                .map(a -> " " + Words.of("gain.cell.amounts", a[0], a[1]))
                                .orElse(""));
    }

    private static Optional<String[]> amounts(Breathing gain, int cell) {
        return gain.before(cell).isPresent() && gain.after(cell).isPresent()
                ? Optional.of(new String[] {
                    amount(gain, gain.before(cell).getAsDouble()),
                    amount(gain, gain.after(cell).getAsDouble())
                })
                : Optional.empty();
    }

    private static String amount(Breathing gain, double value) {
        return Figures.plain(value, 1) + (gain.amount() == Breathing.Amount.EFFICIENCY ? " %" : "");
    }

    private static HeatCell amount(
            Breathing gain,
            int cell,
            double value,
            double most,
            OptionalDouble displacementCc,
            Palette palette,
            Units units) {
        String figure = Figures.plain(value, 1);
        String words = Words.of("gain.cell.amount", TableWords.cell(gain.axes(), cell), amount(gain, value));
        boolean weighs = gain.amount() == Breathing.Amount.EFFICIENCY && displacementCc.isPresent();
        return HeatCell.plain(
                figure,
                palette.sequential().at(value / most),
                weighs
                        ? words + " "
                                + Words.of(
                                        "gain.cell.mass",
                                        Figures.plain(
                                                gain.airMgPerCycle(
                                                        cell,
                                                        value,
                                                        displacementCc.getAsDouble(),
                                                        BAROMETER_KPA,
                                                        AIR_C),
                                                0),
                                        units.words(Measured.of(AIR_C, Unit.CELSIUS, 0)),
                                        units.words(Measured.of(BAROMETER_KPA, Unit.KILOPASCAL, 1)))
                        : words);
    }
}
