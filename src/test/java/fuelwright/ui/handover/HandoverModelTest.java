package fuelwright.ui.handover;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ui.FixtureServices;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

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
        assertSame(session.job(), session.outputs().handedOverProperty().get());
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
    void theSelectedCellIsShownAsItIsTyped() {
        session.openSample();
        session.cellProperty().set(100);
        HandoverModel.Typed typed = model.selected().orElseThrow();
        assertEquals(
                Double.parseDouble(typed.after()),
                session.analysis().proposal().cell(100).after(),
                0.05);
    }

    @Test
    void whileAStopStandsOnlyRicherCellsCanBeChosenAndUndone() {
        session.openSample();
        int leaned = model.leanedProperty().get();
        assertTrue(leaned > 0);
        model.onlyRicher();
        assertEquals(0, model.leanedProperty().get());
        assertTrue(session.analysis().proposal().cells().stream().noneMatch(c -> c.after() < c.before()));
        session.undo();
        assertEquals(leaned, model.leanedProperty().get());
    }

    @Test
    void figuresAloneNeverLeaveWhileAStopStands() {
        session.openSample();
        model.stopsReadProperty().set(true);
        assertThrows(IllegalStateException.class, model::copyCells);
    }
}
