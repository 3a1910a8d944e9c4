package fuelwright.estimate;

import fuelwright.airflow.BoreForecast;
import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * From screened rides to what each cell needs: Gauss–Newton rounds of one evidence pass and one solve each, in which noise, delay, lag,
 * wall film and smoothness are re-estimated. Deterministic.
 */
public final class Estimator {

    /** Rounds on samples of the rides, in which noise, delay and smoothness settle; short rides are sampled whole. */
    private static final int ROUNDS = 4;

    /** Difference of deviance by which the rides must speak against the forecast: 10 is very strong evidence (Kass and Raftery, J. Am. Stat. Assoc. 90 (1995) 773). */
    private static final double CONTRADICTED = 10;
    /** Share of the forecast that the rides bear out below which they contradict it (common practice, no source). */
    private static final double LEAST_TRUST = 0.4;

    private static final int ROUNDS_ON_ALL = 1;
    private static final int SAMPLED_ROWS = 60_000;
    /** Rows on which delays and lags are tried. */
    private static final int TRIED_ROWS = 30_000;
    /** Rounds in which what was found by trial stays, so that cells and noise settle around it first. */
    private static final int HELD_ROUNDS = 2;

    /** Delays tried for the picture: so many, evenly, in steps of so much, at least this far, at most so many times the one found. */
    private static final int PROFILED = 16;

    private static final double ROUND_DELAY_S = 0.005;
    private static final double LEAST_TRIED_S = 0.15;
    private static final double MOST_TRIED = 2.4;

    /** Share of the whole time after which delays and lags are tried, samples settled, and both passes over all rows done. */
    private static final double DELAY_SHARE = 0.1;

    private static final double SEARCH_SHARE = 0.3;
    private static final double ALL_SHARE = 0.6;
    private static final double SOLVED_SHARE = 0.95;

    /**
     * A ride with the table that was in the control unit.
     *
     * @param screened the ride
     * @param madeWith the fuel table it was made with, same quantity and same kinds of axes as the table to be corrected
     */
    public record Source(ScreenedRide screened, Table madeWith) {}

    private final Table table;
    private final Table delivered;
    private final OptionalDouble redlineRpm;
    private final List<Readings> readings = new ArrayList<>();
    private final Function<Table, Prior> priors;
    private Prior prior;
    private final List<NoiseModel> noise = new ArrayList<>();
    private final int halfBandwidth;
    private final CellOrder order;
    private Crowding crowding;
    private double[] cells;
    private final Set<Part> off;
    private final List<List<Stretch>> all;
    private final List<List<Stretch>> some;
    private final List<List<Stretch>> few;
    /** Evidence by what is left out together, and that again by ride. */
    private List<Sums> blocks = List.of();

    private List<Chunk> chunks = List.of();
    private Pace pace = Pace.unheard();
    /** What the last sums say. */
    private Posterior posterior;

    private double[] nuisances;
    private boolean forecastLeftOut;
    private Smoothness smoothness = Smoothness.usual();
    /** What the last sums of a run were made around, of this or of the estimator that this one follows; null before any has ended. */
    private State ended;

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
        this.redlineRpm = machine.redlineRpm();
        for (Source source : sources) {
            FlowModel flow = FlowModel.of(machine, source.madeWith(), deadTimeMs);
            readings.add(Readings.of(source.screened(), source.madeWith(), targetLambda, flow, deadTimeMs));
            noise.add(NoiseModel.start());
        }
        this.all = Stretch.all(readings);
        this.some = Stretch.some(readings, SAMPLED_ROWS);
        this.few = Stretch.some(readings, TRIED_ROWS);
        Table first = (sources.isEmpty() ? table : sources.get(0).madeWith()).delivered(deadTimeMs);
        Optional<BoreForecast> forecast =
                table.load().kind() == Axis.Kind.THROTTLE ? BoreForecast.of(machine) : Optional.empty();
        this.priors = of -> {
            Prior all = forecast.map(f -> Prior.of(f, of, first)).orElseGet(() -> Prior.unknown(of));
            return off.contains(Part.UNEVENNESS) ? all.withoutUnevenness() : all;
        };
        this.prior = priors.apply(delivered);
        this.order = new CellOrder(table);
        this.crowding = Crowding.none(table.cells());
        this.cells = prior.means(1);
        this.nuisances = kept(Nuisance.starts());
        if (off.contains(Part.NEIGHBOURS)) {
            smoothness = Smoothness.alone();
        }
        this.halfBandwidth = halfBandwidth(table);
    }

    /** The same rides for a coarser table. */
    private Estimator(Estimator fine) {
        this.table = CoarseTable.of(fine.delivered);
        this.off = fine.off;
        this.delivered = table;
        this.redlineRpm = fine.redlineRpm;
        this.pace = fine.pace;
        this.readings.addAll(fine.readings);
        this.noise.addAll(fine.noise);
        this.all = fine.all;
        this.some = fine.some;
        this.few = fine.few;
        this.priors = fine.priors;
        this.prior = priors.apply(table);
        this.order = new CellOrder(table);
        this.crowding = Crowding.none(table.cells());
        this.cells = prior.means(1);
        this.nuisances = fine.nuisances;
        this.smoothness = fine.smoothness;
        this.halfBandwidth = halfBandwidth(table);
    }

    /** The same rides with other readings kept out. */
    private Estimator(Estimator like, List<Source> sources) {
        this.table = like.table;
        this.off = like.off;
        this.delivered = like.delivered;
        this.redlineRpm = like.redlineRpm;
        for (int i = 0; i < sources.size(); i++) {
            readings.add(like.readings.get(i).rescreened(sources.get(i).screened()));
            noise.add(NoiseModel.start());
        }
        this.all = like.all;
        this.some = like.some;
        this.few = like.few;
        this.priors = like.priors;
        this.prior = priors.apply(delivered);
        this.order = like.order;
        this.crowding = Crowding.none(table.cells());
        this.cells = prior.means(1);
        this.nuisances = kept(Nuisance.starts());
        this.smoothness = off.contains(Part.NEIGHBOURS) ? Smoothness.alone() : Smoothness.usual();
        this.halfBandwidth = like.halfBandwidth;
        this.ended = like.ended;
    }

    /**
     * An estimator as new for the same rides, tables and machine, where only what counts has changed: what was worked out of the rides themselves
     * is shared, and {@link #first} starts from where this one ended. Holds on to no sums.
     *
     * @param sources the same rides in the same order
     */
    public Estimator rescreened(List<Source> sources) {
        if (sources.size() != readings.size()) {
            throw new IllegalArgumentException("sources: " + sources.size() + " must be " + readings.size());
        }
        return new Estimator(this, sources);
    }

    private static int halfBandwidth(Table table) {
        return CoarseTable.isNeeded(table) ? 2 * table.load().size() : table.cells() - 1;
    }

    /**
     * Runs the whole estimate.
     *
     * @param check called often, by this thread; may throw to end the work
     */
    public Estimate run(Runnable check) {
        return run(new Pace(share -> check.run()));
    }

    /**
     * Runs the whole estimate.
     *
     * @param heard goes from 0 to 1 meanwhile; it is checked by what is called afterwards as well
     */
    public Estimate run(Pace heard) {
        pace = heard;
        if (CoarseTable.isNeeded(table)) {
            startCoarse();
        } else {
            search();
            weighForecast();
        }
        crowding = crowding.scaled((double) rows(all) / rows(some));
        double[] doubts = new double[table.cells()];
        for (int round = 0; round < ROUNDS_ON_ALL; round++) {
            pace.next(SEARCH_SHARE + (round + 1) * (ALL_SHARE - SEARCH_SHARE) / ROUNDS_ON_ALL, steps(all));
            Posterior settled = smoothness.posterior(sums(all, nuisances), cells, nuisances, table, prior);
            doubts = settled.cellUncertainties();
            moveTo(settled);
        }
        pace.next(SOLVED_SHARE, steps(all));
        TipInMaker tipIn = new TipInMaker(readings, noise, nuisances, doubts);
        collectBlocks(tipIn);
        pace.next(1, 1);
        Sums last = total(blocks);
        posterior = smoothness.posterior(last, cells, nuisances, table, prior);
        pace.step();
        Estimate made = made(last, tipIn.made(), disagreement());
        ended = state();
        return made;
    }

    private Estimate made(Sums last, TipIn tipIn, Disagreement disagreement) {
        return new Estimate(
                table,
                order.toTable(posterior.cells()),
                order.toTable(posterior.cellUncertainties()),
                order.toTable(disagreement.uncertainties()),
                order.toTable(last.independentReadings),
                order.toTable(leftOver(last, disagreement.richest())),
                order.toTable(ownReadings(last)),
                EstimateWords.sensorFit(Nuisance.sensor(nuisances), posterior),
                tipIn,
                forecastLeftOut || prior.isForecast() && smoothness.trust() < LEAST_TRUST,
                EstimateWords.remarks(readings, noise, smoothness, crowding, prior, posterior));
    }

    private Disagreement disagreement() {
        double calmest = noise.stream().mapToDouble(NoiseModel::still).min().orElse(0);
        double soonest =
                noise.stream().mapToDouble(NoiseModel::correlationS).min().orElse(0);
        List<Disagreement.Heard> heard = chunks.stream()
                .map(c -> new Disagreement.Heard(c.sums, noise.get(c.ride).correlationS() / soonest))
                .toList();
        return new Disagreement(heard, step(posterior.cells(), cells), calmest, crowding.misfit());
    }

    /** A part of one ride. */
    private record Chunk(int ride, Sums sums) {}

    /**
     * A first answer for rides of which other readings count than when a run ended: all readings weighed anew, cells, delay, lag and the rest
     * solved for with their uncertainties, by the last step of that run. Noise, crowding and smoothness stay as they were, and so does what was
     * seen of throttle openings: where no other reading counts, it is the same answer. What {@link #run} gives afterwards is the same as without.
     *
     * @param before what that run gave
     * @param heard goes from 0 to 1 meanwhile
     */
    public Estimate first(Estimate before, Pace heard) {
        if (ended == null) {
            throw new IllegalStateException("no run has ended");
        }
        State start = state();
        pace = heard;
        take(ended);
        pace.next(1, steps(all));
        Sums sums = sums(all, nuisances);
        posterior = smoothness.posterior(sums, cells, nuisances, table, prior);
        Estimate first = made(sums, before.tipIn(), Disagreement.asIn(before, order));
        posterior = null;
        take(start);
        return first;
    }

    /**
     * The mean residual of the readings at each cell after the last step, less its standard error, where that is lean; at least what the
     * leanest part of rides that disagree says.
     */
    private double[] leftOver(Sums last, double[] least) {
        double[] residuals = residuals(last);
        double[] weights = weights(last);
        double[] left = new double[cells.length];
        for (int c = 0; c < left.length; c++) {
            left[c] = weights[c] > 0 ? Math.max(least[c], residuals[c] / weights[c] - 1 / Math.sqrt(weights[c])) : 0;
        }
        return left;
    }

    /** What the cell got, and the mean residual of its readings, ln; NaN without readings. */
    private double[] ownReadings(Sums last) {
        double[] residuals = residuals(last);
        double[] weights = weights(last);
        double[] own = posterior.cells();
        for (int c = 0; c < own.length; c++) {
            own[c] = weights[c] > 0 ? own[c] + residuals[c] / weights[c] : Double.NaN;
        }
        return own;
    }

    private double[] residuals(Sums last) {
        return last.cellResidualAfter(step(posterior.cells(), cells), step(posterior.nuisances(), nuisances));
    }

    private double[] weights(Sums last) {
        double[] ones = new double[cells.length];
        Arrays.fill(ones, 1);
        return last.cellCell.times(ones);
    }

    /** Settles where trials say that readings are as late; where that would be unusual, from the usual as well, and the better is kept. */
    private void search() {
        pace.next(DELAY_SHARE, steps(few) * Lateness.TRIALS);
        if (readings.stream().noneMatch(r -> r.measured) || off.contains(Part.DELAY_AND_LAG)) {
            settle(false, SEARCH_SHARE);
            return;
        }
        State start = state();
        double[] found = mostPlausible(Lateness.lags(mostPlausible(Lateness.delays())));
        if (!Lateness.isUnusual(found)) {
            nuisances = found;
            settle(true, SEARCH_SHARE);
            return;
        }
        settle(true, (DELAY_SHARE + SEARCH_SHARE) / 2);
        State usual = state();
        take(start);
        nuisances = found;
        prior = prior.withNuisances(Lateness.spreads(found));
        settle(true, SEARCH_SHARE);
        State unusual = state();
        NoiseModel[] calmer = new NoiseModel[noise.size()];
        for (int i = 0; i < calmer.length; i++) {
            calmer[i] = usual.noise.get(i).still() < unusual.noise.get(i).still()
                    ? usual.noise.get(i)
                    : unusual.noise.get(i);
        }
        take(misfitOf(usual, calmer) <= misfitOf(unusual, calmer) ? usual : unusual);
    }

    /** Leaves the forecast out if the rides contradict it: what they say is then far likelier where nothing was known of the change. */
    private void weighForecast() {
        if (!prior.isForecast() || !smoothness.doubtsForecast()) {
            return;
        }
        Sums sums = sums(some, nuisances);
        Prior without = prior.withoutForecast();
        Smoothness free = Smoothness.usual().chosen(sums, cells, nuisances, table, without, pace);
        forecastLeftOut = free.deviance(sums, cells, nuisances, table, without) + CONTRADICTED
                < smoothness.deviance(sums, cells, nuisances, table, prior);
        if (forecastLeftOut) {
            prior = without;
            smoothness = free;
            moveTo(smoothness.posterior(sums, cells, nuisances, table, prior));
        }
    }

    /** Rounds on samples until noise, delay, lag and smoothness have settled. */
    private void settle(boolean measured, double share) {
        double from = share - (SEARCH_SHARE - DELAY_SHARE);
        for (int round = 0; round < ROUNDS; round++) {
            pace.next(Math.max(DELAY_SHARE, from + (round + 1) * (share - from) / ROUNDS), 2 * steps(some));
            measureNoise();
            Sums sums = sums(some, nuisances);
            boolean held = measured && round < HELD_ROUNDS;
            if (held) {
                sums.without(Nuisance.LATENESS);
            }
            if (round % 2 == 1 && !off.contains(Part.CHOSEN_SMOOTHNESS) && !off.contains(Part.NEIGHBOURS)) {
                smoothness = smoothness.chosen(sums, cells, nuisances, table, prior, pace);
            }
            double[] before = nuisances;
            moveTo(smoothness.posterior(sums, cells, nuisances, table, prior));
            if (held) {
                for (Nuisance nuisance : Nuisance.LATENESS) {
                    nuisances[nuisance.ordinal()] = before[nuisance.ordinal()];
                }
            } else if (measured) {
                // What looked unusually late at first may be usual after all.
                prior = prior.withNuisances(Lateness.spreads(nuisances));
            }
        }
    }

    /** Where a search stands. */
    private record State(
            double[] cells,
            double[] nuisances,
            Prior prior,
            List<NoiseModel> noise,
            Smoothness smoothness,
            Crowding crowding) {}

    private State state() {
        return new State(cells, nuisances, prior, List.copyOf(noise), smoothness, crowding);
    }

    private void take(State state) {
        cells = state.cells;
        nuisances = state.nuisances;
        prior = state.prior;
        smoothness = state.smoothness;
        crowding = state.crowding;
        for (int i = 0; i < noise.size(); i++) {
            noise.set(i, state.noise.get(i));
        }
    }

    /** How badly a state explains the rides, judged by noise that others are judged by too. */
    private double misfitOf(State state, NoiseModel... common) {
        take(state);
        for (int i = 0; i < common.length; i++) {
            noise.set(i, common[i]);
        }
        crowding = Crowding.none(table.cells());
        smoothness = Smoothness.usual();
        return misfitHeld(some, nuisances);
    }

    /** What a coarser table settles, and one round from there. */
    private void startCoarse() {
        Estimator coarse = new Estimator(this);
        coarse.search();
        coarse.weighForecast();
        forecastLeftOut = coarse.forecastLeftOut;
        prior = forecastLeftOut ? prior.withoutForecast() : prior;
        for (int i = 0; i < noise.size(); i++) {
            noise.set(i, coarse.noise.get(i));
        }
        nuisances = coarse.nuisances;
        prior = prior.withNuisances(coarse.prior.nuisanceSpreads());
        smoothness = coarse.smoothness;
        cells = CoarseTable.refined(coarse.cells, coarse.table, table);
        pace.check();
        measureNoise();
        moveTo(smoothness.posterior(sums(some, nuisances), cells, nuisances, table, prior));
    }

    private void moveTo(Posterior posterior) {
        cells = posterior.cells();
        nuisances = kept(posterior.nuisances());
    }

    /** Steps of the pace in one pass over these parts. */
    private static long steps(List<List<Stretch>> parts) {
        return rows(parts) / EvidencePass.STEP_ROWS;
    }

    private static long rows(List<List<Stretch>> parts) {
        return parts.stream().flatMap(List::stream).mapToLong(Stretch::rows).sum();
    }

    /** Plain cell means of the same readings, for comparison. May be asked for beside everything else. */
    public CellMeans means() {
        CellMeansMaker maker = new CellMeansMaker(delivered);
        readings.forEach(maker::add);
        return maker.made();
    }

    private double[] kept(double[] values) {
        double[] inside = values.clone();
        for (Nuisance nuisance : Nuisance.DELAYS) {
            inside[nuisance.ordinal()] = Math.max(0, inside[nuisance.ordinal()]);
        }
        int lag = Nuisance.LAG.ordinal();
        inside[lag] = Math.max(0.005, Math.min(1, inside[lag]));
        off.stream().flatMap(p -> p.nuisances().stream()).forEach(n -> inside[n.ordinal()] = 0);
        return inside;
    }

    /** Trials don't depend on each other and run side by side. */
    private double[] mostPlausible(List<double[]> trials) {
        double[] misfits =
                trials.parallelStream().mapToDouble(t -> misfitHeld(few, t)).toArray();
        int best = 0;
        for (int i = 1; i < misfits.length; i++) {
            best = misfits[i] < misfits[best] ? i : best;
        }
        return trials.get(best);
    }

    /** How badly delay and lag explain these parts of the rides, held where they are. */
    private double misfitHeld(List<List<Stretch>> parts, double[] around) {
        Sums held = sums(parts, around).without(Nuisance.LATENESS);
        return Lateness.penalty(around)
                + smoothness.posterior(held, cells, around, table, prior).misfit();
    }

    private Sums sums(List<List<Stretch>> parts, double[] around) {
        return total(sumsOfParts(parts, around));
    }

    /** Parts side by side; what each gives doesn't depend on how many cores share them. */
    private List<Sums> sumsOfParts(List<List<Stretch>> parts, double[] around) {
        EvidencePass pass = new EvidencePass(delivered, cells, around, pace);
        return parts.parallelStream()
                .map(part -> {
                    Sums own = new Sums(table.cells(), halfBandwidth);
                    part.forEach(stretch -> collect(pass, stretch, row -> own));
                    return own;
                })
                .toList();
    }

    /** All rides, by the block that is to be left out together, and by ride within it. */
    private void collectBlocks(TipInMaker tipIn) {
        EvidencePass pass = new EvidencePass(delivered, cells, nuisances, pace);
        long rows = readings.stream().mapToLong(Readings::size).sum();
        long[] first = new long[readings.size()];
        for (int i = 1; i < first.length; i++) {
            first[i] = first[i - 1] + readings.get(i - 1).size();
        }
        List<Sums[]> parts = all.parallelStream()
                .map(part -> {
                    Sums[] own = new Sums[Stretch.PARTS * readings.size()];
                    for (Stretch stretch : part) {
                        collect(pass, stretch, tipIn.of(stretch.ride()), row -> {
                            int block = (int) ((first[stretch.ride()] + row) * Stretch.PARTS / rows);
                            int chunk = stretch.ride() * Stretch.PARTS + block;
                            if (own[chunk] == null) {
                                own[chunk] = new Sums(table.cells(), halfBandwidth);
                            }
                            return own[chunk];
                        });
                    }
                    return own;
                })
                .toList();
        chunks = new ArrayList<>();
        blocks = new ArrayList<>();
        for (int b = 0; b < Stretch.PARTS; b++) {
            List<Sums> block = new ArrayList<>();
            for (int i = b; i < readings.size() * Stretch.PARTS; i += Stretch.PARTS) {
                int chunk = i;
                List<Sums> here = parts.stream()
                        .map(p -> p[chunk])
                        .filter(Objects::nonNull)
                        .toList();
                if (!here.isEmpty()) {
                    Sums sums = here.size() == 1 ? here.get(0) : total(here);
                    block.add(sums);
                    chunks.add(new Chunk(i / Stretch.PARTS, sums));
                }
            }
            blocks.add(block.size() == 1 ? block.get(0) : total(block));
        }
    }

    /** Added up in order, so that the result doesn't depend on which was ready first. */
    private Sums total(List<Sums> parts) {
        Sums total = new Sums(table.cells(), halfBandwidth);
        parts.forEach(part -> total.add(part, 1));
        return total;
    }

    private void collect(EvidencePass pass, Stretch stretch, IntFunction<Sums> sumsOfRow) {
        collect(pass, stretch, EvidencePass.Sink.NONE, sumsOfRow);
    }

    /** @param witness is told every reading, whether it counts or not */
    private void collect(EvidencePass pass, Stretch stretch, EvidencePass.Sink witness, IntFunction<Sums> sumsOfRow) {
        Readings ride = readings.get(stretch.ride());
        NoiseModel model = noise.get(stretch.ride());
        boolean crowded = !off.contains(Part.CROWDING);
        int[] silent = off.stream()
                .flatMap(p -> p.nuisances().stream())
                .mapToInt(Nuisance::ordinal)
                .toArray();
        pass.run(ride, stretch, (row, burntS, stepS, residual, film, place, lag, byNuisance) -> {
            witness.reading(row, burntS, stepS, residual, film, place, lag, byNuisance);
            if (ride.screened.counts(row)) {
                double independence = model.independence(stepS);
                double weight = independence * worth(model, residual, film);
                if (crowded) {
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

    /** Robust weight of an independent reading: Huber's over its variance. */
    private double worth(NoiseModel model, double residual, double film) {
        double sd = model.sd(film);
        double robustness = off.contains(Part.ROBUSTNESS) ? 1 : NoiseModel.robustness(Math.abs(residual) / sd);
        return robustness / (sd * sd);
    }

    /**
     * Left-out validation: contiguous blocks of the rides are left out in turn, and the table fitted without them is judged on them. To be
     * called after {@link #run}, whose last sums it uses; delay, noise and smoothness are those of the whole fit.
     */
    public Validation validate() {
        Sums total = total(blocks);
        LeftOut leftOut = new LeftOut(order);
        List<Sums> left = blocks.stream()
                .filter(b -> b.readings > 0 && b.readings < total.readings)
                .toList();
        List<double[]> without = left.parallelStream()
                .map(block -> {
                    pace.check();
                    Sums rest = total(List.of(total));
                    rest.add(block, -1);
                    return smoothness
                            .posterior(rest, cells, nuisances, table, prior)
                            .cells();
                })
                .toList();
        double[] asRidden = step(new double[cells.length], cells);
        for (int b = 0; b < left.size(); b++) {
            leftOut.add(left.get(b), asRidden, step(without.get(b), cells));
        }
        return leftOut.made(total);
    }

    /**
     * Root-mean-square mixture error of each ride with the table that it was made with, weighted as in {@link #validate}, %; NaN where none of
     * its readings counts. To be called after {@link #run}. One pass over the rides.
     */
    public List<Double> rideErrorsPercent() {
        EvidencePass pass = new EvidencePass(delivered, cells, nuisances, pace);
        List<Double> errors = new ArrayList<>();
        for (int ride = 0; ride < readings.size(); ride++) {
            int number = ride;
            Sums own = new Sums(table.cells(), halfBandwidth);
            all.stream().flatMap(List::stream).filter(s -> s.ride() == number).forEach(s -> collect(pass, s, r -> own));
            double[] then = new double[cells.length];
            for (int c = 0; c < cells.length; c++) {
                double fuel = readings.get(ride).delivered.value(delivered.speedAt(c), delivered.loadAt(c));
                then[order.ofCell(c)] = Math.log(fuel / delivered.at(c));
            }
            double squares = own.residualAfter(step(then, cells), new double[Nuisance.COUNT]);
            errors.add(own.readings == 0 ? Double.NaN : 100 * Math.sqrt(squares / own.weight));
        }
        return errors;
    }

    /**
     * What to ride next. To be called after {@link #run}, whose last sums it uses.
     *
     * @param estimate what {@link #run} gave
     */
    public NextRide nextRide(Estimate estimate, HighLoad highLoad) {
        if (readings.isEmpty()) {
            return NextRide.none();
        }
        int newest = readings.size() - 1;
        return new NextRideSearch(posterior, estimate, highLoad, redlineRpm, readings, noise.get(newest)).found();
    }

    /** What speaks for the delay that was found. To be called after {@link #run}: some passes over a sample of the rides. */
    public DelayProfile delayProfile() {
        double used = delayS(nuisances);
        double stepS = ROUND_DELAY_S
                * Math.ceil(Math.max(LEAST_TRIED_S, MOST_TRIED * used) / (PROFILED - 1) / ROUND_DELAY_S - 1e-9);
        double[] delays = new double[PROFILED + 1];
        for (int i = 0; i < PROFILED; i++) {
            delays[i] = i * stepS;
        }
        delays[PROFILED] = used;
        double[] deviances =
                Arrays.stream(delays).parallel().map(this::devianceWith).toArray();
        double least = Arrays.stream(deviances).min().orElseThrow();
        List<DelayProfile.Tried> all = IntStream.range(0, delays.length)
                .mapToObj(i -> new DelayProfile.Tried(delays[i], Math.sqrt(deviances[i] - least)))
                .toList();
        return new DelayProfile(all.subList(0, PROFILED), all.get(PROFILED));
    }

    private static double delayS(double[] nuisances) {
        return Nuisance.sensor(nuisances).delayS(DelayProfile.SPEED_RPM, DelayProfile.FLOW_G_PER_S);
    }

    /** Deviance with another delay, held there, shared out among its parts as it is. */
    private double devianceWith(double delayS) {
        double now = delayS(nuisances);
        double[] trial = nuisances.clone();
        for (Nuisance part : Nuisance.DELAYS) {
            trial[part.ordinal()] *= now > 0 ? delayS / now : 0;
        }
        if (!(now > 0)) {
            trial[Nuisance.FIXED_DELAY.ordinal()] = delayS;
        }
        Sums held = sums(few, trial).without(Nuisance.DELAYS);
        return smoothness.posterior(held, cells, trial, table, prior).deviance();
    }

    private static double[] step(double[] to, double[] from) {
        double[] step = to.clone();
        for (int i = 0; i < step.length; i++) {
            step[i] -= from[i];
        }
        return step;
    }

    private void measureNoise() {
        EvidencePass pass = new EvidencePass(delivered, cells, nuisances, pace);
        List<Measured[]> parts = some.parallelStream()
                .map(part -> {
                    Measured[] own = new Measured[readings.size()];
                    part.forEach(stretch -> measure(pass, stretch, own));
                    return own;
                })
                .toList();
        Crowding crowded = Crowding.counter(table.cells());
        for (int i = 0; i < readings.size(); i++) {
            int ride = i;
            List<Measured> ofRide =
                    parts.stream().map(p -> p[ride]).filter(Objects::nonNull).toList();
            Crowding its = Crowding.counter(table.cells());
            ofRide.forEach(m -> its.add(m.crowding));
            crowded.add(its);
            double least = readings.get(i).measured ? 2 * nuisances[Nuisance.LAG.ordinal()] : 2;
            // By its own places: a ride that contradicts the others isn't noisy for that.
            noise.set(
                    i, Residuals.noise(ofRide.stream().map(Measured::residuals).toList(), its.measured(), least));
        }
        crowding = crowded.measured();
    }

    /** What one part of the rides shows of one ride's noise: its residuals, and those of each quarter of a cell. */
    private record Measured(Residuals residuals, Crowding crowding) {}

    private void measure(EvidencePass pass, Stretch stretch, Measured[] rides) {
        Readings ride = readings.get(stretch.ride());
        NoiseModel model = noise.get(stretch.ride());
        if (rides[stretch.ride()] == null) {
            rides[stretch.ride()] = new Measured(new Residuals(ride.track.timeS), Crowding.counter(table.cells()));
        }
        Measured own = rides[stretch.ride()];
        pass.run(ride, stretch, (row, burntS, stepS, residual, film, place, lag, byNuisance) -> {
            if (ride.screened.counts(row)) {
                own.residuals.add(residual, film, row, stepS, place);
                own.crowding.count(place, model.independence(stepS) * worth(model, residual, film), residual);
            }
        });
    }
}
