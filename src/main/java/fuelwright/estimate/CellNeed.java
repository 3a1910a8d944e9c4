package fuelwright.estimate;

import java.util.List;
import java.util.stream.IntStream;

/**
 * What the evidence says of one cell, in figures that are kept and compared.
 *
 * @param shortfallPercent how much more fuel the cell needs, %: positive is lean
 * @param uncertaintyPercent its standard error, %
 * @param independentReadings behind the cell; 0 where nobody rode it
 */
public record CellNeed(double shortfallPercent, double uncertaintyPercent, double independentReadings) {

    /** A thousandth is finer than any sensor, and short to write. */
    private static final double FINEST = 1000;

    public CellNeed {
        if (!(shortfallPercent > -100)
                || !(uncertaintyPercent >= 0)
                || !(independentReadings >= 0)
                || !Double.isFinite(shortfallPercent + uncertaintyPercent + independentReadings)) {
            throw new IllegalArgumentException("shortfall " + shortfallPercent + " % must be above -100, uncertainty "
                    + uncertaintyPercent + " % and readings " + independentReadings + " at least 0");
        }
    }

    /** Every cell of an estimate, in the table's order. Rounded, never to more readings or less doubt than there are. */
    public static List<CellNeed> of(Estimate estimate) {
        return IntStream.range(0, estimate.table().cells())
                .mapToObj(c -> new CellNeed(
                        Math.rint(FINEST * estimate.shortfallPercent(c)) / FINEST,
                        Math.ceil(FINEST * estimate.uncertaintyPercent(c)) / FINEST,
                        Math.floor(FINEST * estimate.independentReadings(c)) / FINEST))
                .toList();
    }

    /** The factor on delivered fuel that the cell needs. */
    public double factor() {
        return 1 + shortfallPercent / 100;
    }

    /** How well the cell is known. */
    public Standing standing() {
        return Standing.of(independentReadings, uncertaintyPercent);
    }
}
