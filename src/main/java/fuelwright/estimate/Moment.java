package fuelwright.estimate;

import fuelwright.table.Axis;

/**
 * Finds the moment at which the mixture was burnt that the sensor showed in a given row, inside one segment of a ride: u with
 * u + delay(u) = t, by two rounds of substitution. Mutable cursor, not thread-safe.
 */
final class Moment {

    private final double[] timeS;
    private final double[] speedRpm;
    private final double[] load;
    private final SensorModel model;
    private final FlowModel flow;
    private final int from;
    private final int to;
    private int left;
    private double part;
    private double burntS;
    private double delaySpeedRpm;
    private double delayFlow;

    Moment(RideTrack track, Axis.Kind loadKind, SensorModel model, FlowModel flow, int from, int to) {
        this.timeS = track.timeS;
        this.speedRpm = track.speedRpm;
        this.load = track.load(loadKind);
        this.model = model;
        this.flow = flow;
        this.from = from;
        this.to = to;
        this.left = from;
    }

    /** Goes to the burnt moment of a row's reading; false where it lies before the segment or engine speed or load is missing. */
    boolean goTo(int row) {
        double t = timeS[row];
        double delay = delayAt(speedRpm[row], load[row]);
        if (Double.isNaN(delay) || !seek(t - delay)) {
            return false;
        }
        delay = delayAt(interpolate(speedRpm), interpolate(load));
        return !Double.isNaN(delay) && seek(t - delay);
    }

    private double delayAt(double rpm, double loadValue) {
        delaySpeedRpm = Math.max(rpm, 300);
        delayFlow = flow.gramsPerSecond(rpm, loadValue);
        return model.delayS(delaySpeedRpm, delayFlow);
    }

    /** Goes to a time; false before the segment's first row. Beyond the last row it stays there. */
    boolean seek(double time) {
        if (!(time >= timeS[from])) {
            return false;
        }
        while (left > from && timeS[left] > time) {
            left--;
        }
        while (left + 1 < to && timeS[left + 1] <= time) {
            left++;
        }
        if (left + 1 < to) {
            double span = timeS[left + 1] - timeS[left];
            part = span > 0 ? (time - timeS[left]) / span : 0;
        } else {
            part = 0;
        }
        burntS = time;
        return true;
    }

    double burntS() {
        return burntS;
    }

    /** The row at or before the moment. */
    int row() {
        return left;
    }

    /** Engine speed with which the last delay was worked out, rpm. */
    double delaySpeedRpm() {
        return delaySpeedRpm;
    }

    /** Flow with which the last delay was worked out, g/s. */
    double delayFlow() {
        return delayFlow;
    }

    /** A column's value at the moment, on a straight line between rows; NaN where either side is missing. */
    double interpolate(double[] values) {
        return part == 0 ? values[left] : values[left] + part * (values[left + 1] - values[left]);
    }
}
