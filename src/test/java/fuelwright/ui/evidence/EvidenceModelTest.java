package fuelwright.ui.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.estimate.Validation;
import fuelwright.ui.FixtureServices;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.session.SameThreadRunner;
import fuelwright.ui.session.Session;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class EvidenceModelTest {

    private final Session session = new Session(new FixtureServices(), new SameThreadRunner());
    private final EvidenceModel model = new EvidenceModel(session);

    @BeforeEach
    void open() {
        session.openSample();
    }

    @Test
    void theMapOfUnseenStretchesShowsWhatIsLeftAndWhatWas() {
        model.shownProperty().set(EvidenceMap.Shown.UNSEEN);
        Validation validation = session.analysis().validation().orElseThrow();
        List<HeatCell> cells = model.mapProperty().get().cells();
        Validation.Cell judged = validation.at(60).orElseThrow();
        assertEquals("15.0", cells.get(60).figure());
        assertTrue(judged.isWorse());
        assertEquals("(14.0)", cells.get(60).below());
    }

    @Test
    void aCellWithoutUnseenReadingsHasNoFigure() {
        model.shownProperty().set(EvidenceMap.Shown.UNSEEN);
        HeatCell drawn = model.mapProperty().get().cells().get(0);
        assertEquals("–", drawn.figure());
        assertTrue(drawn.words().contains("kept out"), drawn.words());
    }

    @Test
    void openingsAreToldByRateWithTheClearOnesMarked() {
        List<EvidenceModel.TipInLine> lines = model.tipIn();
        assertEquals(3, lines.size());
        assertEquals("50–100 %/s", lines.get(0).heading());
        assertEquals("100–200 %/s", lines.get(1).heading());
        assertEquals("", lines.get(2).heading());
        assertTrue(lines.get(1).clear());
        assertTrue(!lines.get(2).clear());
        assertTrue(lines.get(1).fact().words().contains("beyond"), lines.toString());
        assertTrue(model.tipInWords().contains("6 more"), model.tipInWords());
    }
}
