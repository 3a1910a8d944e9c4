package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.estimate.Estimate;
import fuelwright.estimate.Proposal;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Everything that is judged.
 *
 * @param machine what is known of the engine
 * @param highLoad what counts as high load
 * @param fuelTable what the control unit holds now
 * @param targetTable lambda, or AFR on the scale of the fuel in the tank
 * @param rides in the job's order
 * @param estimate what each cell needs, on the fuel table's axes; empty where there was nothing to estimate from
 * @param proposal what would be put in, on the fuel table's axes; empty where there is none
 * @param limits the limits in force
 */
public record CaseFile(
        Machine machine,
        HighLoad highLoad,
        Table fuelTable,
        Table targetTable,
        List<JudgedRide> rides,
        Optional<Estimate> estimate,
        Optional<Proposal> proposal,
        Limits limits) {

    /**
     * A ride with what was kept out of it and the table that was in the control unit.
     *
     * @param screened the ride
     * @param madeWith the table it was made with
     */
    public record JudgedRide(ScreenedRide screened, Table madeWith) {
        public JudgedRide {
            Objects.requireNonNull(screened, "screened");
            Objects.requireNonNull(madeWith, "madeWith");
        }
    }

    public CaseFile {
        Objects.requireNonNull(machine, "machine");
        Objects.requireNonNull(highLoad, "highLoad");
        Objects.requireNonNull(fuelTable, "fuelTable");
        Objects.requireNonNull(targetTable, "targetTable");
        rides = SameNames.apart(rides);
        Objects.requireNonNull(limits, "limits");
        if (!fuelTable.quantity().isFuel()) {
            throw new IllegalArgumentException(
                    "fuelTable holds " + fuelTable.quantity().words());
        }
        if (!targetTable.quantity().isMixture()) {
            throw new IllegalArgumentException(
                    "targetTable holds " + targetTable.quantity().words());
        }
        int cells = fuelTable.cells();
        if (estimate.isPresent() && estimate.get().table().cells() != cells) {
            throw new IllegalArgumentException(
                    "estimate has " + estimate.get().table().cells() + " cells, needed " + cells);
        }
        if (proposal.isPresent() && proposal.get().before().cells() != cells) {
            throw new IllegalArgumentException(
                    "proposal has " + proposal.get().before().cells() + " cells, needed " + cells);
        }
    }

    /** The same case with another proposal. */
    CaseFile with(Proposal other) {
        return new CaseFile(machine, highLoad, fuelTable, targetTable, rides, estimate, Optional.of(other), limits);
    }

    /** The target table in lambda: an AFR is divided by the ratio of the fuel in the tank. */
    public Table targetLambda() {
        if (targetTable.quantity() == Quantity.LAMBDA) {
            return targetTable;
        }
        double[] lambda = targetTable.toArray();
        double ratio = machine.fuel().stoichiometricRatio();
        for (int c = 0; c < lambda.length; c++) {
            lambda[c] /= ratio;
        }
        return targetTable.with(Quantity.LAMBDA, lambda);
    }
}
