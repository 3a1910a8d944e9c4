package fuelwright.ui.rides;

import fuelwright.job.JobRide;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.table.Table;
import fuelwright.ui.plot.MinMaxPyramid;
import fuelwright.ui.plot.Trace;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.RideTrace;
import fuelwright.ui.theme.Measures;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What is drawn of a ride whatever its screens: lanes, a small picture of each channel, and the path over the table. Made off the
 * interface's thread.
 *
 * @param ride the ride
 * @param lanes its lanes, nothing shaded
 * @param sparks a small picture of each channel, in the ride's order
 * @param density the path over the table; empty without a table or the channels for it
 */
record RidePicture(Ride ride, Trace lanes, List<Spark> sparks, Optional<RideDensity> density) {

    /** Columns of a small picture. */
    static final int WIDTH = 96;

    /**
     * A channel in little: for each of {@value #WIDTH} pieces of the ride the least and greatest value, NaN where there is none.
     *
     * @param rateHz values a second where they come; NaN for less than two
     */
    record Spark(double[] least, double[] most, double rateHz) {
        Spark {
            least = least.clone();
            most = most.clone();
        }

        @Override
        public double[] least() {
            return least.clone();
        }

        @Override
        public double[] most() {
            return most.clone();
        }
    }

    static RidePicture of(
            JobRide made, Optional<Table> table, Optional<Table> target, Mixture notation, Measures measures) {
        Ride ride = made.ride();
        List<Spark> sparks = new ArrayList<>();
        ride.channels().forEach(c -> sparks.add(spark(ride, c)));
        return new RidePicture(
                ride,
                RideTrace.lanes(ride, target, notation, measures),
                sparks,
                made.madeWith().or(() -> table).flatMap(t -> RideDensity.of(ride, t)));
    }

    private static Spark spark(Ride ride, Channel channel) {
        int rows = ride.size();
        MinMaxPyramid values = new MinMaxPyramid(rows, channel.values()::at);
        double[] least = new double[WIDTH];
        double[] most = new double[WIDTH];
        for (int px = 0; px < WIDTH; px++) {
            int from = (int) ((long) rows * px / WIDTH);
            int to = (int) ((long) rows * (px + 1) / WIDTH);
            MinMaxPyramid.Extent e = values.extent(from, Math.max(from + 1, to));
            least[px] = e.min();
            most[px] = e.max();
        }
        return new Spark(least, most, rateHz(ride, channel));
    }

    /** By the median step between values, over a sample of them. */
    private static double rateHz(Ride ride, Channel channel) {
        double[] steps = new double[2000];
        int count = 0;
        int before = -1;
        int stride = Math.max(1, ride.size() / 20_000);
        for (int start = 0; start < ride.size() && count < steps.length; start += 10 * stride) {
            before = -1;
            for (int row = start; row < Math.min(ride.size(), start + 10) && count < steps.length; row++) {
                if (channel.values().has(row)) {
                    double step =
                            before < 0 ? 0 : ride.timeS().at(row) - ride.timeS().at(before);
                    if (step > 0) {
                        steps[count++] = step;
                    }
                    before = row;
                }
            }
        }
        Arrays.sort(steps, 0, count);
        return count == 0 ? Double.NaN : 1 / steps[count / 2];
    }
}
