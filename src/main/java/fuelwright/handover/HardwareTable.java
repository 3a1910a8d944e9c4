package fuelwright.handover;

import fuelwright.airflow.HighLoad;
import fuelwright.estimate.Proposal;
import fuelwright.job.CellsNow;
import fuelwright.job.HardwareProfile;
import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Bilinear;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The corrected table as the tuning hardware takes it: its quantity, its breakpoints, its steps and its range; and what that costs. The
 * error is that of the delivered fuel against the corrected table, both interpolated as a control unit does.
 *
 * @param table what goes into the hardware, in its orientation
 * @param before what its cells hold now, as far as that is known: where it holds a change or a multiplier what {@link CellsNow} says, where it
 *     holds the fuel the fuel table read off at its breakpoints
 * @param readings how many readings the error is measured on
 * @param addedRmsPercent root mean square of the error over the readings, %; NaN without readings
 * @param addedWorstPercent greatest error at a reading, %, either way; NaN without readings
 * @param leanAtHighLoadPercent how much leaner than corrected it is at worst at high load, %; 0 where it is nowhere leaner
 * @param bounded the cells that the range holds back, and how
 * @param cautions about range, breakpoints and what isn't known of its cells; may be empty
 * @param now where it holds a change or a multiplier, what its cells hold now and what they stand on
 */
public record HardwareTable(
        Table table,
        Table before,
        int readings,
        double addedRmsPercent,
        double addedWorstPercent,
        double leanAtHighLoadPercent,
        Map<Integer, Bound> bounded,
        List<Caution> cautions,
        Optional<CellsNow> now) {

    /** What the hardware's range did to a cell. */
    public enum Bound {
        /** Cut to its greatest figure, at or next to high load. */
        CUT_AT_HIGH_LOAD,
        /** Cut to its greatest figure. */
        CUT,
        /** Lifted to its least figure. */
        LIFTED
    }

    /** Lean by more than this at high load is more than rounding noise, %. */
    private static final double LEAN_PERCENT = 0.05;
    /** A cell that wants less than this of another figure, %, is left as it is. */
    private static final double NO_CHANGE_PERCENT = 0.05;
    /** Added error from which on it is cautioned about, %: what a wideband can tell apart anyway (common practice, no source). */
    private static final double COARSE_RMS_PERCENT = 1;

    public HardwareTable {
        bounded = Map.copyOf(bounded);
        cautions = List.copyOf(cautions);
    }

    /**
     * @param job with hardware, its step in its own unit, and the fuel table that the proposal is for
     * @return empty where the profile is the plain one
     */
    public static Optional<HardwareTable> of(Job job, Proposal proposal, List<ScreenedRide> rides, HighLoad rule) {
        return job.takesTableAsItIs() ? Optional.empty() : Optional.of(new Maker(job, proposal, rule).make(rides));
    }

    /** What its figures stand on, where they are changes or multipliers, in a sentence or two; empty else. */
    public String standsOn() {
        return now.map(StandsOn::words).orElse("");
    }

    /** The added error in a sentence. */
    public String sentence() {
        String where = table.speed().size() + " engine speeds × " + table.load().size() + " loads of "
                + table.quantity().words();
        String error = readings == 0
                ? "no reading to measure the added error on"
                : String.format(
                        Locale.ROOT,
                        "added error %.2f %% over the readings, %.2f %% at worst",
                        addedRmsPercent,
                        addedWorstPercent);
        String lean = leanAtHighLoadPercent > LEAN_PERCENT
                ? String.format(Locale.ROOT, "up to %.2f %% leaner than the corrected table", leanAtHighLoadPercent)
                : "nowhere leaner than the corrected table";
        return where + ": " + error + "; at high load " + lean;
    }

    private static final class Maker {
        private final HardwareProfile profile;
        private final Optional<CellsNow> now;
        private final Proposal proposal;
        private final HighLoad rule;
        private final Quantity quantity;
        private final double step;
        private final double deadTimeMs;
        private final boolean asItIs;
        private final Axis speed;
        private final Axis load;
        private final Resample resample;
        /** Holds the fuel up everywhere where no cell is to be leaned. */
        private final Resample holding;

        private final Map<Integer, Bound> bounded = new TreeMap<>();
        private String worst = "";
        private double worstPercent;

        Maker(Job job, Proposal proposal, HighLoad rule) {
            this.profile = job.hardware();
            this.now = CellsNow.of(job.withFuelTable(proposal.before()));
            this.proposal = proposal;
            this.rule = rule;
            Table before = proposal.before();
            this.quantity = switch (profile.holds()) {
                case VALUE -> before.quantity();
                case PERCENT_CHANGE -> Quantity.CHANGE;
                case MULTIPLIER -> Quantity.MULTIPLIER;
            };
            double told = job.proposal().step();
            this.step = told > 0 ? told : quantity.finestStep();
            this.deadTimeMs = job.proposal().deadTimeMs();
            this.asItIs = profile.keepsCells();
            this.speed = profile.speed().orElse(before.speed());
            this.load = profile.load().orElse(before.load());
            this.resample = resample(rule);
            this.holding =
                    proposal.settings().leanNoCell() ? resample((rpm, throttle, kpa, barometer) -> true) : resample;
        }

        private Resample resample(HighLoad heldUp) {
            return new Resample(
                    now.map(CellsNow::beneath).orElse(null),
                    proposal.corrected().delivered(deadTimeMs),
                    speed,
                    load,
                    heldUp);
        }

        HardwareTable make(List<ScreenedRide> rides) {
            RidePoints ridden = RidePoints.of(rides, load.kind(), rule);
            boolean sameAxes = speed.equals(proposal.before().speed())
                    && load.equals(proposal.before().load());
            double[] figures = sameAxes ? resample.plain() : holding.fit(ridden);
            double[] cells = new double[figures.length];
            boolean[] stays = stays();
            for (int k = 0; k < cells.length; k++) {
                double exact = asItIs ? proposal.corrected().at(k) : cell(figures[k]);
                double whole = asItIs ? exact : rounded(exact, k);
                cells[k] = stays[k] ? now.orElseThrow().figures().at(k) : withinRange(whole, k);
                figures[k] = figure(cells[k]);
            }
            double sum = 0;
            double most = 0;
            double lean = 0;
            for (int r = 0; r < ridden.size(); r++) {
                double off = resample.delivered(figures, ridden.speedRpm(r), ridden.load(r)) - 1;
                sum += off * off;
                most = Math.max(most, Math.abs(off));
                lean = ridden.isHigh(r) ? Math.max(lean, 1 / (1 + off) - 1) : lean;
            }
            for (int p = 0; p < resample.highPoints(); p++) {
                lean = Math.max(lean, 1 / resample.atHighPoint(figures, p) - 1);
            }
            int n = ridden.size();
            double rmsPercent = n == 0 ? Double.NaN : 100 * Math.sqrt(sum / n);
            Table.Orientation way =
                    profile.orientation().orElse(proposal.before().orientation());
            Table table = new Table(quantity, speed, load, cells, List.of(), way);
            return new HardwareTable(
                    table,
                    table.withValues(held()),
                    n,
                    rmsPercent,
                    n == 0 ? Double.NaN : 100 * most,
                    lean < 1e-7 ? 0 : 100 * lean,
                    bounded,
                    cautions(rmsPercent, 100 * lean),
                    now);
        }

        /** Cells that hold a change or a multiplier and keep it, because no cell of the fuel table that goes into them is to change. */
        private boolean[] stays() {
            boolean[] stays = new boolean[speed.size() * load.size()];
            if (now.isEmpty()) {
                return stays;
            }
            Arrays.fill(stays, true);
            Table fuel = proposal.before();
            int[] near = new int[4];
            double[] weights = new double[4];
            for (int cell = 0; cell < fuel.cells(); cell++) {
                if (changes(cell)) {
                    Bilinear.locate(speed, load, fuel.speedAt(cell), fuel.loadAt(cell), near, weights);
                    for (int k = 0; k < near.length; k++) {
                        stays[near[k]] &= !(weights[k] > 0);
                    }
                }
            }
            for (int k = 0; k < stays.length; k++) {
                Bilinear.locate(
                        fuel.speed(),
                        fuel.load(),
                        speed.at(k % speed.size()),
                        load.at(k / speed.size()),
                        near,
                        weights);
                for (int c = 0; c < near.length; c++) {
                    stays[k] &= !(weights[c] > 0 && changes(near[c]));
                }
            }
            return stays;
        }

        private boolean changes(int cell) {
            return Math.abs(proposal.cell(cell).changePercent()) >= NO_CHANGE_PERCENT;
        }

        /** What the cells hold now. */
        private double[] held() {
            if (now.isPresent()) {
                return now.get().figures().toArray();
            }
            Table before = proposal.before();
            Table fuel = before.delivered(deadTimeMs);
            double[] held = new double[speed.size() * load.size()];
            for (int k = 0; k < held.length; k++) {
                held[k] = asItIs
                        ? before.at(k)
                        : times(Math.rint(
                                cell(fuel.value(speed.at(k % speed.size()), load.at(k / speed.size()))) / step));
            }
            return held;
        }

        private double cell(double figure) {
            return switch (profile.holds()) {
                case VALUE -> quantity.fromDelivered(figure, deadTimeMs);
                case PERCENT_CHANGE -> 100 * (figure - 1);
                case MULTIPLIER -> figure;
            };
        }

        private double figure(double cell) {
            return switch (profile.holds()) {
                case VALUE -> quantity.delivered(cell, deadTimeMs);
                case PERCENT_CHANGE -> 1 + cell / 100;
                case MULTIPLIER -> cell;
            };
        }

        /** Up where it holds up the fuel, to nearest elsewhere. */
        private double rounded(double value, int cell) {
            double steps = value / step;
            return times(holding.isHeldUp(cell) ? Math.ceil(steps - 1e-7) : Math.rint(steps));
        }

        private double times(double steps) {
            return BigDecimal.valueOf(steps).multiply(BigDecimal.valueOf(step)).doubleValue();
        }

        private double withinRange(double value, int cell) {
            double least =
                    Double.isInfinite(profile.least()) ? profile.least() : times(Math.ceil(profile.least() / step));
            double most = Double.isInfinite(profile.most()) ? profile.most() : times(Math.floor(profile.most() / step));
            double kept = Math.min(Math.max(value, least), most);
            if (kept > value) {
                bounded.put(cell, Bound.LIFTED);
            } else if (kept < value) {
                bounded.put(cell, resample.isHeldUp(cell) ? Bound.CUT_AT_HIGH_LOAD : Bound.CUT);
                double percent = 100 * (figure(value) / figure(kept) - 1);
                if (percent > worstPercent) {
                    worstPercent = percent;
                    worst = String.format(
                            Locale.ROOT,
                            "%s rpm, %s %s wants %s and gets %s, %.1f %% lean",
                            Figures.trimmed(speed.at(cell % speed.size()), 1),
                            Figures.trimmed(load.at(cell / speed.size()), 1),
                            load.kind().unit().symbol(),
                            Figures.trimmed(value, 4),
                            Figures.trimmed(kept, 4),
                            percent);
                }
            }
            return kept;
        }

        private List<Caution> cautions(double rmsPercent, double leanPercent) {
            List<Caution> out = new ArrayList<>();
            now.flatMap(StandsOn::untold).ifPresent(out::add);
            int loweredHigh = count(Bound.CUT_AT_HIGH_LOAD);
            int lowered = loweredHigh + count(Bound.CUT);
            int lifted = count(Bound.LIFTED);
            if (lowered > 0) {
                boolean stop = loweredHigh > 0;
                out.add(
                        caution(
                                "hardware-range",
                                stop ? Caution.Level.STOP : Caution.Level.CHECK,
                                stop
                                        ? "The hardware can't hold the fuel that high load needs"
                                        : "The hardware can't hold all the fuel that is needed",
                                counted(lowered) + " of the hardware's table had to be cut to its greatest figure, "
                                        + loweredHigh + " of them at or next to high load. Worst: " + worst,
                                "Give the hardware room for more fuel before loading the engine there: it stays lean by as much"));
            }
            if (lifted > 0) {
                out.add(caution(
                        "hardware-range-rich",
                        Caution.Level.CHECK,
                        "The hardware can't take away all the fuel that is too much",
                        counted(lifted) + " of the hardware's table had to be lifted to its least figure",
                        "Expect it to be richer there than corrected"));
            }
            if (lowered == 0 && leanPercent > LEAN_PERCENT) {
                out.add(caution(
                        "hardware-breakpoints",
                        leanPercent > 1 ? Caution.Level.STOP : Caution.Level.CHECK,
                        "The hardware's table is leaner than the corrected one at high load",
                        String.format(Locale.ROOT, "Between its breakpoints it is up to %.2f %% leaner", leanPercent),
                        "Give the hardware breakpoints nearer to those of the fuel table"));
            }
            if (rmsPercent > COARSE_RMS_PERCENT) {
                out.add(caution(
                        "hardware-coarse",
                        Caution.Level.CHECK,
                        "The hardware's table follows the corrected one only coarsely",
                        String.format(Locale.ROOT, "It adds an error of %.1f %% over the readings", rmsPercent),
                        "Use finer steps, or breakpoints nearer to where the engine is ridden"));
            }
            return out;
        }

        private int count(Bound bound) {
            return Collections.frequency(bounded.values(), bound);
        }

        private static String counted(int cells) {
            return cells == 1 ? "1 cell" : cells + " cells";
        }

        private static Caution caution(String rule, Caution.Level level, String title, String what, String todo) {
            return new Caution(rule, level, title, what, todo, new TreeSet<>(), List.of());
        }
    }
}
