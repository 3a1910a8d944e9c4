package fuelwright.ui.cautions;

import fuelwright.airflow.HighLoad;
import fuelwright.job.JobRide;
import fuelwright.safety.Caution;
import fuelwright.safety.LeanLimit;
import fuelwright.safety.Limits;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.plot.Lane;
import fuelwright.ui.plot.Timeline;
import fuelwright.ui.plot.Trace;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.RideTrace;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The ride around a moment of the selected caution: what was done, what was measured, what was wanted, and the limit at high load. */
final class MomentTrace {

    private static final double AROUND_S = 6;

    private final CautionsModel model;
    private final Timeline timeline = new Timeline();
    private final Label title = Parts.text("", "strong");
    private final Label count = Parts.label("", "muted", "small");
    private final Button before = Parts.button("cautions.before", () -> step(-1), "compact");
    private final Button after = Parts.button("cautions.after", () -> step(1), "compact");
    private final VBox box;
    private JobRide shown;
    private Mixture shownAs;

    MomentTrace(CautionsModel model) {
        this.model = model;
        timeline.themeProperty().bind(model.session().themeProperty());
        timeline.setPrefHeight(270);
        timeline.setMinHeight(210);
        before.setAccessibleText(Words.of("cautions.before.words"));
        after.setAccessibleText(Words.of("cautions.after.words"));
        HBox.setHgrow(title, Priority.ALWAYS);
        title.setMaxWidth(Double.MAX_VALUE);
        count.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        Button ride = Parts.button("cautions.openride", model::showMoment, "compact");
        box = new VBox(4, Parts.row(8, title, count, before, after, ride), timeline);
        model.momentProperty().addListener((p, old, now) -> show());
        model.session().afrProperty().addListener((p, old, now) -> show());
        show();
    }

    Node node() {
        return box;
    }

    private void step(int by) {
        model.step(by);
    }

    private void show() {
        Optional<Caution.Moment> moment =
                Optional.ofNullable(model.momentProperty().get());
        Optional<JobRide> ride = moment.flatMap(model::ride);
        Parts.show(box, ride.isPresent());
        if (ride.isEmpty()) {
            return;
        }
        Mixture as = model.session().mixture();
        if (ride.get() != shown || !as.equals(shownAs)) {
            shown = ride.get();
            shownAs = as;
            timeline.traceProperty().set(trace(ride.get(), as));
        }
        Caution.Moment m = moment.get();
        int of = model.selectedProperty().get().moments().size();
        title.setText(model.sentence(m));
        count.setText(Words.of("cautions.count", model.index() + 1, of));
        before.setDisable(model.index() <= 0);
        after.setDisable(model.index() + 1 >= of);
        timeline.mark(m.startS(), m.startS() + m.lengthS(), AROUND_S);
        timeline.setAccessibleText(Words.of("cautions.trace", title.getText()));
    }

    private Trace trace(JobRide ride, Mixture as) {
        Optional<Table> target = model.session().job().targetTable();
        Trace all = RideTrace.of(ride.ride(), Optional.empty(), target, as);
        Optional<LeanLimit> limit = target.map(t -> limit(ride, t, as));
        List<Lane> lanes = all.lanes().stream()
                .filter(lane -> lane.target().isPresent() || !lane.unit().equals("kPa"))
                .map(lane -> lane.target().isEmpty()
                        ? lane
                        : limit.map(l -> lane.limited(row -> l.at(row) * as.scale()))
                                .orElse(lane)
                                .tall(2.4))
                .toList();
        return new Trace(all.clock(), lanes, all.screenedOut(), all.reason());
    }

    private LeanLimit limit(JobRide ride, Table target, Mixture as) {
        double[] lambda = Arrays.stream(target.toArray())
                .map(x -> as.lambdaOf(target.quantity(), x))
                .toArray();
        var machine = model.session().job().machine();
        return LeanLimit.of(
                ride.ride(), target.with(Quantity.LAMBDA, lambda), HighLoad.of(machine), Limits.usual(machine.fuel()));
    }
}
