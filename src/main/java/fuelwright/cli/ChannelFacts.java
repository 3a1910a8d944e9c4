package fuelwright.cli;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.Arrays;
import java.util.List;

/**
 * What can be told of a channel at a glance.
 *
 * @param values rows with a value
 * @param least least value, in {@link #unit}; NaN where there is none
 * @param most greatest value
 * @param rateHz one over the middle step between values; NaN where there are fewer than two
 * @param gaps steps of more than a second, and more than five times the middle one
 * @param longestGapS the longest of them, s; 0 where there is none
 */
record ChannelFacts(int values, double least, double most, double rateHz, int gaps, double longestGapS) {

    private static final double GAP_S = 1;
    private static final double GAP_STEPS = 5;

    /** The unit that the figures here are in: the file's own, but lambda for a mixture. */
    static Unit unit(Channel channel) {
        return channel.role().isMixture() ? Unit.LAMBDA : channel.unit();
    }

    private static double shown(Channel channel, double canonical) {
        Unit unit = unit(channel);
        return unit.dimension() == Dimension.MIXTURE ? canonical : unit.fromCanonical(canonical);
    }

    static ChannelFacts of(Ride ride, Channel channel) {
        Column column = channel.values();
        Column timeS = ride.timeS();
        List<Integer> starts = ride.segmentStarts();
        double least = Double.NaN;
        double most = Double.NaN;
        double[] steps = new double[column.size()];
        int values = 0;
        int stepCount = 0;
        int segment = 0;
        int before = -1;
        for (int row = 0; row < column.size(); row++) {
            if (segment + 1 < starts.size() && row == starts.get(segment + 1)) {
                segment++;
                before = -1;
            }
            if (!column.has(row)) {
                continue;
            }
            double value = shown(channel, column.at(row));
            values++;
            least = Double.isNaN(least) ? value : Math.min(least, value);
            most = Double.isNaN(most) ? value : Math.max(most, value);
            if (before >= 0) {
                steps[stepCount++] = timeS.at(row) - timeS.at(before);
            }
            before = row;
        }
        return withSteps(values, least, most, Arrays.copyOf(steps, stepCount));
    }

    private static ChannelFacts withSteps(int values, double least, double most, double[] steps) {
        if (steps.length == 0) {
            return new ChannelFacts(values, least, most, Double.NaN, 0, 0);
        }
        Arrays.sort(steps);
        double middle = steps[steps.length / 2];
        double limit = Math.max(GAP_S, GAP_STEPS * middle);
        int gaps = 0;
        while (gaps < steps.length && steps[steps.length - 1 - gaps] > limit) {
            gaps++;
        }
        return new ChannelFacts(
                values,
                least,
                most,
                middle > 0 ? 1 / middle : Double.NaN,
                gaps,
                gaps > 0 ? steps[steps.length - 1] : 0);
    }
}
