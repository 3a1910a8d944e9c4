package fuelwright.estimate;

import fuelwright.table.Bilinear;
import fuelwright.table.Table;
import java.util.Arrays;

/** ln of what one table delivers over what another does, moment by moment. Tables on the same axes are looked up at once. Not thread-safe. */
final class TableRatio {

    private final Table over;
    private final Table under;
    private final double[] overCells;
    private final double[] underCells;
    private final boolean sameAxes;
    private final boolean same;
    private final int[] cells = new int[4];
    private final double[] weights = new double[4];

    TableRatio(Table over, Table under) {
        this.over = over;
        this.under = under;
        this.overCells = over.toArray();
        this.underCells = under.toArray();
        this.sameAxes = over.speed().equals(under.speed()) && over.load().equals(under.load());
        this.same = sameAxes
                && Arrays.equals(overCells, underCells)
                && Arrays.stream(overCells).allMatch(fuel -> fuel > 0);
    }

    /** NaN where engine speed or load is. */
    double ln(double speedRpm, double load) {
        if (Double.isNaN(speedRpm) || Double.isNaN(load)) {
            return Double.NaN;
        }
        if (same) {
            return 0;
        }
        if (!sameAxes) {
            return Math.log(over.value(speedRpm, load) / under.value(speedRpm, load));
        }
        Bilinear.locate(over.speed(), over.load(), speedRpm, load, cells, weights);
        double a = 0;
        double b = 0;
        for (int k = 0; k < 4; k++) {
            a += weights[k] * overCells[cells[k]];
            b += weights[k] * underCells[cells[k]];
        }
        return Math.log(a / b);
    }
}
