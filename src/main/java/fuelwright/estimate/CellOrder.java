package fuelwright.estimate;

import fuelwright.table.Table;

/**
 * The order in which the fit numbers cells: load runs fastest. A throttle moves over many loads within the sensor's lag, while engine
 * speed hardly moves; in this order the cells behind one reading stay close together and the normal matrix is a narrow band. Immutable.
 */
final class CellOrder {

    private final int speeds;
    private final int loads;

    CellOrder(Table table) {
        this.speeds = table.speed().size();
        this.loads = table.load().size();
    }

    int size() {
        return speeds * loads;
    }

    /** Number in the fit's order of a cell in the table's order. */
    int ofCell(int cell) {
        return cell % speeds * loads + cell / speeds;
    }

    /** Values in the fit's order, from values in the table's. */
    double[] fromTable(double[] values) {
        double[] ordered = new double[values.length];
        for (int c = 0; c < values.length; c++) {
            ordered[ofCell(c)] = values[c];
        }
        return ordered;
    }

    /** Values in the table's order, from values in the fit's. */
    double[] toTable(double[] ordered) {
        double[] values = new double[ordered.length];
        for (int c = 0; c < values.length; c++) {
            values[c] = ordered[ofCell(c)];
        }
        return values;
    }
}
