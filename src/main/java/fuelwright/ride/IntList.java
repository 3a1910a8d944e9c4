package fuelwright.ride;

import java.util.Arrays;

/** A growing list of whole numbers. */
final class IntList {

    private int[] values = new int[8];
    private int size;

    void add(int value) {
        if (size == values.length) {
            values = Arrays.copyOf(values, size * 2);
        }
        values[size++] = value;
    }

    int size() {
        return size;
    }

    int get(int index) {
        return values[index];
    }
}
