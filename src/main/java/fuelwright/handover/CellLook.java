package fuelwright.handover;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Standing;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Pattern;

/** How a cell is told and drawn, the same in the window and on paper. Pure. */
public final class CellLook {

    /** Stands for the change of a cell of which nothing is known. */
    public static final String UNKNOWN = "?";

    /** Changes below this are shown as 0.0. */
    public static final double NO_CHANGE_PERCENT = 0.05;

    /** Fewer independent readings are shown with a decimal. */
    private static final double FEW_READINGS = 10;

    private static final double LEAST_READINGS = 0.1;
    /** No fill is paler. */
    private static final double PALEST = 0.12;
    /** Up to this uncertainty a fill is not paler, %: a measured cell has no more. */
    private static final double SURE_PERCENT = Standing.MEASURED_PERCENT;
    /** Uncertainty beyond that at which a fill has lost two thirds of its colour, %. */
    private static final double FADES_OVER_PERCENT = 6;

    private static final Pattern UNCERTAINTY = Pattern.compile("±\\s*([0-9]+(?:\\.[0-9]+)?)(\\s*%)?");

    private CellLook() {}

    /** Left as it is because nobody knows: that must not look like 'no change needed'. */
    public static boolean unknown(CellProposal c) {
        return c.standing() == Standing.INFERRED
                && c.decision().isEmpty()
                && Math.abs(c.changePercent()) < NO_CHANGE_PERCENT;
    }

    /** A number of independent readings: one decimal below 10, none above, and never rounded up over what a standing asks for. */
    public static String readings(double independentReadings) {
        if (!(independentReadings > 0)) {
            return "0";
        }
        if (independentReadings < LEAST_READINGS) {
            return "<0.1";
        }
        // A sum of shares: what lacks a hair isn't lacking.
        BigDecimal exact = BigDecimal.valueOf(independentReadings + 1e-7);
        return exact.setScale(independentReadings + 1e-7 < FEW_READINGS ? 1 : 0, RoundingMode.DOWN)
                .toPlainString();
    }

    /** An uncertainty that no line end parts from its unit. */
    public static String plusMinus(double percent) {
        return "±" + Figures.plain(percent, 1) + "\u202f%";
    }

    /** Words in which no line end parts an uncertainty from its sign and unit, nor the sign from its figure. */
    public static String joined(String words) {
        return UNCERTAINTY.matcher(words).replaceAll(m -> "±" + m.group(1) + (m.group(2) == null ? "" : "\u202f%"));
    }

    /** A figure and its uncertainty, %; no line end parts them. */
    public static String plusMinus(double percent, double uncertaintyPercent) {
        return Figures.signed(percent, 1) + "\u202f" + plusMinus(uncertaintyPercent);
    }

    /** How strong a fill is: 1 is full colour. The less certain, the paler, but never as pale as what is behind it. */
    public static double strength(Standing standing, double uncertaintyPercent) {
        double most = standing == Standing.MEASURED ? 1 : standing == Standing.THIN ? 0.9 : 0.75;
        return most * sure(uncertaintyPercent);
    }

    /** The same of a figure that has no standing. */
    public static double sure(double uncertaintyPercent) {
        double beyond = Math.max(0, uncertaintyPercent - SURE_PERCENT);
        return PALEST + (1 - PALEST) * Math.exp(-beyond / FADES_OVER_PERCENT);
    }
}
