package fuelwright.ride;

import fuelwright.issue.Issue;
import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** From the figures of a time column to seconds: its unit, by what is stated and by what the step between rows allows; dates and midnight. */
final class TimeUnit {

    private static final double DAY_S = 86_400;

    private final String file;
    private final Layout layout;
    private final RawTable raw;
    private final RideOptions options;
    private final int column;
    private final List<Issue> issues;

    /** @param issues what there is to say is added to it */
    TimeUnit(String file, Layout layout, RawTable raw, RideOptions options, int column, List<Issue> issues) {
        this.file = file;
        this.layout = layout;
        this.raw = raw;
        this.options = options;
        this.column = column;
        this.issues = issues;
    }

    /** The column in seconds. */
    double[] seconds() {
        double[] values = Arrays.copyOf(raw.columns()[column], raw.rows());
        if (layout.forms().get(column).kind() == ColumnForm.Kind.CLOCK) {
            overMidnight(values);
        } else {
            toSeconds(values);
        }
        return values;
    }

    /** Clock times without a date start again at midnight: a step back of more than half a day is that. */
    private void overMidnight(double[] values) {
        double days = 0;
        double previous = Double.NaN;
        for (int i = 0; i < raw.rows(); i++) {
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

    private void toSeconds(double[] values) {
        Heading heading = layout.headings().get(column);
        Optional<Unit> said = options.unitOf(heading).filter(u -> u.dimension() == Dimension.TIME);
        Optional<Unit> stated = heading.unit().filter(u -> u.dimension() == Dimension.TIME);
        if (stated.isEmpty()) {
            stated = Heading.unitOf(layout.forms().get(column).suffix()).filter(u -> u.dimension() == Dimension.TIME);
        }
        if (stated.isEmpty() && heading.words().matches(" (ms|millis|milliseconds) ")) {
            stated = Optional.of(Unit.MILLISECOND);
        }
        double step = TimeSteps.median(values, raw.rows());
        Unit likely = likelyUnit(step, stated.orElse(null));
        Unit unit = said.orElse(likely);
        if (said.isEmpty()) {
            say(step, stated, unit);
        }
        convert(values, unit);
    }

    private void convert(double[] values, Unit unit) {
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

    private void say(double step, Optional<Unit> stated, Unit unit) {
        String gap = Figures.plain(step);
        if (stated.isEmpty() && unit != Unit.SECOND) {
            issues.add(Say.warning(
                    file,
                    layout.headingLine(),
                    column + 1,
                    "time has no unit; rows are " + gap + " apart, so it was read as " + unit.symbol(),
                    "state the unit in the heading, or choose it here"));
        } else if (stated.isPresent() && stated.get() != unit) {
            issues.add(Say.warning(
                    file,
                    layout.headingLine(),
                    column + 1,
                    Say.overruled(
                            stated.get().symbol(),
                            "then rows would be " + Figures.plain(stated.get().toCanonical(step))
                                    + " s apart; it was read as " + unit.symbol()),
                    "check the heading; choose the unit by hand if it was right"));
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
}
