package fuelwright.ui.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.Decision;
import fuelwright.estimate.Standing;
import fuelwright.handover.HardwareTable;
import fuelwright.handover.ToType;
import fuelwright.job.FirstStart;
import fuelwright.job.HardwareProfile;
import fuelwright.table.Axis;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import fuelwright.work.Analysis;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class HandoverModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final HandoverModel model = new HandoverModel(session);

    @Test
    void nothingLeavesBeforeTheStopsWereRead() {
        assertFalse(model.mayLeave());
        session.openSample();
        assertFalse(model.mayLeave());
        assertThrows(IllegalStateException.class, model::copy);
        assertThrows(IllegalStateException.class, () -> model.export(Path.of("out"), true));
    }

    @Test
    void onceReadTheTableIsCopiedWithItsCaution() {
        session.openSample();
        model.stopsReadProperty().set(true);
        assertTrue(model.copy().contains("volumetric efficiency"));
        assertTrue(model.outcomeProperty().get().contains("Stop"));
    }

    @Test
    void theNextStepLeadsToTheCheckAndTheUserLeavesIt() {
        session.outputs().checkingProperty().set(true);
        assertEquals(HandoverModel.Step.CHECK, model.stepProperty().get());
        assertEquals(
                HandoverModel.Step.CHECK,
                new HandoverModel(session).stepProperty().get());
        model.stepProperty().set(HandoverModel.Step.HARDWARE);
        assertFalse(session.outputs().checkingProperty().get());
        assertEquals(HandoverModel.Step.HARDWARE, model.stepProperty().get());
    }

    @Test
    void writingSaysWhatWasWrittenAndTheStageIsDone() {
        session.openSample();
        model.stopsReadProperty().set(true);
        model.export(Path.of("out"), true);
        assertTrue(model.outcomeProperty().get().contains("corrected.csv"));
        assertTrue(session.outputs().isHandedOver());
        session.edit(job -> job.withFirstStart(Set.of(FirstStart.TRIMS)));
        assertTrue(session.outputs().isHandedOver(), "ticking off changes nothing of what was handed over");
        session.edit(job -> job.withName("another"));
        assertFalse(session.outputs().isHandedOver());
    }

    @Test
    void pdfsAreWrittenOnlyWhenAskedFor() {
        session.openSample();
        model.stopsReadProperty().set(true);
        model.export(Path.of("out"), true);
        assertFalse(model.outcomeProperty().get().contains("entry-sheet.pdf"));
        model.pdfProperty().set(true);
        model.export(Path.of("out"), true);
        assertTrue(model.outcomeProperty().get().contains("entry-sheet.pdf"));
    }

    @Test
    void aPdfGetsItsEndingAndNeverTakesAnothersPlaceUnasked(@TempDir Path folder) throws IOException {
        List<Path> written = new ArrayList<>();
        Session own = new Session(
                new FixtureServices() {
                    @Override
                    public void writePdf(Analysis analysis, String name, Path file) {
                        written.add(file);
                    }
                },
                new SameThreadRunner());
        HandoverModel stage = new HandoverModel(own);
        own.openSample();
        stage.stopsReadProperty().set(true);
        stage.writePdf("report.pdf", folder.resolve("my report"));
        stage.writePdf("report.pdf", folder.resolve("b.PDF"));
        assertEquals(List.of(folder.resolve("my report.pdf"), folder.resolve("b.PDF")), written);
        Files.createFile(folder.resolve("old.pdf"));
        stage.writePdf("report.pdf", folder.resolve("old"));
        assertEquals(2, written.size());
        assertTrue(stage.outcomeProperty().get().startsWith("old.pdf is there already"));
        stage.writePdf("report.pdf", folder.resolve("old.pdf"));
        assertEquals(3, written.size());
    }

    @Test
    void theSelectedCellIsShownAsItIsTyped() {
        session.openSample();
        session.cellProperty().set(100);
        HandoverModel.Typed typed = model.selectedProperty().get().orElseThrow();
        assertEquals(
                Double.parseDouble(typed.after()),
                session.analysis().proposal().cell(100).after(),
                0.05);
    }

    @Test
    void theSelectedCellFollowsTheProposal() {
        session.openSample();
        session.cellProperty().set(100);
        double before = session.analysis().proposal().before().at(100);
        double other = before * 0.8;
        session.edit(job ->
                job.withProposal(job.proposal().withDecisions(Map.of(100, new Decision(Decision.Kind.SET, other)))));
        HandoverModel.Typed typed = model.selectedProperty().get().orElseThrow();
        assertEquals(other, Double.parseDouble(typed.after()), 0.05);
        assertEquals(model.mapProperty().get().cells().get(100).figure(), typed.after());
    }

    /** Whether they change or stay, and whatever was decided of them. */
    @Test
    void everyCellThatNobodyRodeIsHatched() {
        session.openSample();
        session.edit(job ->
                job.withProposal(job.proposal().withDecisions(Map.of(0, new Decision(Decision.Kind.HELD, 0)))));
        int changing = 0;
        for (int cell = 0; cell < session.analysis().proposal().cells().size(); cell++) {
            boolean inferred = session.analysis().proposal().cell(cell).standing() == Standing.INFERRED;
            assertEquals(inferred, model.mapProperty().get().cells().get(cell).hatched(), "cell " + cell);
            changing += inferred && model.sheetProperty().get().changes(cell) ? 1 : 0;
        }
        assertTrue(changing > 0);
    }

    @Test
    void cellsThatTheHardwaresRangeHoldsBackAreMarked() {
        session.openSample();
        assertTrue(model.mapProperty().get().cells().stream()
                .allMatch(c -> c.below().isEmpty()));
        session.edit(job -> job.withHardware(new HardwareProfile(
                "",
                HardwareProfile.Holds.VALUE,
                Double.NEGATIVE_INFINITY,
                80,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                false)));
        ToType sheet = model.sheetProperty().get();
        int cut = 0;
        for (int cell = 0; cell < sheet.after().cells(); cell++) {
            HeatCell shown = model.mapProperty().get().cells().get(cell);
            if (sheet.bounded().containsKey(cell)) {
                cut++;
                assertEquals("cut", shown.below());
                assertEquals(80, sheet.after().at(cell));
                boolean high = sheet.bounded().get(cell) == HardwareTable.Bound.CUT_AT_HIGH_LOAD;
                assertTrue(!high || shown.stop(), "cell " + cell);
                assertTrue(shown.words().endsWith("cut."), shown.words());
            }
        }
        assertTrue(cut > 0);
        String said = session.analysis().hardware().orElseThrow().cautions().stream()
                .filter(c -> c.rule().equals("hardware-range"))
                .findFirst()
                .orElseThrow()
                .what();
        assertTrue(said.startsWith(cut + " cell"), said);
    }

    @Test
    void whileAStopStandsOnlyRicherCellsCanBeChosenAndUndone() {
        session.openSample();
        int leaned = model.leanedProperty().get();
        assertTrue(leaned > 0);
        model.leanNoCell(true);
        assertEquals(leaned, session.analysis().proposal().notLeaned());
        assertTrue(session.analysis().proposal().cells().stream().noneMatch(c -> c.after() < c.before()));
        assertTrue(session.job().proposal().decisions().isEmpty(), "a choice of the handover holds no cell by hand");
        model.leanNoCell(false);
        assertEquals(0, session.analysis().proposal().notLeaned());
        session.undo();
        session.undo();
        assertEquals(leaned, model.leanedProperty().get());
    }

    @Test
    void hardwareWithCellsOfItsOwnIsNowhereLeanerThanTheOldTableWhereNoCellIsLeaned() {
        session.openSample();
        session.edit(job -> job.withProposal(job.proposal().withStep(0.5))
                .withHardware(new HardwareProfile(
                        "",
                        HardwareProfile.Holds.PERCENT_CHANGE,
                        Double.NEGATIVE_INFINITY,
                        Double.POSITIVE_INFINITY,
                        Optional.of(new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2200, 3700, 5000, 8000)),
                        Optional.empty(),
                        Optional.empty(),
                        false)));
        assertTrue(Arrays.stream(model.sheetProperty().get().after().toArray()).anyMatch(v -> v < 0));
        model.leanNoCell(true);
        assertTrue(Arrays.stream(model.sheetProperty().get().after().toArray()).allMatch(v -> v >= 0));
    }

    @Test
    void figuresAloneNeverLeaveWhileAStopStands() {
        session.openSample();
        model.stopsReadProperty().set(true);
        assertThrows(IllegalStateException.class, model::copyCells);
    }
}
