package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.ride.Column;
import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Table;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The readings near one cell as they were logged, before delay and lag are undone: what was read, and what was screened out. Near means
 * that at least half of the interpolation's weight is the cell's.
 *
 * @param readings those that count, at most {@value #MOST}, spread evenly over all of them
 * @param byRide how many readings count, for each ride of the job
 * @param rebased which rides were made with another table, so that their readings are shown as they would have been with this one
 * @param out how many were screened out, by reason
 * @param fittedPercent the cell's fitted shortfall, %
 * @param uncertaintyPercent its standard error, %
 */
public record CellReadings(
        List<Reading> readings,
        List<Integer> byRide,
        Set<Integer> rebased,
        Map<Screen, Integer> out,
        double fittedPercent,
        double uncertaintyPercent) {

    /**
     * One reading.
     *
     * @param ride index of the ride in the job
     * @param timeS when, on the ride's clock
     * @param throttlePerS how fast the throttle opened, % a second; NaN where the ride hasn't got it
     * @param shortfallPercent 100·(λ/target − 1)
     */
    public record Reading(int ride, double timeS, double throttlePerS, double shortfallPercent) {}

    private static final double NEAR = 0.5;
    private static final int MOST = 600;

    public CellReadings {
        readings = List.copyOf(readings);
        byRide = List.copyOf(byRide);
        rebased = Collections.unmodifiableSortedSet(new TreeSet<>(rebased));
        out = Collections.unmodifiableMap(out.isEmpty() ? new EnumMap<>(Screen.class) : new EnumMap<>(out));
    }

    /** The shortfalls of {@link #readings}, %. */
    public List<Double> shortfallsPercent() {
        return readings.stream().map(Reading::shortfallPercent).toList();
    }

    /** How many readings count. */
    public int counting() {
        return byRide.stream().mapToInt(Integer::intValue).sum();
    }

    /** How many readings were screened out. */
    public int screenedOut() {
        return out.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** Which rides' readings were re-based to this table, a sentence; empty where none was. */
    public Optional<String> rebasedWords(Job job) {
        List<String> names =
                rebased.stream().map(r -> job.rides().get(r).ride().name()).toList();
        return names.isEmpty()
                ? Optional.empty()
                : Optional.of(Words.of("strip.rebased", String.join(", ", names), names.size()));
    }

    public static CellReadings of(Analysis analysis, int cell) {
        List<Reading> all = new ArrayList<>();
        List<Integer> byRide = new ArrayList<>();
        Set<Integer> rebased = new TreeSet<>();
        Map<Screen, Integer> out = new EnumMap<>(Screen.class);
        Table table = analysis.proposal().before();
        for (int ride = 0; ride < analysis.screened().size(); ride++) {
            ScreenedRide screened = analysis.screened().get(ride);
            int before = all.size();
            int index = ride;
            LoggedShortfall.of(analysis, ride)
                    .ifPresent(logged -> collect(logged, screened, index, table, cell, all, out));
            byRide.add(all.size() - before);
            if (all.size() > before
                    && LoggedShortfall.otherTable(analysis, ride).isPresent()) {
                rebased.add(ride);
            }
        }
        int step = Math.max(1, (all.size() + MOST - 1) / MOST);
        List<Reading> some = new ArrayList<>();
        for (int i = 0; i < all.size(); i += step) {
            some.add(all.get(i));
        }
        return new CellReadings(
                some,
                byRide,
                rebased,
                out,
                analysis.estimate().shortfallPercent(cell),
                analysis.estimate().uncertaintyPercent(cell));
    }

    private static void collect(
            LoggedShortfall logged,
            ScreenedRide screened,
            int ride,
            Table table,
            int cell,
            List<Reading> all,
            Map<Screen, Integer> out) {
        Column time = screened.ride().timeS();
        Optional<Column> throttle = screened.ride().column(Role.THROTTLE);
        for (int row = 0; row < logged.rows(); row++) {
            if (weight(table, cell, logged.speedRpm(row), logged.load(row)) < NEAR) {
                continue;
            }
            Optional<Screen> reason = screened.reason(row);
            if (reason.isPresent()) {
                out.merge(reason.get(), 1, Integer::sum);
            } else if (logged.has(row)) {
                double rate = throttle.isPresent() ? rate(throttle.get(), time, row) : Double.NaN;
                all.add(new Reading(ride, time.at(row), rate, logged.percent(row)));
            }
        }
    }

    /** Over the rows beside it; NaN at the ends and in gaps. */
    private static double rate(Column values, Column time, int row) {
        if (row == 0 || row == values.size() - 1) {
            return Double.NaN;
        }
        double span = time.at(row + 1) - time.at(row - 1);
        return span > 0 ? (values.at(row + 1) - values.at(row - 1)) / span : Double.NaN;
    }

    /** The cell's share of the interpolation at that place: the product of its shares on both axes. */
    private static double weight(Table table, int cell, double speedRpm, double load) {
        double right = table.speed().position(speedRpm) - table.speedIndex(cell);
        double up = table.load().position(load) - table.loadIndex(cell);
        if (!(Math.abs(right) < 1) || !(Math.abs(up) < 1)) {
            return 0;
        }
        return (1 - Math.abs(right)) * (1 - Math.abs(up));
    }
}
