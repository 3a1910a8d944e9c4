package fuelwright.job;

import fuelwright.safety.Caution;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a caution said when it was answered.
 *
 * @param level how grave it was
 * @param cells its cells
 * @param worst the worst figure of its worst moment; NaN where it had none
 * @param what its sentence
 * @param extent how often, for how long and where it was worst; empty where it had no moment, or where that wasn't kept
 */
public record AnswerBasis(
        Caution.Level level, SortedSet<Integer> cells, double worst, String what, Optional<Extent> extent) {

    /**
     * How much of it there was.
     *
     * @param times moments
     * @param seconds how long they were together, s
     * @param speedRpm engine speed at the worst one, rpm
     * @param load load there, in the table's unit; NaN where unknown
     */
    public record Extent(int times, double seconds, double speedRpm, double load) {

        private static final double GROWN = 1.5;
        private static final double SAME_SPEED = 0.1;
        private static final double SAME_LOAD = 15;

        static Optional<Extent> of(Caution caution) {
            double seconds = caution.moments().stream()
                    .mapToDouble(Caution.Moment::lengthS)
                    .sum();
            return caution.worst().map(m -> new Extent(caution.moments().size(), seconds, m.speedRpm(), m.load()));
        }

        /** Whether it didn't happen much more often or longer since, and is worst at about the same place. */
        boolean isLike(Extent now) {
            boolean grown = now.times > GROWN * times && now.times > times + 1
                    || now.seconds > GROWN * seconds && now.seconds > seconds + 1;
            boolean moved =
                    Math.abs(now.speedRpm - speedRpm) > SAME_SPEED * speedRpm || Math.abs(now.load - load) > SAME_LOAD;
            return !grown && !moved;
        }
    }

    private static final double SAME_CELLS_SHARE = 0.5;
    /** Of the cells then so many new ones are no news, or one. */
    private static final double NEW_CELLS_SHARE = 0.25;

    private static final double SAME_LAMBDA = 0.03;
    private static final double SAME_SHARE = 0.1;
    /** Figures of a sentence are of many kinds: so many times more or less is the same still. */
    private static final double SAME_RATIO = 1.5;

    private static final Pattern FIGURE = Pattern.compile("\\d+(\\.\\d+)?");

    public AnswerBasis {
        Objects.requireNonNull(level, "level");
        cells = Collections.unmodifiableSortedSet(new TreeSet<>(cells));
        Objects.requireNonNull(what, "what");
        Objects.requireNonNull(extent, "extent");
    }

    /** A basis of which the extent isn't known. */
    public AnswerBasis(Caution.Level level, SortedSet<Integer> cells, double worst, String what) {
        this(level, cells, worst, what, Optional.empty());
    }

    static AnswerBasis of(Caution caution) {
        return new AnswerBasis(
                caution.level(),
                caution.cells(),
                caution.worst().map(Caution.Moment::worst).orElse(Double.NaN),
                caution.what(),
                Extent.of(caution));
    }

    /** Whether a caution still says about the same: no graver, no more of it, most of its cells the same, its worst figure near. */
    boolean isLike(Caution caution) {
        boolean graver = caution.level().ordinal() < level.ordinal();
        boolean more = extent.isPresent()
                && Extent.of(caution).map(now -> !extent.get().isLike(now)).orElse(false);
        return !graver && !more && sameCells(caution.cells()) && sameFigures(caution);
    }

    private boolean sameCells(Set<Integer> others) {
        Set<Integer> both = new HashSet<>(cells);
        both.retainAll(others);
        int all = cells.size() + others.size() - both.size();
        int added = others.size() - both.size();
        return both.size() >= SAME_CELLS_SHARE * all && added <= Math.max(1, NEW_CELLS_SHARE * cells.size());
    }

    private boolean sameFigures(Caution caution) {
        if (caution.worst().isPresent() != Double.isFinite(worst)) {
            return false;
        }
        if (caution.worst().isEmpty()) {
            return sameFigures(caution.what());
        }
        Caution.Moment moment = caution.worst().get();
        double tolerance = moment.unit().equals("lambda") ? SAME_LAMBDA : SAME_SHARE * Math.abs(worst);
        return Math.abs(moment.worst() - worst) <= tolerance;
    }

    private boolean sameFigures(String other) {
        List<Double> before = figures(what);
        List<Double> now = figures(other);
        for (int i = 0; i < before.size() && before.size() == now.size(); i++) {
            double a = Math.max(before.get(i), now.get(i));
            double b = Math.min(before.get(i), now.get(i));
            if (a > SAME_RATIO * b && a > 1) {
                return false;
            }
        }
        return before.size() == now.size();
    }

    private static List<Double> figures(String sentence) {
        List<Double> figures = new ArrayList<>();
        Matcher matcher = FIGURE.matcher(sentence);
        while (matcher.find()) {
            figures.add(Double.parseDouble(matcher.group()));
        }
        return figures;
    }
}
