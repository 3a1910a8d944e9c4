package fuelwright.ride;

import fuelwright.issue.Issue;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Seconds of every row, from a time column or a sample rate. Rows whose time is missing or doesn't fit its neighbours are dropped and
 * logged; a clock that steps back starts a new segment; stamps shared by several rows are spread over the stamp's own step. Time is
 * never sorted.
 */
final class TimeColumn {

    private final String file;
    private final Layout layout;
    private final RawTable raw;
    private final RideOptions options;
    private final List<Issue> issues = new ArrayList<>();
    private final List<Integer> segments = new ArrayList<>();
    private double[] timeS = new double[0];
    private KeptRows kept = new KeptRows(new double[0], new int[0]);
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
                column[i] = column[kept.source(i)];
            }
        }
        return column.length == rows ? column : Arrays.copyOf(column, rows);
    }

    private int line(int row) {
        return raw.lines().line(row == rows ? raw.rows() - 1 : kept.source(row));
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
        double[] values = new TimeUnit(file, layout, raw, options, column, issues).seconds();
        kept = KeptRows.of(raw, values);
        rows = kept.rows();
        timeS = kept.timeS();
        findSegments(column);
        timeS = new SharedStamps(timeS, rows, segments).spread(file, layout.headingLine(), column, issues);
        TimeSteps.look(file, layout.headingLine(), column, timeS, rows, segments, this::line, issues);
    }

    private void findSegments(int column) {
        segments.add(0);
        Lines backward = new Lines();
        int restart = 0;
        for (int i = 1; i < rows; i++) {
            int source = kept.source(i);
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
}
