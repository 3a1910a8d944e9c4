package fuelwright.ui.cautions;

import fuelwright.airflow.HighLoad;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.safety.BurntMixture;
import fuelwright.safety.Caution;
import fuelwright.safety.LeanLimit;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.plot.Lane;
import fuelwright.ui.plot.MinMaxPyramid;
import fuelwright.ui.plot.Timeline;
import fuelwright.ui.plot.Trace;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.RideTrace;
import fuelwright.ui.session.Runner;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.ArrayList;
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
    /** How much of the lanes' height the mixture takes. */
    private static final double MIXTURE_SHARE = 0.6;
    /** What the mixture's lane shows beyond what is drawn in it, in lambda. */
    private static final double BEYOND = 0.05;

    private static final String LANE = Runner.LOOK + "-moment";

    private final CautionsModel model;
    private final Timeline timeline = new Timeline();
    private final Label title = Parts.text("", "strong");
    private final Label count = Parts.label("", "muted", "small");
    private final Button before = Parts.button("cautions.before", () -> step(-1), "compact");
    private final Button after = Parts.button("cautions.after", () -> step(1), "compact");
    private final VBox box;
    /** The ride's lanes, the mixture's scaled to the whole ride. */
    private Trace whole;

    private JobRide shown;
    private Mixture shownAs;
    private Measures shownIn;
    private Analysis shownFor;

    MomentTrace(CautionsModel model) {
        this.model = model;
        timeline.themeProperty().bind(model.session().themeProperty());
        timeline.setPrefHeight(236);
        timeline.setMinHeight(210);
        before.setAccessibleText(Words.of("cautions.before.words"));
        after.setAccessibleText(Words.of("cautions.after.words"));
        HBox.setHgrow(title, Priority.ALWAYS);
        title.setMaxWidth(Double.MAX_VALUE);
        count.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        Button ride = Parts.button("cautions.openride", model::showMoment, "compact");
        box = new VBox(
                4,
                Parts.row(8, title, count, before, after, ride),
                timeline,
                Parts.text(Words.of("cautions.trace.note"), "muted", "small"));
        model.momentProperty().addListener((p, old, now) -> show());
        model.session().whenShownOtherwise(this::show);
        model.session().analysisProperty().addListener((p, old, now) -> show());
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
        Measures measures = model.session().measuresProperty().get();
        Analysis analysis = model.session().analysis();
        if (ride.get() != shown || !as.equals(shownAs) || measures != shownIn || analysis != shownFor) {
            if (ride.get() != shown) {
                whole = null;
                timeline.traceProperty().set(null);
            }
            shown = ride.get();
            shownAs = as;
            shownIn = measures;
            shownFor = analysis;
            Job job = model.session().job();
            model.session().look(LANE, (p, c) -> trace(job, analysis, ride.get(), as, measures), traced -> {
                whole = traced;
                mark();
            });
        }
        Caution.Moment m = moment.get();
        int of = model.selectedProperty().get().moments().size();
        title.setText(model.sentence(m));
        count.setText(Words.of("cautions.count", model.index() + 1, of));
        before.setDisable(model.index() <= 0);
        after.setDisable(model.index() + 1 >= of);
        mark();
        timeline.setAccessibleText(Words.of("cautions.trace", title.getText()));
    }

    private void mark() {
        Caution.Moment m = model.momentProperty().get();
        if (m != null && whole != null) {
            timeline.traceProperty().set(around(whole, m, model.session().mixture()));
            Caution of = model.selectedProperty().get();
            timeline.mark(m.startS(), m.startS() + m.lengthS(), AROUND_S, of == null || of.isStop());
        }
    }

    /** The lanes with the mixture's scaled to what is drawn in a moment. */
    private static Trace around(Trace whole, Caution.Moment moment, Mixture as) {
        double at = whole.clock().shown(moment.startS());
        int from = whole.clock().rowAtOrAfter(at);
        int to = Math.min(whole.clock().size(), whole.clock().rowAtOrAfter(at + moment.lengthS()) + 1);
        List<Lane> lanes = whole.lanes().stream()
                .map(lane -> lane.target().isPresent() ? scaled(lane, from, to, BEYOND * as.scale()) : lane)
                .toList();
        return new Trace(whole.clock(), lanes, whole.screenedOut(), whole.reason());
    }

    private static Lane scaled(Lane lane, int from, int to, double beyond) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Optional<MinMaxPyramid> line : List.of(Optional.of(lane.values()), lane.target(), lane.limit())) {
            if (line.isPresent() && to > from) {
                MinMaxPyramid.Extent extent = line.get().extent(from, to);
                if (!extent.isEmpty()) {
                    least = Math.min(least, Math.max(lane.low(), extent.min()));
                    most = Math.max(most, Math.min(lane.high(), extent.max()));
                }
            }
        }
        return most >= least ? lane.within(least - beyond, most + beyond) : lane;
    }

    /** Engine speed and load as logged; the mixture where it was burnt, so that it stands above its limit where it was lean. */
    private static Trace trace(Job job, Analysis analysis, JobRide ride, Mixture as, Measures measures) {
        Optional<Table> target = job.targetTable();
        Trace all = RideTrace.of(ride.ride(), Optional.empty(), target, as, measures);
        Optional<LeanLimit> limit = target.map(t -> limit(job, analysis, ride, t, as));
        boolean byPressure = job.fuelTable()
                .filter(t -> t.load().kind() == Axis.Kind.MANIFOLD_PRESSURE)
                .isPresent();
        List<Lane> lanes = new ArrayList<>();
        long mixtures = all.lanes().stream().filter(l -> l.target().isPresent()).count();
        long others = all.lanes().stream()
                .filter(l -> l.target().isEmpty() && (byPressure || !RideTrace.isPressure(l)))
                .count();
        double tall = others * MIXTURE_SHARE / (1 - MIXTURE_SHARE) / Math.max(1, mixtures);
        int sensor = 0;
        for (Lane lane : all.lanes()) {
            if (lane.target().isPresent()) {
                Lane burnt = burnt(job, analysis, ride, sensor++)
                        .map(b -> lane.showing(row -> b.at(row) * as.scale()))
                        .orElse(lane);
                lanes.add(limit.map(l -> burnt.limited(row -> l.at(row) * as.scale()))
                        .orElse(burnt)
                        .tall(Math.max(1, tall)));
            } else if (byPressure || !RideTrace.isPressure(lane)) {
                lanes.add(lane);
            }
        }
        return new Trace(all.clock(), lanes, all.screenedOut(), all.reason());
    }

    private static Optional<BurntMixture> burnt(Job job, Analysis analysis, JobRide ride, int sensor) {
        if (analysis == null || job.fuelTable().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(BurntMixture.of(
                ride.ride(),
                sensor,
                ride.madeWith().orElse(job.fuelTable().get()),
                job.machine(),
                analysis.estimate().sensor().model(),
                job.proposal().deadTimeMs()));
    }

    private static LeanLimit limit(Job job, Analysis analysis, JobRide ride, Table target, Mixture as) {
        HighLoad highLoad = analysis == null ? HighLoad.of(job.machine()) : analysis.highLoad();
        double[] lambda = Arrays.stream(target.toArray())
                .map(x -> as.lambdaOf(target.quantity(), x))
                .toArray();
        return LeanLimit.of(ride.ride(), target.with(Quantity.LAMBDA, lambda), highLoad, job.limits());
    }
}
