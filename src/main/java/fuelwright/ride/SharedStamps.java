package fuelwright.ride;

import fuelwright.issue.Issue;
import java.util.Arrays;
import java.util.List;

/**
 * Stamps shared by several rows (a clock that shows whole seconds only), spread over the stamp's own step. A few equal stamps among many
 * others stay as they are.
 */
final class SharedStamps {

    private final double[] timeS;
    private final int rows;
    private final List<Integer> segments;

    /** @param timeS not modified */
    SharedStamps(double[] timeS, int rows, List<Integer> segments) {
        this.timeS = timeS;
        this.rows = rows;
        this.segments = segments;
    }

    /** The times spread, or the same array where there is nothing to spread. What was done is added to {@code issues}. */
    double[] spread(String file, int headingLine, int column, List<Issue> issues) {
        int shared = 0;
        for (int i = 1; i < rows; i++) {
            shared += timeS[i] == timeS[i - 1] ? 1 : 0;
        }
        if (shared == 0) {
            return timeS;
        }
        double step = TimeSteps.median(timeS, rows);
        if (shared * 4L < rows || step <= 0) {
            issues.add(
                    Say.note(file, shared + (shared == 1 ? " row has" : " rows have") + " the time of the row before"));
            return timeS;
        }
        int typical = typicalGroup();
        double[] spread = new double[rows];
        for (int s = 0; s < segments.size(); s++) {
            int to = s + 1 < segments.size() ? segments.get(s + 1) : rows;
            spreadSegment(spread, segments.get(s), to, step, typical);
        }
        issues.add(Say.warning(
                file,
                headingLine,
                column + 1,
                "time stamps are shared by about " + typical
                        + " rows each; the rows were spread evenly over each stamp's " + Figures.plain(step) + " s",
                "log with a finer clock if the logger can"));
        return spread;
    }

    /** How many rows usually share a stamp: the median. */
    private int typicalGroup() {
        int[] sizes = new int[rows];
        int groups = 0;
        for (int i = 0; i < rows; i++) {
            groups += i == 0 || timeS[i] != timeS[i - 1] ? 1 : 0;
            sizes[groups - 1]++;
        }
        Arrays.sort(sizes, 0, groups);
        return sizes[groups / 2];
    }

    /** A first group that is short starts late in its stamp; one that is long began before it (the clock hadn't started). */
    private void spreadSegment(double[] spread, int from, int to, double step, int typical) {
        for (int i = from; i < to; ) {
            int end = i + 1;
            while (end < to && timeS[end] == timeS[i]) {
                end++;
            }
            int size = end - i;
            double span = end < to ? Math.min(step, timeS[end] - timeS[i]) : step;
            boolean first = i == from && end < to;
            double each = span / (first ? typical : end == to ? Math.max(size, typical) : size);
            for (int k = i; k < end; k++) {
                spread[k] = first ? timeS[i] + span - (end - k) * each : timeS[i] + (k - i) * each;
            }
            i = end;
        }
    }
}
