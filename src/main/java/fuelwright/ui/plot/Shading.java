package fuelwright.ui.plot;

import java.util.function.IntUnaryOperator;

/**
 * Why rows of a ride don't count, ready to be drawn: counts of each reason over any stretch from sums over blocks of rows, so that ten
 * million rows take no longer than a thousand. Immutable.
 */
public final class Shading {

    private static final int BLOCK = 256;

    private final byte[] codes;
    private final int reasons;
    /** Rows of each reason before each block. */
    private final int[] before;

    /**
     * @param reasons how many reasons there are, at most 127
     * @param code the reason of a row, from 0; −1 where it counts
     */
    public Shading(int rows, int reasons, IntUnaryOperator code) {
        this.reasons = reasons;
        codes = new byte[rows];
        int blocks = rows / BLOCK + 1;
        before = new int[(blocks + 1) * reasons];
        for (int block = 0; block < blocks; block++) {
            int at = (block + 1) * reasons;
            System.arraycopy(before, block * reasons, before, at, reasons);
            for (int row = block * BLOCK; row < Math.min(rows, (block + 1) * BLOCK); row++) {
                int reason = code.applyAsInt(row);
                codes[row] = (byte) reason;
                if (reason >= 0) {
                    before[at + reason]++;
                }
            }
        }
    }

    /** Every row counts. */
    public static Shading none(int rows) {
        return new Shading(rows, 1, row -> -1);
    }

    public int rows() {
        return codes.length;
    }

    /** The reason of a row; −1 where it counts. */
    public int reason(int row) {
        return codes[row];
    }

    /** The reason that most of a stretch's rows have which don't count; −1 where more than half of them count, or there are none. */
    public int most(int from, int to) {
        int low = Math.max(0, from);
        int high = Math.min(codes.length, to);
        if (high - low <= 1) {
            return high == low ? -1 : codes[low];
        }
        int best = -1;
        int bestCount = 0;
        int all = 0;
        int[] counts = counts(low, high);
        for (int reason = 0; reason < reasons; reason++) {
            all += counts[reason];
            if (counts[reason] > bestCount) {
                bestCount = counts[reason];
                best = reason;
            }
        }
        return 2 * all >= high - low ? best : -1;
    }

    private int[] counts(int low, int high) {
        int[] counts = new int[reasons];
        int firstBlock = (low + BLOCK - 1) / BLOCK;
        int lastBlock = high / BLOCK;
        if (firstBlock >= lastBlock) {
            add(counts, low, high);
            return counts;
        }
        for (int reason = 0; reason < reasons; reason++) {
            counts[reason] = before[lastBlock * reasons + reason] - before[firstBlock * reasons + reason];
        }
        add(counts, low, firstBlock * BLOCK);
        add(counts, lastBlock * BLOCK, high);
        return counts;
    }

    private void add(int[] counts, int low, int high) {
        for (int row = low; row < high; row++) {
            if (codes[row] >= 0) {
                counts[codes[row]]++;
            }
        }
    }
}
