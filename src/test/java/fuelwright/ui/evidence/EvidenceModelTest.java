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
        List<List<String>> lines = model.tipIn();
        assertEquals(5, lines.size());
        assertEquals(List.of("50–100 %/s"), lines.get(0));
        assertEquals(List.of("100–200 %/s"), lines.get(2));
        for (int line : new int[] {1, 3, 4}) {
            assertEquals(model.tipInHeadings().size(), lines.get(line).size());
        }
        assertTrue(lines.get(3).get(2).endsWith("!"), lines.toString());
        assertTrue(!lines.get(4).get(2).endsWith("!"), lines.toString());
        assertTrue(lines.get(3).get(3).contains("beyond"), lines.toString());
        assertTrue(model.tipInWords().contains("6 more"), model.tipInWords());
    }

    @Test
    void theColoursOfUnseenStretchesSpanWhatIsLeftNotWhatItWas() {
        model.shownProperty().set(EvidenceMap.Shown.UNSEEN);
        double most = session.analysis().validation().orElseThrow().cells().values().stream()
                .mapToDouble(Validation.Cell::errorAfterPercent)
                .max()
                .orElseThrow();
        assertTrue(model.most() >= most && model.most() <= 2 * most, model.most() + " for " + most);
    }
}
