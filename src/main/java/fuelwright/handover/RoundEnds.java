package fuelwright.handover;

import java.util.List;

/**
 * The round ends of a scale of colours.
 *
 * @param low where it starts
 * @param high where it ends; above {@code low}
 * @param decimals that its ends and its middle need
 */
public record RoundEnds(double low, double high, int decimals) {

    private static final double[] ROUND = {1, 2, 2.5, 5, 10};
    private static final double STEPS = 4;

    /** The narrowest ends that hold both figures, in at most about four round steps. */
    public static RoundEnds of(double low, double high) {
        double span = high > low ? high - low : Math.max(1, Math.abs(high));
        double step = step(span / STEPS);
        double from = Math.floor(low / step + 1e-9);
        double to = Math.max(from + 1, Math.ceil(high / step - 1e-9));
        // The middle is told too: it is to be round as well.
        double even = (to - from) % 2 == 0 ? to : to + 1;
        return new RoundEnds(from * step, even * step, decimals(step));
    }

    private static double step(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (double round : ROUND) {
            if (round * power >= least * (1 - 1e-9)) {
                return round * power;
            }
        }
        return 10 * power;
    }

    private static int decimals(double step) {
        int decimals = 0;
        double scaled = step;
        while (decimals < 4 && Math.abs(scaled - Math.rint(scaled)) > 1e-6) {
            scaled *= 10;
            decimals++;
        }
        return decimals;
    }

    /** Where a figure stands between the ends, 0 to 1. */
    public double share(double value) {
        return Math.min(1, Math.max(0, (value - low) / (high - low)));
    }

    /** Start, middle and end with their unit behind them; "1" is none. */
    public List<String> labels(String unit) {
        String behind = unit.isEmpty() || unit.equals("1") ? "" : "\u202f" + unit;
        return List.of(
                Figures.plain(low, decimals) + behind,
                Figures.plain((low + high) / 2, decimals) + behind,
                Figures.plain(high, decimals) + behind);
    }
}
