package fuelwright.job;

import fuelwright.safety.Caution;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
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
 */
public record AnswerBasis(Caution.Level level, SortedSet<Integer> cells, double worst, String what) {

    private static final double SAME_CELLS_SHARE = 0.5;
    private static final double SAME_LAMBDA = 0.03;
    private static final double SAME_SHARE = 0.1;
    /** Figures of a sentence are of many kinds: so many times more or less is the same still. */
    private static final double SAME_RATIO = 1.5;

    private static final Pattern FIGURE = Pattern.compile("\\d+(\\.\\d+)?");

    public AnswerBasis {
        Objects.requireNonNull(level, "level");
        cells = Collections.unmodifiableSortedSet(new TreeSet<>(cells));
        Objects.requireNonNull(what, "what");
    }

    static AnswerBasis of(Caution caution) {
        return new AnswerBasis(
                caution.level(),
                caution.cells(),
                caution.worst().map(Caution.Moment::worst).orElse(Double.NaN),
                caution.what());
    }

    /** Whether a caution still says about the same: no graver, most of its cells the same, its worst figure near. */
    boolean isLike(Caution caution) {
        boolean graver = caution.level().ordinal() < level.ordinal();
        return !graver && sameCells(caution.cells()) && sameFigures(caution);
    }

    private boolean sameCells(Set<Integer> others) {
        Set<Integer> both = new HashSet<>(cells);
        both.retainAll(others);
        int all = cells.size() + others.size() - both.size();
        return both.size() >= SAME_CELLS_SHARE * all;
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
