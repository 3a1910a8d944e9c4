package fuelwright.ride;

import fuelwright.issue.Issue;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntUnaryOperator;

/** Steps from row to row of a clock: the usual one, and gaps. */
final class TimeSteps {

    private TimeSteps() {}

    /** The median of the steps forward, of a sample of rows where there are many; 0 where there is none. */
    static double median(double[] values, int n) {
        double[] steps = new double[Math.min(n, 20_001)];
        int count = 0;
        int stride = Math.max(1, n / 20_000);
        for (int i = 1; i < n && count < steps.length; i += stride) {
            double step = values[i] - values[i - 1];
            if (step > 0) {
                steps[count++] = step;
            }
        }
        Arrays.sort(steps, 0, count);
        return count == 0 ? 0 : steps[count / 2];
    }

    /** Says gaps, and a step that no logger has. */
    static void look(
            String file,
            int headingLine,
            int column,
            double[] timeS,
            int rows,
            List<Integer> segments,
            IntUnaryOperator line,
            List<Issue> issues) {
        double step = median(timeS, rows);
        int gaps = 0;
        double longest = 0;
        int where = 0;
        double limit = Math.max(1, 10 * step);
        int segment = 1;
        for (int i = 1; i < rows; i++) {
            if (segment < segments.size() && segments.get(segment) == i) {
                segment++;
                continue;
            }
            double gap = timeS[i] - timeS[i - 1];
            if (gap > limit) {
                gaps++;
                if (gap > longest) {
                    longest = gap;
                    where = i;
                }
            }
        }
        if (gaps > 0) {
            issues.add(Say.warning(
                    file,
                    line.applyAsInt(where),
                    column + 1,
                    gaps + (gaps == 1 ? " gap" : " gaps") + " in time, the longest " + Figures.plain(longest) + " s",
                    "the gaps are left out; look at the logger if there should be none"));
        }
        if (step > 0 && (step < 0.0005 || step > 20)) {
            issues.add(Say.warning(
                    file,
                    headingLine,
                    column + 1,
                    "rows are " + Figures.plain(step) + " s apart, which no logger does",
                    "check the unit of the time column"));
        }
    }
}
