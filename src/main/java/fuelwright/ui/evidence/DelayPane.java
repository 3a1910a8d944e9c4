package fuelwright.ui.evidence;

import fuelwright.estimate.DelayProfile;
import fuelwright.ui.plot.Curves;
import fuelwright.ui.plot.CurvesPlot;
import fuelwright.ui.session.Runner;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Measured;
import fuelwright.unit.Unit;
import fuelwright.unit.Units;
import fuelwright.work.Analysis;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** The picture that shows why the delay is what it is. Worked out beside the window's thread when asked for: it takes another fit. */
final class DelayPane extends VBox {

    private static final double HEIGHT = 170;

    private final Session session;
    private final CurvesPlot plot = new CurvesPlot(cell -> {});
    private final Label words = Parts.text("", "muted", "small");
    private final Button ask;
    private DelayProfile profile;

    DelayPane(Session session) {
        super(4);
        this.session = session;
        this.ask = Parts.button("evidence.delay.show", this::work, "compact");
        setId("evidence-delay");
        plot.setPrefHeight(HEIGHT);
        getChildren().addAll(ask, plot, words);
        session.analysisProperty().addListener((p, old, now) -> show(null));
        session.themeProperty().addListener((p, old, now) -> show(profile));
        session.whenShownOtherwise(() -> show(profile));
        show(null);
    }

    private void work() {
        Analysis analysis = session.analysis();
        ask.setDisable(true);
        ask.setText(Words.of("evidence.delay.working"));
        session.look(Runner.LOOK + "-delay", (p, c) -> analysis.delayProfile(c::check), found -> {
            if (session.analysis() == analysis) {
                show(found);
            }
        });
    }

    /** @param found null where it is not asked for */
    private void show(DelayProfile found) {
        profile = found;
        ask.setDisable(false);
        ask.setText(Words.of("evidence.delay.show"));
        Parts.show(ask, found == null);
        Parts.show(plot, found != null);
        Parts.show(words, found != null);
        if (found == null) {
            return;
        }
        String text = Words.of(
                "evidence.delay.words",
                Figures.plain(1000 * found.used().delayS(), 0),
                Figures.plain(found.tried().get(0).standardErrors(), 1));
        List<DelayProfile.Tried> all = all(found);
        plot.show(
                curves(all, session.shownIn()),
                all.indexOf(found.used()),
                session.themeProperty().get(),
                text);
        words.setText(text);
    }

    /** The delays that were tried, and among them the one that was used. */
    private static List<DelayProfile.Tried> all(DelayProfile profile) {
        return Stream.concat(profile.tried().stream(), Stream.of(profile.used()))
                .sorted(Comparator.comparingDouble(DelayProfile.Tried::delayS))
                .toList();
    }

    /** A dot for each delay: {@link Curves#cells} are their numbers. */
    private static Curves curves(List<DelayProfile.Tried> all, Units units) {
        return new Curves(
                all.stream().map(t -> 1000 * t.delayS()).toList(),
                List.of(new Curves.Line(
                        "", all.stream().map(DelayProfile.Tried::standardErrors).toList(), Curves.Weight.BOLD)),
                Words.of(
                        "evidence.delay.x",
                        Figures.plain(DelayProfile.SPEED_RPM, 0),
                        units.words(Measured.of(DelayProfile.FLOW_G_PER_S, Unit.GRAM_PER_SECOND, 0))),
                Words.of("evidence.delay.y"),
                IntStream.range(0, all.size()).boxed().toList());
    }
}
