package fuelwright.work;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.safety.CaseFile;
import fuelwright.safety.Caution;
import fuelwright.safety.Judge;
import fuelwright.safety.Limits;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/** What can be judged of a first-ride table before there is a ride: its target, its pulses, and what nobody has measured. */
final class FirstRideCautions {

    /** Rich enough for every fuel's ceiling: a stand-in that no rule objects to, where no target was given. */
    private static final double NO_OBJECTION_LAMBDA = 0.85;

    private FirstRideCautions() {}

    /**
     * @param after the table to ride with
     * @param targetLambda on any axes; empty where none was given, which is said
     */
    static List<Caution> of(Table after, Optional<Table> targetLambda, Machine machine) {
        List<Caution> cautions = new ArrayList<>(Judge.judge(new CaseFile(
                machine,
                HighLoad.of(machine),
                after,
                targetLambda.orElseGet(() -> standIn(after)),
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
        return List.copyOf(cautions);
    }

    private static Table standIn(Table after) {
        double[] lambda = new double[after.cells()];
        Arrays.fill(lambda, NO_OBJECTION_LAMBDA);
        return after.with(Quantity.LAMBDA, lambda);
    }
}
