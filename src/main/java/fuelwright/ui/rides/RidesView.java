package fuelwright.ui.rides;

import fuelwright.safety.Caution;
import fuelwright.ui.plot.Timeline;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Words;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Rides. */
public final class RidesView implements StagePane {

    private static final double AROUND_MOMENT_S = 8;
    /** Lower, lanes and cells can't be read: then the page scrolls. */
    private static final double LEAST_PLOT = 320;

    private final RidesModel model;
    private final Timeline timeline = new Timeline();
    private final ToggleButton overTime = new ToggleButton(Words.of("rides.view.time"));
    private final ToggleButton overTable = new ToggleButton(Words.of("rides.view.table"));
    private final VBox questions = new VBox(10);
    private final VBox root = new VBox(10);
    private final Node work = Parts.work(root);
    private final Node explanation;

    public RidesView(RidesModel model) {
        this.model = model;
        timeline.traceProperty().bind(model.traceProperty());
        timeline.themeProperty().bind(model.session().themeProperty());
        timeline.setOnMark(model::choose);
        timeline.setId("timeline");
        timeline.setMinHeight(LEAST_PLOT);
        Label summary = new Label();
        summary.textProperty().bind(model.summaryProperty());
        VBox heading = Parts.heading(new Label(Words.of("rides.title")), summary);
        HBox.setHgrow(heading, Priority.ALWAYS);
        HBox top = new HBox(
                8,
                heading,
                Parts.button("rides.remove", model.order()::remove, "compact"),
                Parts.button("rides.open", this::open, "compact"));
        ScreensPane screens = new ScreensPane(model);
        Node bar = new RidesBar(model, Parts.choice(new ToggleGroup(), overTime, overTable), screens.switchOfSliders())
                .node();
        VBox content = new VBox(10, top, bar, screens.node(), plots());
        content.visibleProperty().bind(model.anyProperty());
        VBox empty = Parts.empty(
                Words.of("rides.empty.title"),
                Words.of("rides.empty"),
                model.session().workingProperty(),
                model.session().doingProperty(),
                Parts.button("rides.open", this::open, "primary"));
        // While a ride waits for an answer, the question above says so.
        empty.visibleProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> !model.anyProperty().get()
                                && model.session()
                                        .question()
                                        .waitingProperty()
                                        .get()
                                        .isEmpty(),
                        model.anyProperty(),
                        model.session().question().waitingProperty()));
        StackPane either = new StackPane(content, empty);
        VBox.setVgrow(either, Priority.ALWAYS);
        root.getChildren().addAll(questions, either);
        questions
                .getChildren()
                .addAll(
                        new RefusedPane(model.session().refused()).node(),
                        new QuestionPane(model.session()).node(),
                        new LacksPane(model.session()).node());
        questions
                .visibleProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> questions.getChildren().stream().anyMatch(Node::isVisible),
                        questions.getChildren().stream()
                                .map(Node::visibleProperty)
                                .toArray(javafx.beans.Observable[]::new)));
        questions.managedProperty().bind(questions.visibleProperty());
        root.getStyleClass().add("work");
        explanation = new ChannelsPane(model).node();
        model.session().momentProperty().addListener((p, old, now) -> moment(now));
        // The moment of another ride is marked when that ride's lanes are there.
        model.traceProperty().addListener((p, old, now) -> {
            if (now != null && (old == null || old.clock() != now.clock())) {
                moment(model.session().momentProperty().get());
            }
        });
        moment(model.session().momentProperty().get());
    }

    private StackPane plots() {
        overTime.setSelected(true);
        overTime.setId("over-time");
        overTable.setId("over-table");
        VBox.setVgrow(timeline, Priority.ALWAYS);
        VBox time = new VBox(4, timeline, Parts.text(Words.of("rides.hint"), "muted", "small"));
        Node density = new DensityPane(model).node();
        time.visibleProperty().bind(overTime.selectedProperty());
        density.visibleProperty().bind(overTable.selectedProperty());
        StackPane plots = new StackPane(time, density);
        VBox.setVgrow(plots, Priority.ALWAYS);
        return plots;
    }

    private void open() {
        AskFiles.choose(root, model.session()::open);
    }

    private void moment(Caution.Moment moment) {
        if (moment == null) {
            timeline.unmark();
        } else {
            timeline.mark(moment.startS(), moment.startS() + moment.lengthS(), AROUND_MOMENT_S, model.isOfStop(moment));
        }
    }

    @Override
    public Node work() {
        return work;
    }

    @Override
    public Node explanation() {
        return explanation;
    }

    @Override
    public Node first() {
        return questions.getChildren().stream()
                .map(Parts::firstIn)
                .flatMap(java.util.Optional::stream)
                .findFirst()
                .orElse(timeline);
    }
}
