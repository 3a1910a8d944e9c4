package fuelwright.ui.session;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Measures;
import fuelwright.unit.Measured;
import fuelwright.unit.Unit;
import fuelwright.unit.Units;

/** What the user chose to see figures in: metric or imperial, lambda or AFR. The one place that the window turns a figure of a sentence into text. */
public record ShownIn(Measures measures, Mixture mixture) implements Units {

    /** A unit up to so many times the canonical one tells as much with as many decimals. */
    private static final double COARSE = 2;

    /** Figures of fields have three decimals at most. */
    private static final double SAME = 1e-6;

    private static final double FINE = 1e6;

    /** The unit that stands for a canonical one. */
    public Unit of(Unit canonical) {
        return canonical == Unit.LAMBDA && mixture.afr() ? Unit.AIR_FUEL_RATIO : measures.of(canonical);
    }

    /** A figure with its unit in front or behind, as a sentence has it. In canonical units it reads as everywhere else. */
    @Override
    public String words(Measured figure) {
        Unit unit = of(figure.unit());
        if (unit == figure.unit()) {
            return figure.canonical();
        }
        String text = Figures.plain(shown(figure), decimals(figure));
        if (!figure.named()) {
            return text;
        }
        return unit == Unit.AIR_FUEL_RATIO && !figure.difference()
                ? unit.symbol() + " " + text
                : text + " " + unit.symbol();
    }

    /** With as many decimals as tell what the canonical figure tells: one just beyond its limit stays beyond it. */
    private int decimals(Measured figure) {
        boolean afr = of(figure.unit()) == Unit.AIR_FUEL_RATIO && !figure.difference();
        return afr ? Math.max(mixture.decimals(), figure.decimals() - 1) : figure.decimals() + more(figure.unit());
    }

    /** By how many decimals more the unit that is shown tells as much as the canonical one. */
    public int more(Unit canonical) {
        double size = size(canonical);
        return size > COARSE ? (int) Math.ceil(Math.log10(size / COARSE)) : 0;
    }

    /** So many canonical units are one of those shown. */
    private double size(Unit canonical) {
        Unit unit = of(canonical);
        return unit == Unit.AIR_FUEL_RATIO ? 1 / mixture.scale() : unit.toCanonical(1) - unit.toCanonical(0);
    }

    /** A figure in the unit that is shown, not rounded. */
    public double shown(Measured figure) {
        Unit unit = of(figure.unit());
        if (unit == Unit.AIR_FUEL_RATIO) {
            return figure.value() * mixture.scale();
        }
        return figure.difference() ? figure.value() / size(figure.unit()) : unit.fromCanonical(figure.value());
    }

    /** A figure in the unit that is shown, rounded to as much as the canonical one tells. */
    private double rounded(Measured figure) {
        int decimals = Math.max(figure.decimals(), Figures.decimals(figure.value()));
        double scale = Math.pow(10, decimals + more(figure.unit()));
        return Math.round(shown(figure) * scale) / scale;
    }

    /** A figure as a field has it, without its unit, in at least as many decimals as it says. */
    public String field(Measured figure) {
        if (of(figure.unit()) == figure.unit()) {
            return Figures.plain(figure.value(), Math.max(figure.decimals(), Figures.decimals(figure.value())));
        }
        double shown = rounded(figure);
        return Figures.plain(shown, Math.max(figure.decimals() + more(figure.unit()), Figures.decimals(shown)));
    }

    /**
     * What was typed, in the canonical unit.
     *
     * @param typed in the unit that is shown
     * @param like a figure of the same kind; its value doesn't matter
     * @param known figures that are meant where what was typed reads like one of them: showing a figure in another unit never moves it
     */
    public double typed(double typed, Measured like, double... known) {
        Unit unit = of(like.unit());
        if (unit == like.unit()) {
            return typed;
        }
        for (double value : known) {
            if (Math.abs(rounded(like.with(value)) - typed) < SAME) {
                return value;
            }
        }
        double canonical =
                like.difference() || unit == Unit.AIR_FUEL_RATIO ? typed * size(like.unit()) : unit.toCanonical(typed);
        return Math.rint(canonical * FINE) / FINE;
    }

    /** How the unit that is shown is written; of a step of temperature in metric units, K. */
    public String symbol(Measured like) {
        boolean kelvin = like.difference() && of(like.unit()) == Unit.CELSIUS;
        return kelvin ? Unit.KELVIN.symbol() : of(like.unit()).symbol();
    }
}
