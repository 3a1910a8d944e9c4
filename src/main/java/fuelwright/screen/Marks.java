package fuelwright.screen;

/** What one screen says of each row of a ride, a bit a row. Filled by one thread; read-only afterwards. */
final class Marks {

    private final long[] words;

    Marks(int rows) {
        words = new long[words(rows)];
    }

    /** Words of 64 rows each that so many rows need. */
    static int words(int rows) {
        return (rows + 63) >> 6;
    }

    void set(int row, boolean applies) {
        if (applies) {
            words[row >> 6] |= 1L << row;
        }
    }

    /** Rows 64 · index on, the first in the lowest bit. */
    long word(int index) {
        return words[index];
    }
}
