package fuelwright.ride;

/** A read-only column of numbers. NaN means 'missing' and nothing else. */
public final class Column {

    private final double[] values;

    private Column(double[] values) {
        this.values = values;
    }

    /** A column of a copy of {@code values}. */
    public static Column of(double... values) {
        return new Column(values.clone());
    }

    /** A column that takes {@code values} over without copying: the caller must not keep or change them. For readers of large files. */
    public static Column owning(double[] values) {
        return new Column(values);
    }

    public int size() {
        return values.length;
    }

    public double at(int row) {
        return values[row];
    }

    /** Whether the row has a value. */
    public boolean has(int row) {
        return !Double.isNaN(values[row]);
    }

    /**
     * The values themselves, for passes over millions of rows. Not to be modified: who has to change them takes {@link #toArray}.
     */
    public double[] shared() {
        return values;
    }

    /** A copy of the values. */
    public double[] toArray() {
        return values.clone();
    }
}
