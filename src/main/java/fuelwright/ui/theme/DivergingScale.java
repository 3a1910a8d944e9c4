package fuelwright.ui.theme;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import javafx.scene.paint.Color;

/**
 * A scale with two directions around nothing, in the manner of ColorBrewer's PuOr (Harrower and Brewer, The Cartographic Journal 40
 * (2003) 27): purple for less, orange for more. The dark theme has its own, whose centre is dark, so that small changes keep their hue.
 */
public final class DivergingScale {

    private final List<Color> less;
    private final List<Color> more;

    DivergingScale(List<Color> less, Color same, List<Color> more) {
        this.less = from(same, less);
        this.more = from(same, more);
    }

    private static List<Color> from(Color same, List<Color> rest) {
        List<Color> all = new ArrayList<>(List.of(same));
        all.addAll(rest);
        return Collections.unmodifiableList(all);
    }

    /** The colour of {@code t}: −1 is least, 0 nothing, 1 most; clamped. */
    public Color at(double t) {
        return SequentialScale.along(t < 0 ? less : more, Math.abs(t));
    }
}
