package fuelwright;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The arrows between packages, as docs/architecture.md draws them. */
class ArchitectureTest {

    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("fuelwright");

    private static final ArchRule ARROWS = layeredArchitecture()
            .consideringOnlyDependenciesInLayers()
            .layer("main")
            .definedBy("fuelwright")
            .layer("ui")
            .definedBy("fuelwright.ui..")
            .layer("cli")
            .definedBy("fuelwright.cli..")
            .layer("work")
            .definedBy("fuelwright.work..")
            .layer("handover, job")
            .definedBy("fuelwright.handover..", "fuelwright.job..")
            .layer("safety")
            .definedBy("fuelwright.safety..")
            .layer("power")
            .definedBy("fuelwright.power..")
            .layer("estimate")
            .definedBy("fuelwright.estimate..")
            .layer("screen")
            .definedBy("fuelwright.screen..")
            .layer("inputs")
            .definedBy("fuelwright.table..", "fuelwright.ride..", "fuelwright.mixture..", "fuelwright.airflow..")
            .layer("unit, issue")
            .definedBy("fuelwright.unit..", "fuelwright.issue..")
            .whereLayer("main")
            .mayNotBeAccessedByAnyLayer()
            .whereLayer("ui")
            .mayOnlyBeAccessedByLayers("main")
            .whereLayer("cli")
            .mayOnlyBeAccessedByLayers("main")
            .whereLayer("work")
            .mayOnlyBeAccessedByLayers("main", "ui", "cli")
            .whereLayer("handover, job")
            .mayOnlyBeAccessedByLayers("ui", "cli", "work")
            .whereLayer("safety")
            .mayOnlyBeAccessedByLayers("ui", "cli", "work", "handover, job")
            .whereLayer("power")
            .mayOnlyBeAccessedByLayers("ui", "cli", "work", "handover, job", "safety")
            .whereLayer("estimate")
            .mayOnlyBeAccessedByLayers("ui", "cli", "work", "handover, job", "safety", "power")
            .whereLayer("screen")
            .mayOnlyBeAccessedByLayers("ui", "cli", "work", "handover, job", "safety", "power", "estimate")
            .whereLayer("inputs")
            .mayOnlyBeAccessedByLayers("ui", "cli", "work", "handover, job", "safety", "power", "estimate", "screen");

    @Test
    void arrowsPointDownwardsOnly() {
        ARROWS.check(PROGRAM);
    }

    @Test
    void aPlantedViolationIsFound() {
        JavaClasses withPlanted = new ClassFileImporter().importPackages("fuelwright.work", "fuelwright.screen");
        assertTrue(withPlanted.contain("fuelwright.screen.PlantedViolation"));
        AssertionError failure = assertThrows(AssertionError.class, () -> ARROWS.check(withPlanted));
        assertTrue(failure.getMessage().contains("PlantedViolation"), failure.getMessage());
    }

    @Test
    void packagesFormNoCycle() {
        slices().matching("fuelwright.(*)..").should().beFreeOfCycles().check(PROGRAM);
    }

    @Test
    void onlyTheWindowKnowsItsToolkit() {
        noClasses()
                .that()
                .resideOutsideOfPackage("fuelwright.ui..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("javafx..", "org.controlsfx..", "atlantafx..")
                .check(PROGRAM);
    }

    @Test
    void interfaceThreadIsAskedForInOnePlaceOnly() {
        noClasses()
                .that()
                .resideOutsideOfPackages("fuelwright.ui.session..", "fuelwright.ui")
                .should()
                .callMethod(javafx.application.Platform.class, "runLater", Runnable.class)
                .check(PROGRAM);
    }

    @Test
    void everyPackageSaysWhatItIsFor() throws IOException {
        Path root = Path.of("src/main/java/fuelwright");
        try (Stream<Path> files = Files.walk(root)) {
            List<Path> silent = files.filter(Files::isDirectory)
                    .filter(d -> !d.equals(root))
                    .filter(ArchitectureTest::hasClasses)
                    .filter(d -> !Files.exists(d.resolve("package-info.java")))
                    .toList();
            assertTrue(silent.isEmpty(), "no package-info.java in " + silent);
        }
    }

    private static boolean hasClasses(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            return files.anyMatch(f -> f.toString().endsWith(".java"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
