package fuelwright.ui.plot;

import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/**
 * One lane of a timeline.
 *
 * @param name what it shows
 * @param unit its unit
 * @param colour role of its colour
 * @param values the rows
 * @param target a second, thin line on the same scale
 * @param limit a third one, for what must not be passed; NaN where there is none
 * @param expected a fourth one, for what the values would have been; the hook for an expected mixture
 * @param low value at the lane's lower edge
 * @param high value at the lane's upper edge
 * @param decimals of a figure read off
 * @param height how tall it is, in shares
 */
public record Lane(
        String name,
        String unit,
        String colour,
        MinMaxPyramid values,
        Optional<MinMaxPyramid> target,
        Optional<MinMaxPyramid> limit,
        Optional<MinMaxPyramid> expected,
        double low,
        double high,
        int decimals,
        double height) {

    /** A lane whose edges are round figures that just hold the values (scaled). */
    public static Lane fitted(
            String name,
            String unit,
            String colour,
            int rows,
            IntToDoubleFunction values,
            Optional<IntToDoubleFunction> target,
            double lowest,
            double highest,
            int decimals,
            double scale) {
        MinMaxPyramid pyramid = new MinMaxPyramid(rows, row -> values.applyAsDouble(row) * scale);
        MinMaxPyramid.Extent all = pyramid.extent(0, rows);
        double low = all.isEmpty() ? lowest * scale : Math.max(lowest * scale, all.min());
        double high = all.isEmpty() ? highest * scale : Math.min(highest * scale, all.max());
        if (!(high > low)) {
            high = low + 1;
        }
        double step = step(high - low);
        return new Lane(
                name,
                unit,
                colour,
                pyramid,
                target.map(t -> new MinMaxPyramid(rows, row -> t.applyAsDouble(row) * scale)),
                Optional.empty(),
                Optional.empty(),
                Math.floor(low / step + 1e-9) * step,
                Math.ceil(high / step - 1e-9) * step,
                decimals,
                1);
    }

    /** 1, 2 or 5 times a power of ten, about a sixth of a span. */
    private static double step(double span) {
        double ten = Math.pow(10, Math.floor(Math.log10(span / 6)));
        double times = span / 6 / ten;
        return (times < 1.5 ? 1 : times < 3.5 ? 2 : times < 7.5 ? 5 : 10) * ten;
    }

    /** The same between other edges. */
    public Lane within(double from, double to) {
        return new Lane(name, unit, colour, values, target, limit, expected, from, to, decimals, height);
    }

    /** The same, so many times as tall. */
    public Lane tall(double times) {
        return new Lane(name, unit, colour, values, target, limit, expected, low, high, decimals, times);
    }

    /** The same with other values, on the scale that is drawn. */
    public Lane showing(IntToDoubleFunction other) {
        MinMaxPyramid line = new MinMaxPyramid(values.size(), other);
        return new Lane(name, unit, colour, line, target, limit, expected, low, high, decimals, height);
    }

    /** The same with a limit, on the scale that is drawn. */
    public Lane limited(IntToDoubleFunction most) {
        MinMaxPyramid line = new MinMaxPyramid(values.size(), most);
        return new Lane(name, unit, colour, values, target, Optional.of(line), expected, low, high, decimals, height);
    }

    /** The same with what the values would have been, on the scale that is drawn; NaN where it isn't known. */
    public Lane expecting(IntToDoubleFunction would) {
        MinMaxPyramid line = new MinMaxPyramid(values.size(), would);
        return new Lane(name, unit, colour, values, target, limit, Optional.of(line), low, high, decimals, height);
    }
}
