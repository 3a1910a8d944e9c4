package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CatalogueTest {

    static List<Machine> machines() {
        return SimulatedMachines.all();
    }

    static List<Trial> cleanTrials() {
        return CleanRides.all();
    }

    @Test
    void theSimulatorUsesNothingOfTheProgram() {
        ArchRuleDefinition.noClasses()
                .that()
                .resideInAPackage("fuelwright.simulated")
                .should()
                .dependOnClassesThat(JavaClass.Predicates.resideInAPackage("fuelwright..")
                        .and(JavaClass.Predicates.resideOutsideOfPackage("fuelwright.simulated")))
                .check(new ClassFileImporter().importPackages("fuelwright.simulated"));
    }

    /** What the driver of such a machine would feel or read, taken from the truth. */
    @Test
    void theHiddenClosedLoopHidesTheOldTablesError() {
        SimulatedRide ride = FaultyRides.hiddenClosedLoop().rides().get(0);
        double before = Scores.mixtureError(FaultyRides.hiddenClosedLoop().table(), ride);
        double seen = ride.moments().stream()
                .filter(m -> m.timeS() > 400 && m.fuelOn() && m.target() > 0.99 && m.throttlePct() > 3)
                .mapToDouble(m -> Math.log(m.lambda() / m.target()))
                .average()
                .orElseThrow();
        assertTrue(before > 0.1 && Math.abs(seen) < 0.5 * before, "before " + before + ", seen " + seen);
        assertTrue(!ride.csv().contains("trim"));
    }

    @Test
    void thereAreEnoughMachinesAndTrialsAndNoTwoHaveTheSameName() {
        List<String> names = StudyRides.all().stream().map(Trial::name).collect(Collectors.toList());
        assertTrue(machines().size() >= 12);
        assertTrue(cleanTrials().size() >= 10);
        assertEquals(names.size(), names.stream().distinct().count());
    }

    @ParameterizedTest
    @MethodSource("machines")
    void theRightTableIsRightAndTheOldOneIsNot(Machine machine) {
        MachineTables tables = new MachineTables(machine);
        Grid old = tables.old(3);
        Grid truth = tables.truth();
        SimulatedRide ride = Simulation.ride(tables, old, RideProfile.road(6), 3);
        double before = 100 * Scores.mixtureError(old, ride);
        double floor = 100 * Scores.mixtureError(truth, ride);
        assertTrue(floor < 0.5, "floor " + floor + " %");
        assertTrue(before > 3 && before < 20, "before " + before + " %");
        Grid factor = tables.factor(old, truth);
        int beyondCaps = 0;
        for (double k : factor.toArray()) {
            beyondCaps += k < 0.95 || k > 1.40 ? 1 : 0;
        }
        assertTrue(beyondCaps < 0.08 * factor.cells(), beyondCaps + " cells beyond the caps");
    }

    @ParameterizedTest
    @MethodSource("cleanTrials")
    void aCleanTrialsTableIsWithinTwoPercentOfTheTruth(Trial trial) {
        Grid factor = trial.tables().factor(trial.table(), trial.tables().truth());
        double rounding = trial.machine().unit().fuel().step();
        for (int c = 0; c < factor.cells(); c++) {
            double delivered =
                    Math.abs(trial.machine().unit().delivered(trial.table().at(c)));
            double unitStep = trial.machine().unit().fuel() == ControlUnit.Fuel.TRIM ? rounding / 100 : rounding;
            assertEquals(1, factor.at(c), 0.0165 + 0.6 * unitStep / delivered, "cell " + c);
        }
    }
}
