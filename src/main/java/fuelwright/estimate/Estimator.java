package fuelwright.estimate;

import fuelwright.airflow.BoreForecast;
import fuelwright.airflow.Machine;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.IntFunction;

/**
 * From screened rides to what each cell needs: Gauss–Newton rounds of one evidence pass and one solve each, in which noise, delay, lag,
 * wall film and smoothness are re-estimated. Deterministic.
 */
public final class Estimator {

    /** Rounds on samples of the rides, in which noise, delay and smoothness settle; short rides are sampled whole. */
    private static final int ROUNDS = 4;

    private static final int ROUNDS_ON_ALL = 1;
    private static final int SAMPLED_ROWS = 60_000;
    /** Parts of the rides that are left out in turn. */
    private static final int BLOCKS = 8;
    /** Delays and lags tried before the rounds, as multiples of the usual ones, so that the rounds start on the right slope. */
    private static final double[] DELAY_TRIALS = {0.4, 0.7, 1, 1.5, 2.2, 3.2};

    private static final double[] LAG_TRIALS = {0.5, 1, 2};

    /**
     * A ride with the table that was in the control unit.
     *
     * @param screened the ride
     * @param madeWith the fuel table it was made with, same quantity and same kinds of axes as the table to be corrected
     */
    public record Source(ScreenedRide screened, Table madeWith) {}

    private final Table table;
    private final Table delivered;
    private final List<Readings> readings = new ArrayList<>();
    private final Prior prior;
    private final List<NoiseModel> noise = new ArrayList<>();
    private final int halfBandwidth;
    private final CellOrder order;
    private Crowding crowding;
    private double[] cells;
    private final Set<Part> off;
    private final List<Stretch> all;
    private final List<Stretch> some;
    private double[] nuisances;
    private Smoothness smoothness = Smoothness.usual();

    /**
     * @param table the fuel table that is to be corrected
     * @param targetLambda target, as lambda
     * @param deadTimeMs injector dead time contained in a pulse table, ms
     */
    public Estimator(Table table, Table targetLambda, List<Source> sources, Machine machine, double deadTimeMs) {
        this(table, targetLambda, sources, machine, deadTimeMs, Set.of());
    }

    /** @param off parts to do without, for measuring what they are worth */
    Estimator(
            Table table, Table targetLambda, List<Source> sources, Machine machine, double deadTimeMs, Set<Part> off) {
        this.table = table;
        this.off = Set.copyOf(off);
        this.delivered = table.delivered(deadTimeMs);
        for (Source source : sources) {
            FlowModel flow = FlowModel.of(machine, source.madeWith(), deadTimeMs);
            readings.add(Readings.of(source.screened(), source.madeWith(), targetLambda, flow, deadTimeMs));
            noise.add(NoiseModel.start());
        }
        this.all = Stretch.all(readings);
        this.some = Stretch.some(readings, SAMPLED_ROWS);
        Table first = sources.isEmpty() ? table : sources.get(0).madeWith();
        this.prior = table.load().kind() == Axis.Kind.THROTTLE
                ? BoreForecast.of(machine)
                        .map(f -> Prior.of(f, delivered, first.delivered(deadTimeMs)))
                        .orElseGet(() -> Prior.unknown(table))
                : Prior.unknown(table);
        this.order = new CellOrder(table);
        this.crowding = Crowding.none(table.cells());
        this.cells = prior.means(1);
        this.nuisances = kept(Nuisance.starts());
        if (off.contains(Part.NEIGHBOURS)) {
            smoothness = Smoothness.alone();
        }
        this.halfBandwidth =
                table.cells() <= 1024 ? table.cells() - 1 : 4 * table.load().size();
    }

    /**
     * Runs the whole estimate.
     *
     * @param check called between rounds; may throw to end the work
     */
    public Estimate run(Runnable check) {
        if (readings.stream().anyMatch(r -> r.measured) && !off.contains(Part.DELAY_AND_LAG)) {
            searchDelay();
        }
        for (int round = 0; round < ROUNDS; round++) {
            check.run();
            measureNoise();
            Sums sums = sums(some, nuisances);
            if (round % 2 == 1 && !off.contains(Part.CHOSEN_SMOOTHNESS) && !off.contains(Part.NEIGHBOURS)) {
                smoothness = smoothness.chosen(sums, cells, nuisances, table, prior);
            }
            moveTo(smoothness.posterior(sums, cells, nuisances, table, prior));
        }
        crowding = crowding.scaled((double) rows(all) / rows(some));
        for (int round = 0; round < ROUNDS_ON_ALL; round++) {
            check.run();
            moveTo(smoothness.posterior(sums(all, nuisances), cells, nuisances, table, prior));
        }
        check.run();
        Sums last = sums(all, nuisances);
        Posterior posterior = smoothness.posterior(last, cells, nuisances, table, prior);
        return new Estimate(
                table,
                order.toTable(posterior.cells()),
                order.toTable(posterior.cellUncertainties()),
                order.toTable(last.independentReadings),
                EstimateWords.sensorFit(Nuisance.sensor(nuisances), posterior),
                EstimateWords.remarks(readings, noise, smoothness, crowding, prior));
    }

    private void moveTo(Posterior posterior) {
        cells = posterior.cells();
        nuisances = kept(posterior.nuisances());
    }

    private static long rows(List<Stretch> stretches) {
        return stretches.stream().mapToLong(Stretch::rows).sum();
    }

    /** Plain cell means of the same readings, for comparison. */
    public CellMeans means() {
        CellMeansMaker maker = new CellMeansMaker(delivered);
        readings.forEach(maker::add);
        return maker.made();
    }

    private double[] kept(double[] values) {
        double[] inside = values.clone();
        for (Nuisance nuisance : List.of(Nuisance.FIXED_DELAY, Nuisance.CYCLES, Nuisance.GAS)) {
            inside[nuisance.ordinal()] = Math.max(0, inside[nuisance.ordinal()]);
        }
        int lag = Nuisance.LAG.ordinal();
        inside[lag] = Math.max(0.005, Math.min(1, inside[lag]));
        off.stream().flatMap(p -> p.nuisances().stream()).forEach(n -> inside[n.ordinal()] = 0);
        return inside;
    }

    /** First the delay at the usual lag, then the lag at that delay. Trials don't depend on each other and run side by side. */
    private void searchDelay() {
        nuisances = mostPlausible(
                Arrays.stream(DELAY_TRIALS).mapToObj(d -> scaled(d, 1)).toList());
        double delay = nuisances[Nuisance.CYCLES.ordinal()] / Nuisance.CYCLES.start;
        nuisances = mostPlausible(
                Arrays.stream(LAG_TRIALS).mapToObj(l -> scaled(delay, l)).toList());
    }

    private double[] scaled(double delay, double lag) {
        double[] trial = Nuisance.starts();
        for (Nuisance part : List.of(Nuisance.FIXED_DELAY, Nuisance.CYCLES, Nuisance.GAS)) {
            trial[part.ordinal()] *= delay;
        }
        trial[Nuisance.LAG.ordinal()] *= lag;
        return kept(trial);
    }

    private double[] mostPlausible(List<double[]> trials) {
        double[] deviances = trials.parallelStream()
                .mapToDouble(t -> smoothness
                        .posterior(sums(some, t), cells, t, table, prior)
                        .deviance())
                .toArray();
        int best = 0;
        for (int i = 1; i < deviances.length; i++) {
            best = deviances[i] < deviances[best] ? i : best;
        }
        return trials.get(best);
    }

    /** Stretches side by side, added up in their order, so that the result doesn't depend on which was ready first. */
    private Sums sums(List<Stretch> stretches, double[] around) {
        EvidencePass pass = new EvidencePass(delivered, cells, around);
        List<Sums> each = stretches.parallelStream()
                .map(stretch -> {
                    Sums own = new Sums(table.cells(), halfBandwidth);
                    collect(pass, stretch, row -> own);
                    return own;
                })
                .toList();
        Sums total = each.get(0);
        each.stream().skip(1).forEach(s -> total.add(s, 1));
        return total;
    }

    private void collect(EvidencePass pass, Stretch stretch, IntFunction<Sums> sumsOfRow) {
        Readings ride = readings.get(stretch.ride());
        NoiseModel model = noise.get(stretch.ride());
        int[] silent = off.stream()
                .flatMap(p -> p.nuisances().stream())
                .mapToInt(Nuisance::ordinal)
                .toArray();
        pass.run(ride, stretch.from(), stretch.to(), (row, stepS, residual, film, place, lag, byNuisance) -> {
            if (ride.screened.counts(row)) {
                double independence = model.independence(stepS);
                double weight = weight(model, residual, film, independence);
                if (!off.contains(Part.CROWDING)) {
                    weight *= crowding.factor(place);
                }
                for (int n : silent) {
                    byNuisance[n] = 0;
                }
                sumsOfRow
                        .apply(row)
                        .add(lag.cells(), lag.shares(), lag.count(), byNuisance, residual, weight, independence);
            }
        });
    }

    private double weight(NoiseModel model, double residual, double film, double independence) {
        double sd = model.sd(film);
        double robustness = off.contains(Part.ROBUSTNESS) ? 1 : model.robustness(residual, film);
        return independence * robustness / (sd * sd);
    }

    /**
     * Left-out validation: contiguous blocks of the rides are left out in turn, and the table fitted without them is judged on them. To be
     * called after {@link #run}; delay, noise and smoothness are those of the whole fit.
     */
    public Validation validate() {
        int rows = readings.stream().mapToInt(Readings::size).sum();
        List<Sums> blocks = new ArrayList<>();
        Sums total = new Sums(table.cells(), halfBandwidth);
        for (int b = 0; b < BLOCKS; b++) {
            blocks.add(new Sums(table.cells(), halfBandwidth));
        }
        int[] firstRow = new int[readings.size()];
        for (int i = 1; i < firstRow.length; i++) {
            firstRow[i] = firstRow[i - 1] + readings.get(i - 1).size();
        }
        EvidencePass pass = new EvidencePass(delivered, cells, nuisances);
        for (Stretch stretch : all) {
            int first = firstRow[stretch.ride()];
            collect(pass, stretch, row -> blocks.get((int) ((long) (first + row) * BLOCKS / rows)));
        }
        blocks.forEach(block -> total.add(block, 1));
        double before = 0;
        double after = 0;
        int used = 0;
        for (Sums block : blocks) {
            if (block.readings == 0 || block.readings == total.readings) {
                continue;
            }
            total.add(block, -1);
            Posterior without = smoothness.posterior(total, cells, nuisances, table, prior);
            total.add(block, 1);
            before += block.residualAfter(step(new double[cells.length], cells), new double[Nuisance.COUNT]);
            after += block.residualAfter(step(without.cells(), cells), new double[Nuisance.COUNT]);
            used++;
        }
        return new Validation(
                used, total.readings, 100 * Math.sqrt(before / total.weight), 100 * Math.sqrt(after / total.weight));
    }

    private static double[] step(double[] to, double[] from) {
        double[] step = to.clone();
        for (int i = 0; i < step.length; i++) {
            step[i] -= from[i];
        }
        return step;
    }

    private void measureNoise() {
        Crowding crowded = Crowding.counter(table.cells());
        EvidencePass pass = new EvidencePass(delivered, cells, nuisances);
        List<Residuals> kept =
                readings.stream().map(r -> new Residuals(r.track.timeS)).toList();
        for (Stretch stretch : some) {
            Readings ride = readings.get(stretch.ride());
            NoiseModel model = noise.get(stretch.ride());
            pass.run(ride, stretch.from(), stretch.to(), (row, stepS, residual, film, place, lag, byNuisance) -> {
                if (ride.screened.counts(row)) {
                    kept.get(stretch.ride()).add(residual, film, row, stepS);
                    crowded.count(place, weight(model, residual, film, model.independence(stepS)), residual);
                }
            });
        }
        for (int i = 0; i < readings.size(); i++) {
            double least = readings.get(i).measured ? 2 * nuisances[Nuisance.LAG.ordinal()] : 2;
            noise.set(i, kept.get(i).noise(least));
        }
        crowding = crowded.measured();
    }
}
