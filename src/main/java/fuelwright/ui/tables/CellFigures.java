package fuelwright.ui.tables;

import fuelwright.table.Numerals;
import fuelwright.table.Quantity;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.theme.Words;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Between the figures that a table holds and those that are shown and typed: a mixture is shown as lambda or as AFR, whatever the table is
 * written in. Pure.
 *
 * @param quantity what the table holds
 * @param mixture how mixtures are shown
 * @param deadTimeMs dead time contained in pulses
 */
record CellFigures(Quantity quantity, Mixture mixture, double deadTimeMs) {

    private static final double RICHEST = 0.5;
    private static final double LEANEST = 2;
    private static final double GREATEST = 100_000;

    /** As it is shown, in full. */
    double shown(double held) {
        return quantity.isMixture() ? mixture.lambdaOf(quantity, held) * mixture.scale() : held;
    }

    /** As the table holds it. */
    double held(double shown) {
        if (!quantity.isMixture()) {
            return shown;
        }
        double lambda = shown / mixture.scale();
        return quantity == Quantity.AFR ? lambda * mixture.targetRatio() : lambda;
    }

    /** What is copied and edited: as short as it goes. */
    String text(double held) {
        double rounded = Math.rint(shown(held) * 1e5) / 1e5;
        return Numerals.shortest(rounded);
    }

    /** A typed number, with a decimal point or a decimal comma. */
    static OptionalDouble number(String text) {
        OptionalDouble pointed = Numerals.parse(text, false);
        return pointed.isPresent() ? pointed : Numerals.parse(text, true);
    }

    /** The figure so many percent up: of fuel that is really delivered, or of lambda. */
    double percent(double held, double percent) {
        double factor = 1 + percent / 100;
        return quantity.isFuel() ? quantity.corrected(held, factor, deadTimeMs) : held * factor;
    }

    /** The figure so much more, in what is shown. */
    double more(double held, double shownAmount) {
        return held(shown(held) + shownAmount);
    }

    /** Why a table can't hold a figure, a sentence; empty where it can. */
    Optional<String> problem(double held) {
        if (quantity.isMixture()) {
            double lambda = mixture.lambdaOf(quantity, held);
            return lambda >= RICHEST && lambda <= LEANEST
                    ? Optional.empty()
                    : Optional.of(Words.of("tables.edit.mixture", mixture.figure(RICHEST), mixture.figure(LEANEST)));
        }
        if (quantity.isFuel() && !(quantity.delivered(held, deadTimeMs) > 0)) {
            return Optional.of(Words.of("tables.edit.nofuel"));
        }
        return Math.abs(held) <= GREATEST ? Optional.empty() : Optional.of(Words.of("tables.edit.toolarge"));
    }
}
