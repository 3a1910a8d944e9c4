package fuelwright.ui.cautions;

import fuelwright.job.JobRide;
import fuelwright.safety.Caution;
import fuelwright.ui.plot.Lane;
import fuelwright.ui.plot.Timeline;
import fuelwright.ui.plot.Trace;
import fuelwright.ui.session.RideTrace;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** The ride around the worst moment of the selected caution: what was done, what was measured, what was wanted. */
final class MomentTrace {

    private static final double AROUND_S = 6;

    private final CautionsModel model;
    private final Timeline timeline = new Timeline();
    private final Label title = Parts.text("", "strong");
    private final VBox box = new VBox(4, title, timeline);
    private JobRide shown;
    private boolean shownAfr;

    MomentTrace(CautionsModel model) {
        this.model = model;
        timeline.themeProperty().bind(model.session().themeProperty());
        timeline.setPrefHeight(260);
        timeline.setMinHeight(200);
        model.selectedProperty().addListener((p, old, now) -> show());
        model.session().afrProperty().addListener((p, old, now) -> show());
        show();
    }

    Node node() {
        return box;
    }

    private void show() {
        Optional<Caution.Moment> worst =
                Optional.ofNullable(model.selectedProperty().get()).flatMap(Caution::worst);
        Optional<JobRide> ride = worst.flatMap(model::ride);
        Parts.show(box, ride.isPresent());
        if (ride.isEmpty()) {
            return;
        }
        boolean afr = model.session().afrProperty().get();
        if (ride.get() != shown || afr != shownAfr) {
            shown = ride.get();
            shownAfr = afr;
            timeline.traceProperty().set(trace(ride.get(), afr));
        }
        Caution.Moment m = worst.get();
        title.setText(model.words(m) + model.worst(m).map(w -> ", " + w).orElse(""));
        timeline.mark(m.startS(), m.startS() + m.lengthS(), AROUND_S);
        timeline.setAccessibleText(Words.of("cautions.trace", title.getText()));
    }

    private Trace trace(JobRide ride, boolean afr) {
        Trace all = RideTrace.of(
                ride.ride(), Optional.empty(), model.session().job().targetTable(), afr);
        List<Lane> lanes = all.lanes().stream()
                .filter(lane -> lane.target().isPresent() || !lane.unit().equals("kPa"))
                .map(lane -> lane.target().isPresent() ? lane.tall(2) : lane)
                .toList();
        return new Trace(all.clock(), lanes, all.screenedOut(), all.reason());
    }
}
