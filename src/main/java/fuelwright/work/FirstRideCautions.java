package fuelwright.work;

import fuelwright.airflow.Machine;
import fuelwright.airflow.ThrottleBody;
import fuelwright.safety.CaseFile;
import fuelwright.safety.Caution;
import fuelwright.safety.HighLoadOfRides;
import fuelwright.safety.Judge;
import fuelwright.safety.Limits;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/** What can be judged of a first-ride table before there is a ride: its target, its pulses, and what nobody has measured. */
final class FirstRideCautions {

    /** Rich enough for every fuel's ceiling: a stand-in that no rule objects to, where no target was given. */
    private static final double NO_OBJECTION_LAMBDA = 0.85;

    /** 38 to 54 mm, say. */
    private static final double MOST_AREA_RATIO = 2;

    private FirstRideCautions() {}

    /**
     * @param after the table to ride with
     * @param targetLambda on any axes; empty where none was given, which is said
     */
    static List<Caution> of(Table after, Optional<Table> targetLambda, Machine machine) {
        Table target = targetLambda.orElseGet(() -> standIn(after));
        List<Caution> cautions = new ArrayList<>(Judge.judge(new CaseFile(
                machine,
                HighLoadOfRides.of(machine, after.load(), target, List.of()),
                after,
                target,
                List.of(),
                Optional.empty(),
                Optional.empty(),
                Limits.usual(machine.fuel()))));
        if (targetLambda.isEmpty()) {
            cautions.add(new Caution(
                    "target-not-checked",
                    Caution.Level.NOTE,
                    "Target not checked",
                    "No target table was given, so nobody knows whether it is leaner than safe at high load",
                    "Give the target table as well (--target)",
                    new TreeSet<>(),
                    List.of()));
        }
        machine.before().ifPresent(before -> machine.after().ifPresent(now -> bores(before, now, cautions)));
        return List.copyOf(cautions);
    }

    /** Bores that one seldom meets: typed wrong, or the wrong way round. */
    private static void bores(ThrottleBody before, ThrottleBody now, List<Caution> cautions) {
        double ratio = now.boreMm() * now.boreMm() / (before.boreMm() * before.boreMm());
        boolean larger = ratio > MOST_AREA_RATIO;
        if (larger || ratio < 1) {
            cautions.add(new Caution(
                    larger ? "bores-far-apart" : "bore-smaller",
                    larger ? Caution.Level.STOP : Caution.Level.CHECK,
                    larger ? "The bores are far apart" : "Is the new bore really smaller?",
                    String.format(
                            Locale.ROOT,
                            larger
                                    ? "From %.1f to %.1f mm the throttle's area is %.1f times what it was: the added fuel follows it and may be far too much"
                                    : "From %.1f to %.1f mm the throttle's area is %.2f times what it was, so nothing is added. If the bores are the wrong way round, this table is lean",
                            before.boreMm(),
                            now.boreMm(),
                            ratio),
                    "Measure both bores, and give the one that the table was made for first",
                    new TreeSet<>(),
                    List.of()));
            cautions.sort(Comparator.comparing(Caution::level));
        }
    }

    private static Table standIn(Table after) {
        double[] lambda = new double[after.cells()];
        Arrays.fill(lambda, NO_OBJECTION_LAMBDA);
        return after.with(Quantity.LAMBDA, lambda);
    }
}
