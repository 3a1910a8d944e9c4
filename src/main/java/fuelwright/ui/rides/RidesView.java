package fuelwright.ui.rides;

import fuelwright.job.JobRide;
import fuelwright.safety.Caution;
import fuelwright.ui.plot.Timeline;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Words;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Rides. */
public final class RidesView implements StagePane {

    private static final double AROUND_MOMENT_S = 8;

    private final RidesModel model;
    private final Timeline timeline = new Timeline();
    private final FlowPane rides = new FlowPane(8, 8);
    private final FlowPane chips = new FlowPane(6, 6);
    private final StackPane root = new StackPane();
    private final Node explanation;

    public RidesView(RidesModel model) {
        this.model = model;
        timeline.traceProperty().bind(model.traceProperty());
        timeline.themeProperty().bind(model.session().themeProperty());
        timeline.setId("timeline");
        VBox.setVgrow(timeline, Priority.ALWAYS);
        Label summary = new Label();
        summary.textProperty().bind(model.summaryProperty());
        VBox heading = Parts.heading(new Label(Words.of("rides.title")), summary);
        HBox.setHgrow(heading, Priority.ALWAYS);
        HBox top = new HBox(
                8,
                heading,
                Parts.button("rides.remove", model::remove, "compact"),
                Parts.button("rides.open", this::open, "compact"));
        VBox content = new VBox(12, top, rides, chips, timeline, Parts.text(Words.of("rides.hint"), "muted", "small"));
        content.visibleProperty().bind(model.traceProperty().isNotNull());
        VBox empty = Parts.empty(
                Words.of("rides.empty.title"),
                Words.of("rides.empty"),
                model.session().workingProperty(),
                model.session().doingProperty(),
                Parts.button("rides.open", this::open, "primary"));
        empty.visibleProperty().bind(model.traceProperty().isNull());
        root.getChildren().addAll(content, empty);
        root.getStyleClass().add("work");
        explanation = new ChannelsPane(model).node();
        model.screensProperty().addListener((p, old, now) -> chips());
        model.session().jobProperty().addListener((p, old, now) -> rides());
        model.selectedProperty().addListener((p, old, now) -> rides());
        model.session().momentProperty().addListener((p, old, now) -> moment(now));
        rides();
        chips();
        moment(model.session().momentProperty().get());
    }

    private void open() {
        AskFiles.choose(root, model.session()::open);
    }

    private void moment(Caution.Moment moment) {
        if (moment == null) {
            timeline.unmark();
        } else {
            timeline.mark(moment.startS(), moment.startS() + moment.lengthS(), AROUND_MOMENT_S);
        }
    }

    private void rides() {
        rides.getChildren().clear();
        ToggleGroup group = new ToggleGroup();
        for (int i = 0; i < model.rides().size(); i++) {
            int index = i;
            JobRide ride = model.rides().get(i);
            ToggleButton toggle = new ToggleButton(ride.ride().name());
            toggle.getStyleClass().add("compact");
            toggle.setToggleGroup(group);
            toggle.setSelected(i == model.selectedProperty().get());
            toggle.setOnAction(e -> {
                toggle.setSelected(true);
                model.selectedProperty().set(index);
            });
            rides.getChildren().add(toggle);
        }
        Parts.show(rides, model.rides().size() > 1);
    }

    private void chips() {
        chips.getChildren().clear();
        if (!model.screensProperty().get().isEmpty()) {
            Label title = Parts.label(Words.of("rides.screened"), "muted");
            title.setMinHeight(28);
            chips.getChildren().add(title);
        }
        for (RidesModel.ScreenState state : model.screensProperty().get()) {
            chips.getChildren().add(chip(state));
        }
    }

    private ToggleButton chip(RidesModel.ScreenState state) {
        ToggleButton chip = new ToggleButton();
        Label mark = Parts.label(!state.screen().canBeOff() ? "•" : state.on() ? "☑" : "☐", "chip-count");
        Label name = Parts.label(state.screen().words(), "chip-name");
        String figure = state.on() ? state.count() < 0 ? "…" : Figures.count(state.count()) : Words.of("rides.off");
        chip.setGraphic(Parts.row(6, mark, name, Parts.label(figure, "chip-count")));
        chip.getStyleClass().add("chip");
        chip.setSelected(state.on());
        chip.setMouseTransparent(!state.screen().canBeOff());
        chip.setFocusTraversable(state.screen().canBeOff());
        String why =
                Words.of("rides.chip", state.screen().words(), state.screen().why());
        chip.setTooltip(new Tooltip(why));
        chip.setAccessibleText(why + " " + figure);
        chip.setOnAction(e -> model.turn(state.screen(), chip.isSelected()));
        return chip;
    }

    @Override
    public Node work() {
        return root;
    }

    @Override
    public Node explanation() {
        return explanation;
    }

    @Override
    public Node first() {
        return timeline;
    }
}
