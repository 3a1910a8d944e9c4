package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.job.HardwareProfile;
import fuelwright.job.HardwareProfile.Holds;
import fuelwright.job.Job;
import fuelwright.table.Numerals;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Optional;

/** Whether figures can be rounded to a step at all. A step is in the unit of what is typed: never is one of per cents held against milliseconds. */
public final class HardwareStep {

    private HardwareStep() {}

    static Optional<Issue> problem(Job job) {
        return problem(
                job.fuelTable().orElseThrow(),
                job.hardware().holds(),
                job.proposal().step(),
                job.proposal().deadTimeMs());
    }

    /**
     * A step that is more than a cell's whole fuel would round it to nothing or to a multiple.
     *
     * @param step in the unit of what the hardware holds; 0: not told, then the last digit that a file shows of the table counts
     */
    public static Optional<Issue> problem(Table fuel, HardwareProfile.Holds holds, double step, double deadTimeMs) {
        boolean told = step > 0;
        if (told && holds != Holds.VALUE) {
            return holds == Holds.PERCENT_CHANGE ? ofWhole(step, 100, " %") : ofWhole(step, 1, "");
        }
        Quantity quantity = fuel.quantity();
        double used = told ? step : quantity.finestStep();
        int least = -1;
        double leastFuel = used * (1 - 1e-9);
        for (int cell = 0; cell < fuel.cells(); cell++) {
            double own = ownUnits(quantity, fuel.at(cell), deadTimeMs);
            if (own < leastFuel) {
                least = cell;
                leastFuel = own;
            }
        }
        return least < 0
                ? Optional.empty()
                : Optional.of(Issue.error(
                        "fuel table",
                        0,
                        0,
                        (told ? "the step of " : "the last digit that a file shows, ") + Numerals.shortest(used) + " "
                                + quantity.unit() + (told ? "" : ",") + " is more than all the fuel of the cell at "
                                + Numerals.shortest(fuel.speedAt(least)) + " rpm and "
                                + Numerals.shortest(fuel.loadAt(least)) + " "
                                + fuel.load().kind().unit().symbol() + ", " + Numerals.shortest(fuel.at(least)) + " "
                                + quantity.unit(),
                        told
                                ? "give the smallest step that the hardware takes, in the table's own unit (--step)"
                                : "check the table's unit: '# quantity: ' must name what the figures are in"));
    }

    private static Optional<Issue> ofWhole(double step, double whole, String unit) {
        return step < whole
                ? Optional.empty()
                : Optional.of(Issue.error(
                        "hardware",
                        0,
                        0,
                        "the step of " + Numerals.shortest(step) + unit + " is all the fuel of a cell or more",
                        "give the smallest step that the hardware takes, in its own unit (--step)"));
    }

    /** What a cell delivers, in its own unit. */
    private static double ownUnits(Quantity quantity, double value, double deadTimeMs) {
        double delivered = quantity.delivered(value, deadTimeMs);
        return quantity == Quantity.FUEL_TRIM ? 100 * delivered : delivered;
    }
}
