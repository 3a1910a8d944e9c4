package fuelwright.ui.theme;

import java.util.List;
import javafx.scene.paint.Color;

/** A scale of amounts: lightness changes evenly in one direction, so that it can be read without seeing hue. */
public final class SequentialScale {

    private final List<Color> stops;

    SequentialScale(List<Color> stops) {
        this.stops = List.copyOf(stops);
    }

    /** The colour of {@code t} from 0 to 1; clamped. */
    public Color at(double t) {
        return along(stops, t);
    }

    static Color along(List<Color> stops, double t) {
        double p = Math.min(1, Math.max(0, t)) * (stops.size() - 1);
        int i = Math.min((int) p, stops.size() - 2);
        return Colours.mix(stops.get(i), stops.get(i + 1), p - i);
    }
}
