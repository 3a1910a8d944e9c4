package fuelwright.ride;

import fuelwright.issue.Issue;
import fuelwright.ride.RowLog.Skip;
import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Seconds of every row, from a time column or a sample rate. Rows whose time is missing or doesn't fit its neighbours are dropped and
 * logged; a clock that steps back starts a new segment; stamps shared by several rows are spread over the stamp's own step. Time is
 * never sorted.
 */
final class TimeColumn {

    private static final double DAY_S = 86_400;

    private final String file;
    private final Layout layout;
    private final RawTable raw;
    private final RideOptions options;
    private final List<Issue> issues = new ArrayList<>();
    private final List<Integer> segments = new ArrayList<>();
    private double[] timeS = new double[0];
    private int[] kept = new int[0];
    private int rows;

    private TimeColumn(String file, Layout layout, RawTable raw, RideOptions options) {
        this.file = file;
        this.layout = layout;
        this.raw = raw;
        this.options = options;
    }

    /** Times for {@code raw} by its column {@code column}, or by the sample rate where that is -1. */
    static TimeColumn of(String file, Layout layout, RawTable raw, RideOptions options, int column) {
        TimeColumn time = new TimeColumn(file, layout, raw, options);
        if (column < 0) {
            time.byRate();
        } else {
            time.byColumn(column);
        }
        return time;
    }

    double[] timeS() {
        return timeS;
    }

    int rows() {
        return rows;
    }

    List<Integer> segments() {
        return segments;
    }

    List<Issue> issues() {
        return issues;
    }

    /** The rows of {@code column} that are left, the others dropped in place. The array is modified. */
    double[] keep(double[] column) {
        if (rows != raw.rows()) {
            for (int i = 0; i < rows; i++) {
                column[i] = column[kept[i]];
            }
        }
        return column.length == rows ? column : Arrays.copyOf(column, rows);
    }

    private int line(int row) {
        return raw.lines().line(row == rows ? raw.rows() - 1 : kept.length == 0 ? row : kept[row]);
    }

    private void byRate() {
        rows = raw.rows();
        timeS = new double[rows];
        double rate = options.sampleRateHz().orElseThrow();
        for (int i = 0; i < rows; i++) {
            timeS[i] = i / rate;
        }
        segments.add(0);
        for (int r = 0; r < raw.restarts().size(); r++) {
            addSegment(raw.restarts().get(r));
        }
        issues.add(Say.note(
                file, "no time column: time counted at " + Figures.plain(rate) + " rows a second, as you said"));
    }

    private void addSegment(int row) {
        if (row > segments.get(segments.size() - 1) && row < rows) {
            segments.add(row);
        }
    }

    private void byColumn(int column) {
        double[] values = Arrays.copyOf(raw.columns()[column], raw.rows());
        boolean clock = layout.forms().get(column).kind() == ColumnForm.Kind.CLOCK;
        if (clock) {
            overMidnight(values, raw.rows());
        } else {
            toSeconds(values, column);
        }
        dropMisfits(values);
        findSegments(column);
        spreadShared(column);
        lookAtRate(column);
    }

    /** Clock times without a date start again at midnight: a step back of more than half a day is that. */
    private void overMidnight(double[] values, int n) {
        double days = 0;
        double previous = Double.NaN;
        for (int i = 0; i < n; i++) {
            double value = values[i];
            if (!Double.isNaN(value)) {
                if (previous - value > DAY_S / 2 && layout.baseDay() == 0) {
                    days += DAY_S;
                    issues.add(Say.note(file, "line " + raw.lines().line(i) + ": the clock passed midnight"));
                }
                previous = value;
                values[i] = value + days;
            }
        }
    }

    private void toSeconds(double[] values, int column) {
        Heading heading = layout.headings().get(column);
        Optional<Unit> said = options.unitOf(heading).filter(u -> u.dimension() == Dimension.TIME);
        Optional<Unit> stated = heading.unit().filter(u -> u.dimension() == Dimension.TIME);
        if (stated.isEmpty()) {
            stated = Heading.unitOf(layout.forms().get(column).suffix()).filter(u -> u.dimension() == Dimension.TIME);
        }
        if (stated.isEmpty() && heading.words().matches(" (ms|millis|milliseconds) ")) {
            stated = Optional.of(Unit.MILLISECOND);
        }
        double step = medianStep(values, raw.rows());
        Unit likely = likelyUnit(step, stated.orElse(null));
        Unit unit = said.orElse(likely);
        String gap = Figures.plain(step);
        if (said.isEmpty() && stated.isEmpty() && unit != Unit.SECOND) {
            issues.add(Say.warning(
                    file,
                    layout.headingLine(),
                    column + 1,
                    "time has no unit; rows are " + gap + " apart, so it was read as " + unit.symbol(),
                    "state the unit in the heading, or choose it here"));
        } else if (said.isEmpty() && stated.isPresent() && stated.get() != unit) {
            issues.add(Say.warning(
                    file,
                    layout.headingLine(),
                    column + 1,
                    "the heading says " + stated.get().symbol() + ", but then rows would be "
                            + Figures.plain(stated.get().toCanonical(step)) + " s apart; it was read as "
                            + unit.symbol(),
                    "check the heading; choose the unit by hand if it was right"));
        }
        double base = 0;
        for (int i = 0; i < raw.rows() && base == 0; i++) {
            if (unit.toCanonical(values[i]) > 1e8) {
                base = Math.floor(values[i]);
            } else if (!Double.isNaN(values[i])) {
                break;
            }
        }
        if (base != 0) {
            issues.add(Say.note(file, "time counts from a date; 0 s is the first row's second"));
            base = Math.floor(base * unit.toCanonical(1)) / unit.toCanonical(1);
        }
        for (int i = 0; i < raw.rows(); i++) {
            values[i] = unit.toCanonical(values[i] - base);
        }
    }

    /** The stated unit where rows come 0.05 to 2000 times a second by it; otherwise the one that brings them nearest to that. */
    private static Unit likelyUnit(double step, Unit stated) {
        if (!(step > 0)) {
            return stated == null ? Unit.SECOND : stated;
        }
        if (stated != null) {
            double stepS = stated.toCanonical(step);
            if (stepS >= 0.0005 && stepS <= 20 && !(stated == Unit.SECOND && stepS >= 5 && step == Math.rint(step))) {
                return stated;
            }
            for (Unit unit : List.of(Unit.SECOND, Unit.MILLISECOND, Unit.MICROSECOND)) {
                double other = unit.toCanonical(step);
                if (other >= 0.001 && other <= 2) {
                    return unit;
                }
            }
            return stated;
        }
        return step < 4 ? Unit.SECOND : step < 3000 ? Unit.MILLISECOND : Unit.MICROSECOND;
    }

    private static double medianStep(double[] values, int n) {
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

    private void dropMisfits(double[] values) {
        int n = raw.rows();
        double step = medianStep(values, n);
        double[] good = new double[n];
        int[] from = null;
        int count = 0;
        for (int i = 0; i < n; i++) {
            Skip why = misfit(values, i, count == 0 ? Double.NaN : good[count - 1], step);
            if (why == null) {
                if (from != null) {
                    from[count] = i;
                }
                good[count++] = values[i];
            } else {
                raw.log().skip(why, raw.lines().line(i));
                if (from == null) {
                    from = new int[n];
                    for (int k = 0; k < count; k++) {
                        from[k] = k;
                    }
                }
            }
        }
        rows = count;
        timeS = count == n ? good : Arrays.copyOf(good, count);
        kept = from == null ? new int[0] : Arrays.copyOf(from, count);
    }

    /** A single row that jumps away and whose neighbours run on without it has a wrong stamp. */
    private static Skip misfit(double[] values, int i, double before, double step) {
        double value = values[i];
        if (Double.isNaN(value)) {
            return Skip.NO_TIME;
        }
        if (i + 1 < values.length && !Double.isNaN(before)) {
            double next = values[i + 1];
            boolean neighboursRun = next >= before && next - before <= 5 * step;
            if (neighboursRun && (value < before || value > next && value - next > 10 * step)) {
                return Skip.TIME_OUT_OF_LINE;
            }
        }
        return null;
    }

    private void findSegments(int column) {
        segments.add(0);
        Lines backward = new Lines();
        int restart = 0;
        for (int i = 1; i < rows; i++) {
            int source = kept.length == 0 ? i : kept[i];
            boolean repeated = false;
            while (restart < raw.restarts().size() && raw.restarts().get(restart) <= source) {
                repeated = true;
                restart++;
            }
            boolean back = timeS[i] < timeS[i - 1];
            if (back) {
                backward.add(line(i));
            }
            if (back || repeated) {
                addSegment(i);
            }
        }
        if (backward.count() > 0) {
            issues.add(Say.warning(
                    file,
                    backward.firstLine(),
                    column + 1,
                    "time runs backward at " + backward.words() + "; the log is taken as " + segments.size()
                            + " stretches, in the order of the file",
                    "nothing, if the logger was restarted; otherwise log again with a steady clock"));
        } else if (segments.size() > 1) {
            issues.add(Say.note(file, "the logger was restarted: " + segments.size() + " stretches"));
        }
    }

    private void spreadShared(int column) {
        int shared = 0;
        for (int i = 1; i < rows; i++) {
            shared += timeS[i] == timeS[i - 1] ? 1 : 0;
        }
        if (shared == 0) {
            return;
        }
        double step = medianStep(timeS, rows);
        if (shared * 4L < rows || step <= 0) {
            issues.add(
                    Say.note(file, shared + (shared == 1 ? " row has" : " rows have") + " the time of the row before"));
            return;
        }
        int typical = typicalGroup();
        double[] spread = new double[rows];
        for (int s = 0; s < segments.size(); s++) {
            int to = s + 1 < segments.size() ? segments.get(s + 1) : rows;
            spreadSegment(spread, segments.get(s), to, step, typical);
        }
        timeS = spread;
        issues.add(Say.warning(
                file,
                layout.headingLine(),
                column + 1,
                "time stamps are shared by about " + typical
                        + " rows each; the rows were spread evenly over each stamp's " + Figures.plain(step) + " s",
                "log with a finer clock if the logger can"));
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

    private void lookAtRate(int column) {
        double step = medianStep(timeS, rows);
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
                    line(where),
                    column + 1,
                    gaps + (gaps == 1 ? " gap" : " gaps") + " in time, the longest " + Figures.plain(longest) + " s",
                    "the gaps are left out; look at the logger if there should be none"));
        }
        if (step > 0 && (step < 0.0005 || step > 20)) {
            issues.add(Say.warning(
                    file,
                    layout.headingLine(),
                    column + 1,
                    "rows are " + Figures.plain(step) + " s apart, which no logger does",
                    "check the unit of the time column"));
        }
    }
}
