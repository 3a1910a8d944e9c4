package fuelwright.estimate;

/**
 * Finds the moment at which the mixture was burnt that the sensor showed in a given row, inside one segment of a ride: u with
 * u + delay(u) = t, by two rounds of substitution. Mutable cursor, not thread-safe.
 */
final class Moment {

    private final double[] timeS;
    private final double[] speedRpm;
    private final double[] flowGPerS;
    private final SensorModel model;
    private final int from;
    private final int to;
    private int left;
    private double part;
    private double burntS;
    private double delaySpeedRpm;
    private double delayFlow;

    /**
     * @param flowGPerS exhaust mass flow in each row of the ride, g/s; between rows it goes on straight lines
     * @param from first row of the segment
     * @param to one past its last
     */
    Moment(RideTrack track, double[] flowGPerS, SensorModel model, int from, int to) {
        this.timeS = track.timeS;
        this.speedRpm = track.speedRpm;
        this.flowGPerS = flowGPerS;
        this.model = model;
        this.from = from;
        this.to = to;
        this.left = from;
    }

    /** The same, for rows from {@code row} on: looks there first. */
    Moment near(int row) {
        left = row;
        return this;
    }

    /** Goes to the burnt moment of a row's reading; false where it lies before the segment or engine speed or load is missing. */
    boolean goTo(int row) {
        double t = timeS[row];
        double delay = delayAt(speedRpm[row], flowGPerS[row]);
        if (Double.isNaN(delay) || !seek(t - delay)) {
            return false;
        }
        delay = delayAt(interpolate(speedRpm), interpolate(flowGPerS));
        return !Double.isNaN(delay) && seek(t - delay);
    }

    private double delayAt(double rpm, double flow) {
        delaySpeedRpm = Math.max(rpm, 300);
        delayFlow = flow;
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
