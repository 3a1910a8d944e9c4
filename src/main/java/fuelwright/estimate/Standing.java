package fuelwright.estimate;

/** What a cell's figure rests on. */
public enum Standing {
    /** At least 10 independent readings and an uncertainty of at most 2 %. */
    MEASURED,
    /** At least 3 independent readings. */
    THIN,
    /** Neighbours or physics only: fewer readings than that. */
    INFERRED;

    /** Independent readings that a measured cell has at least. */
    public static final double MEASURED_READINGS = 10;
    /** Uncertainty that a measured cell has at most, %. */
    public static final double MEASURED_PERCENT = 2;
    /** Independent readings that a thin cell has at least. */
    public static final double THIN_READINGS = 3;

    /** The standing of a cell with that many independent readings and that uncertainty in %. */
    public static Standing of(double independentReadings, double uncertaintyPercent) {
        if (independentReadings >= MEASURED_READINGS && uncertaintyPercent <= MEASURED_PERCENT) {
            return MEASURED;
        }
        return independentReadings >= THIN_READINGS ? THIN : INFERRED;
    }

    /** The name as screens and files write it. */
    public String words() {
        return name().toLowerCase(java.util.Locale.ROOT);
    }
}
