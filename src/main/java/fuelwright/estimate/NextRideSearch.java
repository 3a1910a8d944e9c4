package fuelwright.estimate;

import fuelwright.airflow.HighLoad;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Greedy search for the regions that shrink the weighted variance Σ wᵢ·Σᵢᵢ of the cells' ln factors most (A-optimality: Chaloner and
 * Verdinelli, Statistical Science 10 (1995) 273, from memory). A hypothetical reading of variance s² in cell c takes Σ·c·Σc·/(Σcc + s²)
 * from the covariance; m of them count as one of s²/m. Columns of the covariance are exact and worked out for a short list of blocks only:
 * those of most weighted variance. How many readings a second gives is taken from the newest ride's noise; that readings crowding into one
 * cell tell less and less isn't reckoned with, so the seconds are the least to ride. Work: {@value #SHORT_LIST} · 3 solves.
 */
final class NextRideSearch {

    private static final int SHORT_LIST = 30;
    private static final int LEAST_REGIONS = 3;
    private static final int MOST_REGIONS = 5;
    private static final int TRIED_S = 20;
    private static final int[] SECONDS = {10, 15, 20, 30, 45, 60};
    /** Regions known better than this, ln, aren't worth a ride: it is what a wideband can tell. */
    private static final double GOOD = 0.005;

    private static final double GOAL = 0.01;
    private static final double WORTHWHILE = 0.03;
    /** Time in or beside a cell from which on it is asked for below high load, s. */
    private static final double REACHED_S = 1;
    /** What nobody rides for lack of daring isn't what matters least. */
    private static final double LEAST_HIGH = 0.5;
    /** From so many times the lowest speed on a gear is told (common practice, no source). */
    private static final double HELD_IN_GEAR = 2;
    /** Of the regions, so many at most may need a dynamometer or a closed course. */
    private static final int MOST_HIGH = 3;

    private final Posterior posterior;
    private final Table table;
    private final CellOrder order;
    private final HighLoad highLoad;
    private final OptionalDouble redlineRpm;
    private final Gearing gearing;
    private final Rideable rideable;
    private final double[] nearS;
    private final double[] weights;
    private final double[] variances;
    private final double informationPerS;
    private final Map<Integer, double[]> columns = new HashMap<>();

    NextRideSearch(
            Posterior posterior,
            Estimate estimate,
            HighLoad highLoad,
            OptionalDouble redlineRpm,
            List<Readings> rides,
            NoiseModel noise) {
        this.posterior = posterior;
        this.table = estimate.table();
        this.order = new CellOrder(table);
        this.highLoad = highLoad;
        this.redlineRpm = redlineRpm;
        this.gearing = Gearing.of(rides.stream().map(r -> r.track.ride).toList());
        this.rideable = Rideable.of(table, rides, this::isHighLoad, redlineRpm);
        this.nearS = rideable.nearS();
        this.weights = weights(estimate);
        this.variances = new double[table.cells()];
        for (int c = 0; c < variances.length; c++) {
            variances[c] = estimate.logUncertainty(c) * estimate.logUncertainty(c);
        }
        double stepS = stepS(rides.get(rides.size() - 1).track);
        this.informationPerS = noise.independence(stepS) / stepS / (noise.sd(0) * noise.sd(0));
    }

    private static double stepS(RideTrack track) {
        double[] steps = new double[Math.max(1, track.size() - 1)];
        steps[0] = 0.1;
        for (int i = 1; i < track.size(); i++) {
            steps[i - 1] = track.timeS[i] - track.timeS[i - 1];
        }
        Arrays.sort(steps);
        return Math.max(1e-3, steps[steps.length / 2]);
    }

    /**
     * What doubt in a cell matters: by time near it, at high load by no less than {@value #LEAST_HIGH} of the most and three times, twice
     * beside cells measured lean.
     */
    private double[] weights(Estimate estimate) {
        double most = Math.max(1e-9, Arrays.stream(nearS).max().orElse(0));
        double[] w = new double[table.cells()];
        for (int c = 0; c < w.length; c++) {
            boolean lean = Rideable.around(table, c).stream()
                    .anyMatch(n -> estimate.standing(n) == Standing.MEASURED
                            && estimate.shortfallPercent(n) > Math.max(1, 2 * estimate.uncertaintyPercent(n)));
            boolean high = isHighLoad(c);
            double near = Math.max(Math.sqrt(nearS[c] / most), high && rideable.can(c) ? LEAST_HIGH : 0);
            w[c] = (0.1 + near) * (high ? 3 : 1) * (lean ? 2 : 1);
        }
        return w;
    }

    private boolean isHighLoad(int cell) {
        boolean throttle = table.load().kind() == Axis.Kind.THROTTLE;
        double load = table.loadAt(cell);
        return highLoad.at(table.speedAt(cell), throttle ? load : Double.NaN, throttle ? Double.NaN : load, Double.NaN);
    }

    private Riding riding(int cell) {
        return Riding.of(table, cell, isHighLoad(cell), redlineRpm);
    }

    NextRide found() {
        List<int[]> blocks = shortList();
        columns.putAll(blocks.parallelStream()
                .flatMapToInt(Arrays::stream)
                .boxed()
                .distinct()
                .collect(Collectors.toConcurrentMap(
                        Function.identity(), c -> order.toTable(posterior.covariance(order.ofCell(c))))));
        double start = weighted();
        List<NextRide.Region> regions = new ArrayList<>();
        Set<Integer> taken = new HashSet<>();
        while (regions.size() < MOST_REGIONS) {
            int[] best = null;
            double gain = 0;
            for (int[] block : blocks) {
                boolean enough = isHighLoad(block)
                        && regions.stream().filter(NextRide.Region::highLoad).count() >= MOST_HIGH;
                double here = enough || Arrays.stream(block).anyMatch(taken::contains) || largest(block) < GOOD
                        ? 0
                        : reduction(block, TRIED_S);
                if (here > gain) {
                    gain = here;
                    best = block;
                }
            }
            if (best == null || regions.size() >= LEAST_REGIONS && gain < WORTHWHILE * start) {
                break;
            }
            regions.add(region(best));
            Arrays.stream(best).forEach(c -> taken.addAll(Rideable.around(table, c)));
        }
        return new NextRide(regions, percent(start), percent(weighted()), rideable.beyond(), gearing.isDoubtful());
    }

    private double percent(double weighted) {
        return 100 * Math.sqrt(weighted / Arrays.stream(weights).sum());
    }

    private double weighted() {
        double sum = 0;
        for (int c = 0; c < weights.length; c++) {
            sum += weights[c] * variances[c];
        }
        return sum;
    }

    private boolean isAskedFor(int cell) {
        return rideable.can(cell) && riding(cell) != Riding.NOT && (nearS[cell] >= REACHED_S || isHighLoad(cell));
    }

    private boolean isHighLoad(int[] block) {
        return Arrays.stream(block).anyMatch(this::isHighLoad);
    }

    /** Blocks of two or three cells in a row or a column that can be ridden and, below high load, the rides came near to: those of most weighted variance. */
    private List<int[]> shortList() {
        List<int[]> all = new ArrayList<>();
        int speeds = table.speed().size();
        for (int c = 0; c < table.cells(); c++) {
            for (int size = 2; size <= 3; size++) {
                if (table.speedIndex(c) + size <= speeds) {
                    all.add(size == 2 ? new int[] {c, c + 1} : new int[] {c, c + 1, c + 2});
                }
            }
            if (c + speeds < table.cells()) {
                all.add(new int[] {c, c + speeds});
            }
        }
        all.removeIf(block -> !Arrays.stream(block).allMatch(this::isAskedFor));
        all.sort(Comparator.comparingDouble(b -> -worth(b)));
        // Half of them from either side, so that doubt at high load doesn't leave the road without a word.
        return Stream.of(true, false)
                .flatMap(high -> all.stream().filter(b -> isHighLoad(b) == high).limit(SHORT_LIST / 2))
                .toList();
    }

    private double worth(int[] block) {
        double sum = 0;
        for (int c : block) {
            sum += weights[c] * variances[c];
        }
        return sum / Math.sqrt(block.length);
    }

    private double largest(int[] block) {
        return Math.sqrt(
                Arrays.stream(block).mapToDouble(c -> variances[c]).max().orElse(0));
    }

    /** What so many seconds, shared by the block's cells, take from the weighted variance. */
    private double reduction(int[] block, int seconds) {
        double[][] own = copies(block);
        double noise = block.length / (informationPerS * seconds);
        double gain = 0;
        for (int a = 0; a < block.length; a++) {
            double s = own[a][block[a]] + noise;
            for (int c = 0; c < weights.length; c++) {
                gain += weights[c] * own[a][c] * own[a][c] / s;
            }
            for (int b = a + 1; b < block.length; b++) {
                take(own[b], own[a], own[a][block[b]] / s);
            }
        }
        return gain;
    }

    /** Largest standard deviation in the block after so many seconds there. */
    private double largestAfter(int[] block, int seconds) {
        double[][] own = copies(block);
        double noise = block.length / (informationPerS * seconds);
        for (int a = 0; a < block.length; a++) {
            double[] used = own[a].clone();
            double s = used[block[a]] + noise;
            for (int b = 0; b < block.length; b++) {
                take(own[b], used, used[block[b]] / s);
            }
        }
        double largest = 0;
        for (int a = 0; a < block.length; a++) {
            largest = Math.max(largest, own[a][block[a]]);
        }
        return Math.sqrt(largest);
    }

    private double[][] copies(int[] block) {
        return Arrays.stream(block).mapToObj(c -> columns.get(c).clone()).toArray(double[][]::new);
    }

    private static void take(double[] from, double[] column, double times) {
        for (int c = 0; c < from.length; c++) {
            from[c] -= times * column[c];
        }
    }

    /** The block as a region, and its readings reckoned in. */
    private NextRide.Region region(int[] block) {
        double before = largest(block);
        int seconds = SECONDS[SECONDS.length - 1];
        for (int s : SECONDS) {
            if (largestAfter(block, s) <= Math.max(GOAL, before / 4)) {
                seconds = s;
                break;
            }
        }
        double noise = block.length / (informationPerS * seconds);
        for (int cell : block) {
            double[] used = columns.get(cell).clone();
            double s = used[cell] + noise;
            columns.forEach((c, column) -> take(column, used, used[c] / s));
            for (int c = 0; c < variances.length; c++) {
                variances[c] = Math.max(0, variances[c] - used[c] * used[c] / s);
            }
        }
        int first = block[0];
        int last = block[block.length - 1];
        Axis speed = table.speed();
        Axis load = table.load();
        double fromRpm = 50 * Math.round(Math.max(rideable.lowestRpm(), edge(speed, table.speedIndex(first), -1)) / 50);
        double toRpm = 50 * Math.round(edge(speed, table.speedIndex(last), 1) / 50);
        return new NextRide.Region(
                Arrays.stream(block).boxed().toList(),
                load.kind(),
                fromRpm,
                toRpm,
                edge(load, table.loadIndex(first), -1),
                edge(load, table.loadIndex(last), 1),
                seconds,
                isHighLoad(block),
                Arrays.stream(block).anyMatch(c -> riding(c) == Riding.PULL),
                gear((fromRpm + toRpm) / 2),
                100 * before,
                100 * largest(block));
    }

    /** Near idle no gear is held. */
    private Optional<Gearing.Choice> gear(double speedRpm) {
        return speedRpm < HELD_IN_GEAR * rideable.lowestRpm() ? Optional.empty() : gearing.at(speedRpm);
    }

    /** A quarter of the way to the next breakpoint. */
    private static double edge(Axis axis, int index, int side) {
        int next = Math.max(0, Math.min(axis.size() - 1, index + side));
        return axis.at(index) + (axis.at(next) - axis.at(index)) / 4;
    }
}
