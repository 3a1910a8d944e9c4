package fuelwright.safety;

import fuelwright.airflow.Machine;
import fuelwright.estimate.BurntTrace;
import fuelwright.estimate.FlowModel;
import fuelwright.estimate.SensorModel;
import fuelwright.ride.Ride;
import fuelwright.table.Table;
import java.util.Arrays;

/**
 * A sensor's readings at the rows in which they were burnt, as {@code lean-under-load} looks at them: the delay is undone, the lag isn't.
 * To be drawn beside engine speed, load and {@link LeanLimit}. Immutable.
 */
public final class BurntMixture {

    /** Over a gap longer than this nothing is drawn, s. */
    private static final double GAP_S = 1.0;

    private final double[] lambda;

    private BurntMixture(double[] lambda) {
        this.lambda = lambda;
    }

    /**
     * @param sensor which of {@link Ride#mixtures()}
     * @param madeWith the fuel table that was in the unit
     * @param deadTimeMs injector dead time contained in a pulse table, ms
     */
    public static BurntMixture of(
            Ride ride, int sensor, Table madeWith, Machine machine, SensorModel model, double deadTimeMs) {
        FlowModel flow = FlowModel.of(machine, madeWith, deadTimeMs);
        BurntTrace trace = BurntTrace.of(ride, sensor, madeWith.load().kind(), model, flow);
        double[] out = new double[ride.size()];
        Arrays.fill(out, Double.NaN);
        int row = 0;
        for (int i = 0; i + 1 < trace.size(); i++) {
            double from = trace.burntS(i);
            double to = trace.burntS(i + 1);
            if (!(to > from) || to - from > GAP_S) {
                row = to < from - GAP_S ? trace.row(i + 1) - 1 : row;
                continue;
            }
            while (row < out.length && ride.timeS().at(row) < from && row <= trace.row(i)) {
                row++;
            }
            while (row < out.length && ride.timeS().at(row) < to && row <= trace.row(i + 1)) {
                double share = (ride.timeS().at(row) - from) / (to - from);
                out[row++] = (1 - share) * trace.lambda(i) + share * trace.lambda(i + 1);
            }
        }
        return new BurntMixture(out);
    }

    /** The mixture that was burnt at a row, lambda; NaN where no reading tells. */
    public double at(int row) {
        return lambda[row];
    }
}
