package fuelwright.table;

import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Reads what follows {@code # quantity:}, and judges single cells by it. */
final class QuantityReader {

    /** A quantity as a file states it: cells are multiplied by {@code scale}. */
    record Stated(Quantity quantity, double scale) {}

    private QuantityReader() {}

    /** @return empty after an error was added */
    static Optional<Stated> read(String text, int line, Problems problems) {
        AxisLabel label = AxisLabel.of(text);
        Optional<Quantity> found = Arrays.stream(Quantity.values())
                .filter(q -> q.words().toLowerCase(Locale.ROOT).equals(label.name()))
                .findFirst();
        if (found.isEmpty()) {
            problems.error(line, 0, "The quantity '" + text.strip() + "' isn't known", "Write " + choices());
            return Optional.empty();
        }
        Quantity quantity = found.get();
        double scale = scale(quantity, label.unitText());
        if (Double.isNaN(scale)) {
            problems.error(
                    line,
                    0,
                    "The unit [" + label.unitText() + "] doesn't fit " + quantity.words(),
                    "Write " + written(quantity));
            return Optional.empty();
        }
        if (scale != 1) {
            problems.note(
                    line,
                    0,
                    "Cells in [" + label.unitText() + "] were converted to [" + quantity.unit() + "] (times "
                            + Numerals.shortest(scale) + ")");
        }
        return Optional.of(new Stated(quantity, scale));
    }

    /** As somebody told it of a file whose own line isn't known; the unit of that line still counts where it fits. */
    static Optional<Stated> told(Quantity quantity, String text, int line, Problems problems) {
        return read(written(quantity).replaceAll("\\[.*", "") + unit(text), line, problems);
    }

    private static String unit(String text) {
        String unit = AxisLabel.of(text).unitText();
        return unit.isEmpty() ? "" : "[" + unit + "]";
    }

    /** Whether the line names a quantity in a unit that fits. */
    static boolean isKnown(String text) {
        Problems unsaid = new Problems("");
        return read(text, 0, unsaid).isPresent();
    }

    private static double scale(Quantity quantity, String unitText) {
        if (unitText.isEmpty() || unitText.equals(quantity.unit())) {
            return 1;
        }
        Optional<Unit> parsed = Unit.parse(unitText);
        if (parsed.isEmpty()) {
            return Double.NaN;
        }
        Unit unit = parsed.get();
        if (quantity == Quantity.LAMBDA && unit == Unit.LAMBDA
                || quantity == Quantity.AFR && unit == Unit.AIR_FUEL_RATIO) {
            return 1;
        }
        Unit own = quantity.unitAsData();
        if (unit.dimension() == own.dimension()) {
            return Numerals.tidy(own.fromCanonical(unit.toCanonical(1)));
        }
        // A fraction of 1 says the same as per cent for these two only: a trim of 1.05 could be a factor or a change.
        if (quantity == Quantity.VOLUMETRIC_EFFICIENCY && unit.dimension() == Dimension.NUMBER) {
            return 100;
        }
        if (quantity == Quantity.MULTIPLIER && unit.dimension() == Dimension.PERCENTAGE) {
            return unit.toCanonical(1) / 100;
        }
        return Double.NaN;
    }

    /** What is wrong with a cell of this quantity; empty where nothing is. */
    static Optional<String> objection(Quantity quantity, double value) {
        switch (quantity) {
            case VOLUMETRIC_EFFICIENCY:
            case INJECTOR_PULSE:
            case MULTIPLIER:
            case LAMBDA:
            case AFR:
                return value > 0 ? Optional.empty() : Optional.of("must be above 0");
            case FUEL_TRIM:
            case CHANGE:
            case SHORTFALL:
                return value > -100 ? Optional.empty() : Optional.of("must be above −100 %");
            default:
                return value >= 0 ? Optional.empty() : Optional.of("can't be negative");
        }
    }

    static String written(Quantity quantity) {
        return quantity.words() + " [" + quantity.unit() + "]";
    }

    /** What a user's table may hold; what the program's own results hold is read too, but nobody writes it by hand. */
    static String choices() {
        return "for fuel " + listed(Quantity::isFuel) + "; for a target " + listed(Quantity::isMixture);
    }

    private static String listed(Predicate<Quantity> which) {
        return Arrays.stream(Quantity.values())
                .filter(which)
                .map(QuantityReader::written)
                .collect(Collectors.joining(", "));
    }
}
