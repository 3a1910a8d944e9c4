package fuelwright.work;

import fuelwright.power.Breathing;
import fuelwright.table.Table;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Two jobs side by side.
 *
 * @param rows machine, change, work and gains, each with both jobs' figures
 * @param difference how much more the second job's part gave, in points of percent, on the first job's axes; empty where one of them isn't known or load
 *     isn't the same thing for both
 */
public record JobsCompared(List<Row> rows, Optional<Difference> difference) {

    /** One line. */
    public record Row(String what, Sentence first, Sentence second) {
        /** Whether both jobs say the same. */
        public boolean same() {
            return first.equals(second);
        }
    }

    /**
     * A map on the axes of the first job's table.
     *
     * @param axes whose cells
     * @param points second less first, cell by cell; NaN where one of them isn't known
     */
    public record Difference(Table axes, List<Double> points) {
        public Difference {
            points = List.copyOf(points);
        }

        /** How many cells are known in both. */
        public int knownCells() {
            return (int) points.stream().filter(p -> !p.isNaN()).count();
        }
    }

    public JobsCompared {
        rows = List.copyOf(rows);
    }

    /** Line by line, and cell by cell where both know what their part gave. */
    public static JobsCompared of(JobRecord first, JobRecord second) {
        List<JobFacts.Fact> a = JobFacts.of(first);
        List<JobFacts.Fact> b = JobFacts.of(second);
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < Math.max(a.size(), b.size()); i++) {
            rows.add(new Row(i < a.size() ? a.get(i).what() : b.get(i).what(), figure(a, i), figure(b, i)));
        }
        return new JobsCompared(
                rows, first.gain().value().flatMap(x -> second.gain().value().flatMap(y -> difference(x, y))));
    }

    private static Sentence figure(List<JobFacts.Fact> facts, int i) {
        return i < facts.size() ? facts.get(i).figure() : Sentence.text("can't be read");
    }

    private static Optional<Difference> difference(Breathing a, Breathing b) {
        if (a.axes().load().kind() != b.axes().load().kind()) {
            return Optional.empty();
        }
        return Optional.of(new Difference(
                a.axes(),
                IntStream.range(0, a.cells())
                        .mapToObj(c ->
                                b.gainPercentAt(a.axes().speedAt(c), a.axes().loadAt(c)) - a.gainPercent(c))
                        .toList()));
    }
}
