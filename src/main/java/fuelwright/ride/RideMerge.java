package fuelwright.ride;

import fuelwright.issue.Issue;
import fuelwright.ride.Channel.Confidence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Channels of a second logger at the rows of the first: by straight lines between the second's own samples, flags and gears by the last
 * one; missing where those are further apart than a gap, so nothing is bridged.
 */
final class RideMerge {

    private static final double LEAST_REACH_S = 0.5;

    private RideMerge() {}

    static Ride of(Ride first, Ride second, ClockAlignment alignment) {
        Column clock = onFirstClock(second.timeS(), alignment);
        List<Channel> channels = new ArrayList<>(first.channels());
        Set<String> headings = new HashSet<>();
        first.channels().forEach(c -> headings.add(c.heading()));
        for (Channel channel : second.channels()) {
            channels.add(merged(first, second, clock, channel, headings));
        }
        List<Issue> remarks = new ArrayList<>(first.remarks());
        remarks.addAll(second.remarks());
        remarks.add(ClockAlignment.note(second, alignment));
        return new Ride(first.name() + " + " + second.name(), first.timeS(), channels, first.segmentStarts(), remarks)
                .readFrom(first);
    }

    static Ride filled(Ride ride) {
        List<Channel> channels = new ArrayList<>();
        for (Channel channel : ride.channels()) {
            Role role = channel.role();
            boolean reading =
                    role.isMixture() || role == Role.SHORT_TRIM || role == Role.LONG_TRIM || role == Role.KNOCK;
            channels.add(reading || role == Role.OTHER || isWhole(channel.values()) ? channel : filled(ride, channel));
        }
        return new Ride(ride.name(), ride.timeS(), channels, ride.segmentStarts(), ride.remarks()).readFrom(ride);
    }

    private static boolean isWhole(Column values) {
        for (int i = 0; i < values.size(); i++) {
            if (!values.has(i)) {
                return false;
            }
        }
        return true;
    }

    private static Channel filled(Ride ride, Channel channel) {
        boolean steps = isStepped(channel.role());
        double[] whole = new double[ride.size()];
        List<Integer> starts = ride.segmentStarts();
        for (int s = 0; s < starts.size(); s++) {
            int from = starts.get(s);
            int to = s + 1 < starts.size() ? starts.get(s + 1) : ride.size();
            Column time = part(ride.timeS(), from, to);
            Column filled = at(time, time, part(channel.values(), from, to), List.of(0), steps);
            for (int i = from; i < to; i++) {
                whole[i] = channel.values().has(i) ? channel.values().at(i) : filled.at(i - from);
            }
        }
        return new Channel(
                channel.heading(),
                channel.role(),
                channel.unit(),
                Column.owning(whole),
                channel.confidence(),
                channel.remark());
    }

    private static Column part(Column column, int from, int to) {
        return Column.owning(Arrays.copyOfRange(column.toArray(), from, to));
    }

    private static boolean isStepped(Role role) {
        return role == Role.GEAR || role == Role.FUEL_CUT;
    }

    private static Channel merged(Ride first, Ride second, Column clock, Channel channel, Set<String> headings) {
        boolean steps = isStepped(channel.role());
        Column values = at(first.timeS(), clock, channel.values(), second.segmentStarts(), steps);
        String heading = channel.heading();
        while (!headings.add(heading)) {
            heading += " (" + second.name() + ")";
        }
        boolean taken = channel.role() != Role.OTHER
                && !channel.role().isMixture()
                && first.channels().stream().anyMatch(c -> c.role() == channel.role());
        return new Channel(
                heading,
                taken ? Role.OTHER : channel.role(),
                channel.unit(),
                values,
                taken ? Confidence.LEFT_OUT : channel.confidence(),
                (channel.remark().isEmpty() ? "" : channel.remark() + "; ") + "from " + second.name()
                        + (taken ? ", whose " + channel.role().words() + " gives way to the first logger's" : ""));
    }

    private static Column onFirstClock(Column timeS, ClockAlignment alignment) {
        double[] times = timeS.toArray();
        for (int i = 0; i < times.length; i++) {
            times[i] = alignment.toFirst(times[i]);
        }
        return Column.owning(times);
    }

    private static Column at(Column wantedS, Column clockS, Column values, List<Integer> segmentStarts, boolean steps) {
        double[] result = new double[wantedS.size()];
        Arrays.fill(result, Double.NaN);
        for (int s = 0; s < segmentStarts.size(); s++) {
            int from = segmentStarts.get(s);
            int to = s + 1 < segmentStarts.size() ? segmentStarts.get(s + 1) : values.size();
            int[] rows = rows(values, from, to);
            if (rows.length > 0) {
                double reach = Math.max(
                        LEAST_REACH_S,
                        3 * (clockS.at(rows[rows.length - 1]) - clockS.at(rows[0])) / Math.max(1, rows.length - 1));
                fill(result, wantedS, clockS, values, rows, reach, steps);
            }
        }
        return Column.owning(result);
    }

    private static int[] rows(Column values, int from, int to) {
        IntList there = new IntList();
        for (int i = from; i < to; i++) {
            if (values.has(i)) {
                there.add(i);
            }
        }
        int[] rows = new int[there.size()];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = there.get(i);
        }
        return rows;
    }

    private static void fill(
            double[] result, Column wantedS, Column clockS, Column values, int[] rows, double reachS, boolean steps) {
        for (int i = 0; i < result.length; i++) {
            double time = wantedS.at(i);
            int low = 0;
            int high = rows.length;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (clockS.at(rows[middle]) <= time) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            if (low == 0) {
                continue;
            }
            int before = rows[low - 1];
            double t0 = clockS.at(before);
            if (t0 == time) {
                result[i] = values.at(before);
            } else if (low < rows.length && clockS.at(rows[low]) - t0 <= reachS) {
                int after = rows[low];
                double share = steps ? 0 : (time - t0) / (clockS.at(after) - t0);
                result[i] = values.at(before) + share * (values.at(after) - values.at(before));
            }
        }
    }
}
