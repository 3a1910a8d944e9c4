package fuelwright.ride;

import java.util.Arrays;

/** Which line of the file a row came from, kept only where the difference between the two changes. */
final class LineMap {

    private int[] rows = new int[8];
    private int[] lines = new int[8];
    private int size;

    void add(int row, int line) {
        if (size > 0 && lines[size - 1] + (row - rows[size - 1]) == line) {
            return;
        }
        if (size == rows.length) {
            rows = Arrays.copyOf(rows, size * 2);
            lines = Arrays.copyOf(lines, size * 2);
        }
        rows[size] = row;
        lines[size++] = line;
    }

    /** Adds what {@code later} knows, its rows counted from {@code firstRow} on. */
    void addAll(LineMap later, int firstRow) {
        for (int i = 0; i < later.size; i++) {
            add(later.rows[i] + firstRow, later.lines[i]);
        }
    }

    int line(int row) {
        if (size == 0) {
            return 0;
        }
        int at = Arrays.binarySearch(rows, 0, size, row);
        int piece = Math.max(0, at >= 0 ? at : -at - 2);
        return lines[piece] + row - rows[piece];
    }
}
