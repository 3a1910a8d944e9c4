package fuelwright.ui.session;

import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Table;
import fuelwright.work.Analysis;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The readings near one cell as they were logged, before delay and lag are undone: what was read, and what was screened out. Near means
 * that at least half of the interpolation's weight is the cell's.
 *
 * @param shortfallsPercent 100·(λ/target − 1) of readings that count, at most {@value #MOST}, spread evenly over all of them
 * @param counting how many readings count
 * @param out how many were screened out, by reason
 */
public record CellReadings(List<Double> shortfallsPercent, int counting, Map<Screen, Integer> out) {

    private static final double NEAR = 0.5;
    private static final int MOST = 600;

    public CellReadings {
        shortfallsPercent = List.copyOf(shortfallsPercent);
        out = Collections.unmodifiableMap(out.isEmpty() ? new EnumMap<>(Screen.class) : new EnumMap<>(out));
    }

    /** How many readings were screened out. */
    public int screenedOut() {
        return out.values().stream().mapToInt(Integer::intValue).sum();
    }

    public static CellReadings of(Analysis analysis, int cell) {
        List<Double> all = new ArrayList<>();
        Map<Screen, Integer> out = new EnumMap<>(Screen.class);
        Table table = analysis.proposal().before();
        Optional<Table> target = analysis.job().targetTable();
        for (ScreenedRide ride : analysis.screened()) {
            target.ifPresent(t ->
                    collect(ride, table, t, new Mixture(false, analysis.job().displayRatio()), cell, all, out));
        }
        int step = (all.size() + MOST - 1) / MOST;
        List<Double> some = new ArrayList<>();
        for (int i = 0; i < all.size(); i += Math.max(1, step)) {
            some.add(all.get(i));
        }
        return new CellReadings(some, all.size(), out);
    }

    private static void collect(
            ScreenedRide screened,
            Table table,
            Table target,
            Mixture mixture,
            int cell,
            List<Double> all,
            Map<Screen, Integer> out) {
        LoggedShortfall.of(screened, table, target, mixture).ifPresent(logged -> {
            for (int row = 0; row < logged.rows(); row++) {
                if (weight(table, cell, logged.speedRpm(row), logged.load(row)) < NEAR) {
                    continue;
                }
                Optional<Screen> reason = screened.reason(row);
                if (reason.isPresent()) {
                    out.merge(reason.get(), 1, Integer::sum);
                } else if (logged.has(row)) {
                    all.add(logged.percent(row));
                }
            }
        });
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
