package fuelwright.ui.proposal;

import java.util.Optional;

/**
 * What the user typed for a cell: a figure as the table holds it, or with a sign and a percent sign, a change of the old figure.
 *
 * @param value the figure, or the change in %
 * @param isChange which of both
 */
record TypedFigure(double value, boolean isChange) {

    /** Empty where it is no number, or a percentage without a sign, which could be either. Point or comma, any minus sign. */
    static Optional<TypedFigure> parse(String typed) {
        String text = typed.strip().replace(',', '.').replace('−', '-');
        boolean percent = text.endsWith("%");
        String number = percent ? text.substring(0, text.length() - 1).strip() : text;
        boolean signed = number.startsWith("+") || number.startsWith("-");
        try {
            double value = Double.parseDouble(number);
            return Double.isFinite(value) && (signed || !percent)
                    ? Optional.of(new TypedFigure(value, percent))
                    : Optional.empty();
        } catch (NumberFormatException e) {
            return Optional.empty();
        }
    }

    double from(double before) {
        return isChange ? before * (1 + value / 100) : value;
    }
}
