package fuelwright.ride;

import java.util.Arrays;

/**
 * A few figures of a column, missing values left aside: exact smallest, largest and count, quantiles from an even sample of at most
 * 20,000 rows.
 *
 * @param count values that are there
 * @param distinct how many different values the sample has, at most 100
 */
record Stats(int count, double min, double max, double p02, double median, double p98, int distinct, int negative) {

    private static final int SAMPLE = 20_000;

    static Stats of(double[] values, int rows) {
        int count = 0;
        int negative = 0;
        double min = Double.POSITIVE_INFINITY;
        double max = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < rows; i++) {
            double value = values[i];
            if (value == value) {
                count++;
                negative += value < 0 ? 1 : 0;
                min = value < min ? value : min;
                max = value > max ? value : max;
            }
        }
        double[] sample = new double[Math.min(rows, SAMPLE + 1)];
        int size = 0;
        int stride = Math.max(1, (rows + SAMPLE - 1) / SAMPLE);
        for (int i = 0; i < rows; i += stride) {
            if (values[i] == values[i]) {
                sample[size++] = values[i];
            }
        }
        Arrays.sort(sample, 0, size);
        int distinct = size == 0 ? 0 : 1;
        for (int i = 1; i < size && distinct < 100; i++) {
            distinct += sample[i] != sample[i - 1] ? 1 : 0;
        }
        return new Stats(
                count, min, max, at(sample, size, 0.02), at(sample, size, 0.5), at(sample, size, 0.98), distinct, negative);
    }

    private static double at(double[] sorted, int size, double quantile) {
        return size == 0 ? Double.NaN : sorted[(int) Math.round(quantile * (size - 1))];
    }

    boolean isConstant() {
        return count > 0 && min == max;
    }
}
