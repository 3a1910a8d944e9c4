package fuelwright.ride;

import fuelwright.issue.Loaded;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Searches for the alignment of two clocks. Windows of the second log are slid along the first by their correlation, coarsely; the straight line
 * (offset and drift) that most windows agree on is found by trying every pair of them; then each window is placed finely near that
 * line, and the line is fitted by least squares without the windows that stay off it.
 */
final class ClockSearch {

    private static final double COARSE_S = 0.5;
    private static final double FINE_S = 0.05;
    private static final double GREATEST_DRIFT = 0.02;
    private static final int MOST_WINDOWS = 60;

    /** A second log shorter than this says too little to be laid anywhere, s. */
    private static final double SHORTEST_S = 10;

    private final SharedSignal firstCoarse;
    private final SharedSignal secondCoarse;
    private final SharedSignal firstFine;
    private final SharedSignal secondFine;
    private final double windowS;
    private final double leastCorrelation;

    /** A window of the second log: its middle, and where it was found on the first clock. */
    private record Match(double fromS, double toS, double middleS, double offsetS, double correlation) {}

    private ClockSearch(Column[] first, Column[] second, double windowS, double movementsS, double leastCorrelation) {
        firstCoarse = signal(first, COARSE_S, movementsS);
        secondCoarse = signal(second, COARSE_S, movementsS);
        firstFine = signal(first, FINE_S, movementsS);
        secondFine = signal(second, FINE_S, movementsS);
        this.windowS = windowS;
        this.leastCorrelation = leastCorrelation;
    }

    private static SharedSignal signal(Column[] timeAndValues, double stepS, double movementsS) {
        SharedSignal signal = SharedSignal.of(timeAndValues[0], timeAndValues[1], stepS);
        return movementsS > 0 ? signal.movements(movementsS) : signal;
    }

    static Loaded<ClockAlignment> bySpeed(Ride first, Ride second) {
        Column[] a = {first.timeS(), first.column(Role.ENGINE_SPEED).orElseThrow()};
        Column[] b = {second.timeS(), second.column(Role.ENGINE_SPEED).orElseThrow()};
        return new ClockSearch(a, b, 30, 10, 0.7).search(second, ClockAlignment.By.ENGINE_SPEED);
    }

    static Loaded<ClockAlignment> byFuelCut(Ride first, Ride second) {
        Optional<Column> cut = cut(first);
        if (cut.isEmpty()) {
            return ClockAlignment.refused(
                    second,
                    "the second log has no engine speed, and the first shows no fuel cut to align its mixture by",
                    "log the engine speed with both, or align them by hand");
        }
        Column lambda = second.mixtures().get(0).values();
        double[] lean = new double[lambda.size()];
        for (int i = 0; i < lean.length; i++) {
            lean[i] = lambda.has(i) ? lambda.at(i) > 1.25 ? 1 : 0 : Double.NaN;
        }
        Column[] a = {first.timeS(), cut.get()};
        Column[] b = {second.timeS(), Column.owning(lean)};
        return new ClockSearch(a, b, 120, 0, 0.6).search(second, ClockAlignment.By.FUEL_CUT);
    }

    /** 1 where fuel is cut: by the flag, else throttle closed at an engine speed well above idle. */
    private static Optional<Column> cut(Ride ride) {
        Optional<Column> flag = ride.column(Role.FUEL_CUT);
        Optional<Column> speed = ride.column(Role.ENGINE_SPEED);
        Optional<Column> throttle = ride.column(Role.THROTTLE);
        if (flag.isPresent() || speed.isEmpty() || throttle.isEmpty()) {
            return flag;
        }
        double closed = Stats.of(throttle.get().toArray(), ride.size()).p02() + 0.5;
        double[] cut = new double[ride.size()];
        for (int i = 0; i < cut.length; i++) {
            cut[i] = throttle.get().at(i) <= closed && speed.get().at(i) > 2200 ? 1 : 0;
        }
        return Optional.of(Column.owning(cut));
    }

    private Loaded<ClockAlignment> search(Ride second, ClockAlignment.By by) {
        if (!(secondCoarse.endS() - secondCoarse.startS >= SHORTEST_S)) {
            return poor(second, by, "it is shorter than " + Figures.plain(SHORTEST_S) + " s");
        }
        List<Match> matches = coarseMatches();
        double[] line = mostAgreedLine(matches);
        if (line.length == 0) {
            return poor(second, by, "no stretch of it matches");
        }
        List<Match> fine = placed(matches, line, 1.0);
        line = fit(fine, line);
        fine = placed(matches, line, 0.3);
        List<Match> agreeing = new ArrayList<>();
        for (Match match : fine) {
            if (match.correlation() >= leastCorrelation && Math.abs(residual(match, line)) < 0.25) {
                agreeing.add(match);
            }
        }
        if (agreeing.size() < 2 || agreeing.size() * 2 < matches.size()) {
            return poor(second, by, "only " + agreeing.size() + " of " + matches.size() + " stretches agree");
        }
        line = fit(agreeing, line);
        double[] correlations =
                agreeing.stream().mapToDouble(Match::correlation).sorted().toArray();
        double errorS = standardError(agreeing, line);
        return Loaded.of(
                new ClockAlignment(
                        line[0],
                        line[1],
                        errorS,
                        correlations[correlations.length / 2],
                        matches.size(),
                        agreeing.size(),
                        by),
                List.of());
    }

    private static Loaded<ClockAlignment> poor(Ride second, ClockAlignment.By by, String why) {
        return ClockAlignment.refused(
                second,
                "its clock can't be aligned by " + by.words() + ": " + why,
                "check that both logs are of the same ride, or align them by hand");
    }

    private List<Match> coarseMatches() {
        List<Match> matches = new ArrayList<>();
        double length = secondCoarse.endS() - secondCoarse.startS;
        double window = Math.min(windowS, length);
        double step = Math.max(window, length / MOST_WINDOWS);
        for (double from = secondCoarse.startS; from + window <= secondCoarse.endS() + 1e-9; from += step) {
            Match best = null;
            double slide = firstCoarse.endS() - firstCoarse.startS + window;
            for (int k = 0; k * COARSE_S <= slide; k++) {
                double offset = firstCoarse.startS - window - from + k * COARSE_S;
                double correlation = secondCoarse.correlation(from, from + window, firstCoarse, 1, offset);
                if (correlation > (best == null ? 0.3 : best.correlation())) {
                    best = new Match(from, from + window, from + window / 2, offset, correlation);
                }
            }
            boolean moves = best != null || moves(from, from + window);
            if (moves) {
                matches.add(best == null ? new Match(from, from + window, from + window / 2, Double.NaN, 0) : best);
            }
        }
        return matches;
    }

    /** Whether there is anything to compare in a window: one that stands still counts neither for nor against. */
    private boolean moves(double fromS, double toS) {
        return !Double.isNaN(secondCoarse.correlation(fromS, toS, secondCoarse, 1, 0));
    }

    /** Offset and drift that most windows agree on within 1.5 s; empty where fewer than two do. */
    private static double[] mostAgreedLine(List<Match> matches) {
        double[] best = {};
        double bestVotes = 1.5;
        for (int i = 0; i < matches.size(); i++) {
            for (int j = i; j < matches.size(); j++) {
                double[] line = through(matches.get(i), matches.get(j));
                double votes = 0;
                for (Match match : matches) {
                    double off = Math.abs(residual(match, line));
                    votes += off < 1.5 ? 1 - off / 6 : 0;
                }
                votes -= line[1] == 0 ? 0 : 0.5;
                if (votes > bestVotes) {
                    bestVotes = votes;
                    best = line;
                }
            }
        }
        return best;
    }

    private static double[] through(Match a, Match b) {
        double drift = b.middleS() - a.middleS() > 60 ? (b.offsetS() - a.offsetS()) / (b.middleS() - a.middleS()) : 0;
        drift = Math.abs(drift) <= GREATEST_DRIFT ? drift : 0;
        return new double[] {a.offsetS() - drift * a.middleS(), drift};
    }

    private static double residual(Match match, double[] line) {
        return match.offsetS() - line[0] - line[1] * match.middleS();
    }

    /** Each window where it correlates best within {@code reachS} of the line, to a fraction of the fine step by a parabola. */
    private List<Match> placed(List<Match> matches, double[] line, double reachS) {
        List<Match> placed = new ArrayList<>();
        int steps = (int) Math.round(reachS / FINE_S);
        for (Match match : matches) {
            double[] correlations = new double[2 * steps + 1];
            int best = -1;
            for (int k = 0; k < correlations.length; k++) {
                double offset = line[0] + (k - steps) * FINE_S;
                correlations[k] = secondFine.correlation(match.fromS(), match.toS(), firstFine, 1 + line[1], offset);
                best = !Double.isNaN(correlations[k]) && (best < 0 || correlations[k] > correlations[best]) ? k : best;
            }
            if (best > 0 && best < correlations.length - 1) {
                double a = correlations[best - 1];
                double b = correlations[best];
                double c = correlations[best + 1];
                double bend = a - 2 * b + c;
                double shift = bend < 0 ? 0.5 * (a - c) / bend : 0;
                double offset = line[0] + (best + shift - steps) * FINE_S + line[1] * match.middleS();
                placed.add(new Match(match.fromS(), match.toS(), match.middleS(), offset, b));
            }
        }
        return placed;
    }

    /** Least squares, twice, the second time without what lies three times the median residual off. */
    private static double[] fit(List<Match> matches, double[] start) {
        double[] line = start;
        List<Match> used = matches.stream().filter(m -> m.correlation() > 0.5).toList();
        for (int round = 0; round < 3 && used.size() >= 2; round++) {
            double n = used.size();
            double mx = used.stream().mapToDouble(Match::middleS).sum() / n;
            double my = used.stream().mapToDouble(Match::offsetS).sum() / n;
            double sxx = 0;
            double sxy = 0;
            for (Match match : used) {
                sxx += (match.middleS() - mx) * (match.middleS() - mx);
                sxy += (match.middleS() - mx) * (match.offsetS() - my);
            }
            double drift = used.size() > 2 && sxx > 0 ? sxy / sxx : 0;
            drift = Math.abs(drift) <= GREATEST_DRIFT ? drift : 0;
            line = new double[] {my - drift * mx, drift};
            double[] fitted = line;
            double[] off = used.stream()
                    .mapToDouble(m -> Math.abs(residual(m, fitted)))
                    .sorted()
                    .toArray();
            double limit = Math.max(0.02, 4.5 * off[off.length / 2]);
            used = used.stream()
                    .filter(m -> Math.abs(residual(m, fitted)) <= limit)
                    .toList();
        }
        return line;
    }

    private static double standardError(List<Match> matches, double[] line) {
        double[] squares = matches.stream()
                .mapToDouble(m -> residual(m, line) * residual(m, line))
                .toArray();
        double sigma = Math.sqrt(Arrays.stream(squares).sum() / Math.max(1, matches.size() - 2));
        return Math.max(0.002, sigma / Math.sqrt(matches.size()));
    }
}
