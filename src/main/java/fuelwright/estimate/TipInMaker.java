package fuelwright.estimate;

import fuelwright.screen.Screen;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Works out {@link TipIn} from the residuals of a fit in which no wall film explains anything: what the table leaves unexplained. The
 * reading r of a first-order sensor follows what was burnt, z, by z = r + τ·dr/dt; the mean of z over a stretch is that of r plus
 * τ·(r₁ − r₀)/(t₁ − t₀), exact without differentiating any noise. Mutable, thread-safe in {@link #of} only.
 */
final class TipInMaker {

    private static final double[] RATES = {Opening.LEAST_RATE, 50, 100, 200, Double.POSITIVE_INFINITY};
    private static final double SPEED_STEP_RPM = 2000;
    /** Shorter stretches tell nothing, s. */
    private static final double LEAST_S = 0.3;

    private static final int LEAST_READINGS = 4;
    /** Readings further apart leave too much unseen, s. */
    private static final double GAP_S = 0.3;
    /** Length of a moment, s; with a slower sensor one lag. */
    private static final double MOMENT_S = 0.2;

    /** Readings that say nothing about an opening. What the movement itself screens out is just what is looked for. */
    private static final Set<Screen> SILENT = EnumSet.complementOf(EnumSet.of(
            Screen.HELD_VALUE, Screen.SPIKE, Screen.SENSOR_LIMIT, Screen.THROTTLE_MOVING, Screen.SPEED_MOVING));

    /** What one opening did, ln of lambda. */
    private record Found(double mean, double noise, double doubt, double worst, boolean atLimit) {}

    private record Place(int rate, int speed) implements Comparable<Place> {
        @Override
        public int compareTo(Place other) {
            return rate != other.rate ? Integer.compare(rate, other.rate) : Integer.compare(speed, other.speed);
        }
    }

    /** Share of such a moment that cells, delay and lag may have taken, as a standard error: planted moments came out up to a third too small. */
    private static final double TAKEN_BY_FIT = 0.3;

    private final Map<Place, List<Found>> found = new TreeMap<>();
    private int leftOut;

    /** The residuals of one ride, row by row. */
    private static final class Trace {
        private final Readings ride;
        private final double[] residual;
        private final double[] burntS;
        private final double[] doubt;

        Trace(Readings ride) {
            this.ride = ride;
            this.residual = unknown(ride.size());
            this.burntS = unknown(ride.size());
            this.doubt = unknown(ride.size());
        }

        private static double[] unknown(int rows) {
            double[] all = new double[rows];
            Arrays.fill(all, Double.NaN);
            return all;
        }
    }

    private final List<NoiseModel> noise;
    private final double[] nuisances;
    private final double[] doubts;
    private final List<Trace> traces = new ArrayList<>();

    /**
     * @param noise of each ride
     * @param nuisances of the fit
     * @param doubts standard error of each cell, in {@link CellOrder}
     */
    TipInMaker(List<Readings> rides, List<NoiseModel> noise, double[] nuisances, double[] doubts) {
        this.noise = List.copyOf(noise);
        this.nuisances = nuisances.clone();
        this.doubts = doubts.clone();
        rides.forEach(r -> traces.add(r.measured ? new Trace(r) : null));
    }

    /** Takes the readings of a ride, in any order and from several threads at once. */
    EvidencePass.Sink of(int ride) {
        Trace trace = traces.get(ride);
        if (trace == null) {
            return EvidencePass.Sink.NONE;
        }
        return (row, burntS, stepS, residual, film, place, shares, byNuisance) -> {
            double filmed = 0;
            for (Nuisance n : Part.WALL_FILM.nuisances()) {
                filmed += nuisances[n.ordinal()] * byNuisance[n.ordinal()];
            }
            double doubt = 0;
            for (int k = 0; k < shares.count(); k++) {
                doubt += shares.shares()[k] * doubts[shares.cells()[k]];
            }
            trace.residual[row] = residual + filmed;
            trace.burntS[row] = burntS;
            trace.doubt[row] = doubt;
        };
    }

    private void add(Trace trace, NoiseModel noise, double lagS) {
        for (Opening opening : Opening.of(trace.ride.track)) {
            Found one = judge(trace, opening, noise, lagS);
            if (one == null) {
                leftOut++;
            } else {
                int rate = 0;
                while (opening.rate() >= RATES[rate + 1]) {
                    rate++;
                }
                found.computeIfAbsent(
                                new Place(rate, (int) (opening.speedRpm() / SPEED_STEP_RPM)), p -> new ArrayList<>())
                        .add(one);
            }
        }
    }

    /** Null where nothing can be said. */
    private static Found judge(Trace trace, Opening opening, NoiseModel noise, double lagS) {
        double[] timeS = trace.ride.track.timeS;
        List<Integer> rows = new ArrayList<>();
        boolean atLimit = false;
        for (int row = opening.row(); row < opening.segmentEnd(); row++) {
            if (timeS[row] - opening.untilS() > 1 && !(trace.burntS[row] <= opening.untilS())) {
                break;
            }
            if (!(trace.burntS[row] >= opening.startS() && trace.burntS[row] <= opening.untilS())) {
                continue;
            }
            if (trace.ride.screened.reason(row).filter(SILENT::contains).isPresent()) {
                return null;
            }
            if (!trace.ride.screened.isKeptOutBy(row, Screen.HELD_VALUE)) {
                if (!rows.isEmpty() && timeS[row] - timeS[rows.get(rows.size() - 1)] > GAP_S) {
                    return null;
                }
                rows.add(row);
                atLimit |= trace.ride.screened.isKeptOutBy(row, Screen.SENSOR_LIMIT);
            }
        }
        int n = rows.size();
        if (n < LEAST_READINGS || timeS[rows.get(n - 1)] - timeS[rows.get(0)] < LEAST_S) {
            return null;
        }
        double[] at = new double[n];
        double[] r = new double[n];
        double doubt = 0;
        for (int k = 0; k < n; k++) {
            at[k] = timeS[rows.get(k)];
            r[k] = trace.residual[rows.get(k)];
            doubt += trace.doubt[rows.get(k)] / n;
        }
        double lengthS = at[n - 1] - at[0];
        double sd = noise.still()
                * Math.sqrt(Math.min(1, noise.correlationS() / lengthS) + 2 * lagS * lagS / (lengthS * lengthS));
        return new Found(burnt(at, r, 0, n - 1, lagS), sd, doubt, worst(at, r, lagS), atLimit);
    }

    /** Mean of what was burnt between two readings. */
    private static double burnt(double[] at, double[] r, int from, int to, double lagS) {
        double sum = lagS * (r[to] - r[from]);
        for (int k = from; k < to; k++) {
            sum += (at[k + 1] - at[k]) * (r[k] + r[k + 1]) / 2;
        }
        return sum / (at[to] - at[from]);
    }

    private static double worst(double[] at, double[] r, double lagS) {
        double spanS = Math.max(MOMENT_S, lagS) - 1e-9;
        double worst = 0;
        int from = 0;
        for (int to = 1; to < at.length; to++) {
            while (from + 1 < to && at[to] - at[from + 1] >= spanS) {
                from++;
            }
            if (at[to] - at[from] >= spanS || to == at.length - 1) {
                double now = burnt(at, r, from, to, lagS);
                worst = Math.abs(now) > Math.abs(worst) ? now : worst;
            }
        }
        return worst;
    }

    TipIn made() {
        for (int ride = 0; ride < traces.size(); ride++) {
            if (traces.get(ride) != null) {
                add(traces.get(ride), noise.get(ride), nuisances[Nuisance.LAG.ordinal()]);
            }
        }
        List<TipIn.Bin> bins = new ArrayList<>();
        found.forEach((place, all) -> bins.add(bin(place, all)));
        return new TipIn(bins, bins.stream().mapToInt(TipIn.Bin::openings).sum(), leftOut);
    }

    private static TipIn.Bin bin(Place place, List<Found> all) {
        int n = all.size();
        double mean = all.stream().mapToDouble(Found::mean).sum() / n;
        double noise = all.stream().mapToDouble(f -> f.noise * f.noise).sum() / n;
        double doubt = all.stream().mapToDouble(Found::doubt).sum() / n;
        double scatter = 0;
        double worst = 0;
        for (Found f : all) {
            scatter += n > 1 ? (f.mean - mean) * (f.mean - mean) / (n - 1) : 0;
            worst = Math.abs(f.worst) > Math.abs(worst) ? f.worst : worst;
        }
        double error = Math.sqrt(Math.max(scatter, noise) / n + doubt * doubt + Math.pow(TAKEN_BY_FIT * mean, 2));
        return new TipIn.Bin(
                RATES[place.rate],
                RATES[place.rate + 1],
                place.speed * SPEED_STEP_RPM,
                (place.speed + 1) * SPEED_STEP_RPM,
                n,
                100 * Math.expm1(mean),
                100 * Math.exp(mean) * error,
                100 * Math.expm1(worst),
                (int) all.stream().filter(Found::atLimit).count());
    }
}
