package fuelwright.ride;

import fuelwright.mixture.MixtureScale;
import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.Optional;

/**
 * Lambda from whatever a mixture column holds. The heading is believed only where the values can be that: an AFR under a heading that
 * says lambda would be read as fourteen times too lean.
 */
final class MixtureUnits {

    /** The median of a lambda in percent lies between these: an AFR without its point would be above. */
    private static final double LEAST_PERCENT = 60;

    private static final double MOST_PERCENT = 115;

    private final Channels channels;
    private final RideOptions options;
    private boolean ratioSaid;

    MixtureUnits(Channels channels, RideOptions options) {
        this.channels = channels;
        this.options = options;
    }

    void convert(Draft draft) {
        Optional<Unit> stated = channels.chosenUnit(draft);
        if (draft.role == Role.WIDEBAND_VOLTS) {
            volts(draft, stated);
        } else if (stated.filter(u -> u.dimension() == Dimension.VOLTAGE).isPresent()) {
            draft.role = Role.WIDEBAND_VOLTS;
            volts(draft, stated);
        } else {
            ratio(draft, stated);
        }
    }

    private void ratio(Draft draft, Optional<Unit> stated) {
        Unit unit = stated.filter(u -> u.dimension() == Dimension.MIXTURE).orElse(unitOf(draft));
        Stats stats = draft.stats;
        boolean fixed = channels.isSaid(draft);
        if (stats.count() == 0 || fixed) {
            apply(draft, unit);
            return;
        }
        double middle = stats.median();
        boolean commanded = draft.role == Role.COMMANDED_LAMBDA;
        if (unit != Unit.AIR_FUEL_RATIO && middle > 5 && middle < 40) {
            channels.doubt(
                    draft,
                    said(
                            draft,
                            unit == Unit.LAMBDA ? "lambda" : "equivalence ratio",
                            "values about " + Figures.plain(middle) + " are an air–fuel ratio; read as AFR"),
                    "choose the unit by hand if that is wrong");
            unit = Unit.AIR_FUEL_RATIO;
        } else if (unit == Unit.AIR_FUEL_RATIO && middle > 0.4 && middle < 3) {
            channels.doubt(
                    draft,
                    Say.overruled("AFR", "values about " + Figures.plain(middle) + " are lambda; read as lambda"),
                    "choose the unit by hand if that is wrong");
            unit = Unit.LAMBDA;
        } else if (unit == Unit.LAMBDA && middle > LEAST_PERCENT && middle < MOST_PERCENT) {
            channels.doubt(
                    draft,
                    said(
                            draft,
                            "lambda",
                            "values about " + Figures.plain(middle) + " are percent of it; divided by 100"),
                    "choose the unit by hand if that is wrong");
            draft.scale(0.01, 0);
        } else if (!commanded && unit != Unit.AIR_FUEL_RATIO && looksNarrow(draft)) {
            draft.leaveOut("values between " + Figures.plain(stats.p02()) + " and " + Figures.plain(stats.p98())
                    + " are a narrow-band sensor's volts, not lambda");
            channels.warn(draft, draft.remark, "log a wideband sensor");
            return;
        }
        if (unit == Unit.EQUIVALENCE_RATIO) {
            channels.doubt(
                    draft,
                    "fuel–air equivalence ratio: lambda is its reciprocal",
                    "choose lambda by hand if the column counts lean as above 1");
        }
        apply(draft, unit);
    }

    /** Only a heading that names the unit is overruled; one such as "wideband" leaves it open. */
    private static String said(Draft draft, String unit, String but) {
        boolean named = draft.said
                || draft.heading.unit().isPresent()
                || draft.heading.words().matches(".* (lambda|lam|λ|phi|equivalence)\\d* .*");
        return named ? Say.overruled(unit, but) : "the heading names no unit; " + but;
    }

    private static Unit unitOf(Draft draft) {
        return switch (draft.role) {
            case AFR -> Unit.AIR_FUEL_RATIO;
            case EQUIVALENCE_RATIO -> Unit.EQUIVALENCE_RATIO;
            case COMMANDED_LAMBDA ->
                draft.heading.words().matches(".* (afr|a f|air fuel( ratio)?) .*") ? Unit.AIR_FUEL_RATIO : Unit.LAMBDA;
            default -> Unit.LAMBDA;
        };
    }

    private void apply(Draft draft, Unit unit) {
        draft.unit = unit;
        double[] values = draft.values;
        if (unit == Unit.AIR_FUEL_RATIO) {
            double ratio = options.afrScale().orElse(MixtureScale.USUAL_DISPLAY_RATIO);
            for (int i = 0; i < values.length; i++) {
                values[i] = MixtureScale.lambdaOfAfr(values[i], ratio);
            }
            draft.say("AFR divided by " + Figures.plain(ratio));
            if (options.afrScale().isEmpty() && !ratioSaid) {
                ratioSaid = true;
                channels.warn(
                        draft,
                        Say.ratioUntold(ratio),
                        "say the display's ratio (--afr-scale RATIO), whatever fuel is in the tank");
            }
        } else if (unit == Unit.EQUIVALENCE_RATIO) {
            for (int i = 0; i < values.length; i++) {
                values[i] = values[i] > 0 ? MixtureScale.lambdaOfEquivalenceRatio(values[i]) : Double.NaN;
            }
        }
        draft.role = draft.role == Role.COMMANDED_LAMBDA ? draft.role : roleOf(unit);
    }

    private static Role roleOf(Unit unit) {
        return unit == Unit.AIR_FUEL_RATIO
                ? Role.AFR
                : unit == Unit.EQUIVALENCE_RATIO ? Role.EQUIVALENCE_RATIO : Role.LAMBDA;
    }

    private void volts(Draft draft, Optional<Unit> stated) {
        Unit unit = stated.filter(u -> u.dimension() == Dimension.VOLTAGE)
                .orElse(draft.stats.p98() > 100 ? Unit.MILLIVOLT : Unit.VOLT);
        draft.toCanonical(unit);
        double high = unit.toCanonical(draft.stats.p98());
        double low = unit.toCanonical(draft.stats.p02());
        if (draft.stats.count() > 0 && high <= 1.15 && low < 0.4 && !draft.said) {
            draft.leaveOut("volts between " + Figures.plain(low) + " and " + Figures.plain(high)
                    + " are a narrow-band sensor's: they tell rich from lean, not how much");
            channels.warn(draft, draft.remark, "log a wideband sensor");
        } else if (options.widebandScale().isEmpty()) {
            draft.leaveOut("the volts' two-point scale isn't known");
            channels.warn(
                    draft,
                    "wideband volts without a scale can't be used",
                    "say which lambda two voltages stand for (--volts V=LAMBDA, twice)");
        } else {
            WidebandScale scale = options.widebandScale().get();
            for (int i = 0; i < draft.values.length; i++) {
                draft.values[i] = scale.lambda(draft.values[i]);
            }
            draft.say("by the two-point scale that you gave");
        }
    }

    /**
     * A narrow-band sensor swings between about 0.1 and 0.9 V; no engine runs at a lambda below 0.5. A figure of exactly nothing is left
     * aside: some displays show it where they see nothing.
     */
    private static boolean looksNarrow(Draft draft) {
        double[] shown = draft.values.clone();
        for (int i = 0; i < shown.length; i++) {
            shown[i] = shown[i] == 0 ? Double.NaN : shown[i];
        }
        Stats stats = Stats.of(shown, shown.length);
        return stats.p98() <= 1.15 && stats.p02() < 0.45 && stats.median() < 1 && stats.distinct() > 2;
    }
}
