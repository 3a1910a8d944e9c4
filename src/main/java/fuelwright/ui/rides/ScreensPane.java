package fuelwright.ui.rides;

import fuelwright.ride.Ride;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenSettings;
import fuelwright.ui.plot.CanvasInk;
import fuelwright.ui.plot.OutKind;
import fuelwright.ui.session.RideTrace;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** The screens: a switch for each with what it keeps out and the pattern it is drawn in, and, when opened, their thresholds on sliders. */
final class ScreensPane {

    private final RidesModel rides;
    private final ScreensModel model;
    private final FlowPane chips = new FlowPane(6, 6);
    private final ToggleButton adjust = new ToggleButton(Words.of("rides.adjust"));
    private final GridPane sliders = new GridPane();
    private final VBox box = new VBox(8, chips, sliders);
    /** The newest states whose counts are known. */
    private List<ScreensModel.State> counted = List.of();

    ScreensPane(RidesModel rides) {
        this.rides = rides;
        this.model = rides.screens();
        adjust.getStyleClass().add("compact");
        adjust.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        adjust.setOnAction(e -> chips());
        adjust.setId("adjust-screens");
        sliders.getStyleClass().add("card");
        sliders.setHgap(24);
        sliders.setVgap(4);
        fillSliders();
        sliders.visibleProperty().bind(adjust.selectedProperty());
        sliders.managedProperty().bind(adjust.selectedProperty());
        model.statesProperty().addListener((p, old, now) -> chips());
        rides.session().themeProperty().addListener((p, old, now) -> chips());
        chips();
    }

    Node node() {
        return box;
    }

    /** Opens and closes the sliders. */
    Node switchOfSliders() {
        return adjust;
    }

    private void fillSliders() {
        add(
                0,
                0,
                Threshold.of(
                        model,
                        rides.session(),
                        "rides.set.coolant",
                        20,
                        110,
                        0,
                        ScreenSettings::coolantAtLeastC,
                        ScreenSettings::withCoolantAtLeast));
        add(
                1,
                0,
                Threshold.of(
                        model,
                        rides.session(),
                        "rides.set.speed",
                        200,
                        2000,
                        0,
                        ScreenSettings::speedAtLeastRpm,
                        ScreenSettings::withSpeedAtLeast));
        add(0, 1, Threshold.range(model, rides.session(), "rides.set.lambda", 0.5, 1.8));
        add(
                1,
                1,
                Threshold.of(
                        model,
                        rides.session(),
                        "rides.set.throttle",
                        2,
                        200,
                        0,
                        ScreenSettings::throttleRateAtMost,
                        ScreenSettings::withThrottleRate));
        add(
                0,
                2,
                Threshold.of(
                        model,
                        rides.session(),
                        "rides.set.speedrate",
                        5,
                        300,
                        0,
                        s -> 100 * s.speedRateAtMost(),
                        (s, percent) -> s.withSpeedRate(percent / 100)));
        add(
                1,
                2,
                Threshold.of(
                        model,
                        rides.session(),
                        "rides.set.aftercut",
                        0,
                        5,
                        1,
                        ScreenSettings::afterFuelCutS,
                        ScreenSettings::withAfterFuelCut));
        add(
                0,
                3,
                Threshold.of(
                        model,
                        rides.session(),
                        "rides.set.frozen",
                        0.2,
                        10,
                        1,
                        ScreenSettings::frozenS,
                        ScreenSettings::withFrozen));
        sliders.add(
                Parts.row(
                        8,
                        Parts.text(Words.of("rides.set.help"), "muted", "small"),
                        Parts.button("rides.set.usual", model::usual, "compact")),
                1,
                3);
    }

    private void add(int column, int row, Node node) {
        sliders.add(node, column, row);
        GridPane.setHgrow(node, javafx.scene.layout.Priority.ALWAYS);
    }

    /** While counts are being worked out those that were there stay, so that nothing below moves. */
    private void chips() {
        List<ScreensModel.State> states = model.statesProperty().get();
        if (states.stream().anyMatch(s -> s.count() >= 0)) {
            counted = states;
        } else if (!counted.isEmpty()) {
            states = counted.stream()
                    .map(s -> new ScreensModel.State(
                            s.screen(), rides.session().job().screens().isOn(s.screen()), s.count() == 0 ? 0 : -1))
                    .toList();
        }
        String focused = chips.getChildren().stream()
                .filter(Node::isFocused)
                .map(Node::getId)
                .findFirst()
                .orElse("");
        chips.getChildren().clear();
        Label title = Parts.label(summary(states), "muted");
        title.setMinHeight(28);
        chips.getChildren().add(title);
        for (ScreensModel.State state : states) {
            if (state.count() != 0 && !counted.isEmpty()
                    || !state.on()
                    || adjust.isSelected() && state.screen().canBeOff()) {
                ToggleButton chip = chip(state);
                chips.getChildren().add(chip);
                if (chip.getId().equals(focused)) {
                    chip.requestFocus();
                }
            }
        }
    }

    private String summary(List<ScreensModel.State> states) {
        int rows = rides.ride().map(Ride::size).orElse(0);
        long out = states.stream()
                .filter(ScreensModel.State::on)
                .mapToLong(s -> Math.max(0, s.count()))
                .sum();
        boolean known = states.stream().anyMatch(s -> s.count() > 0);
        return Words.of("rides.screened", known ? Figures.count(out) : "…", Figures.count(rows));
    }

    private ToggleButton chip(ScreensModel.State state) {
        Screen screen = state.screen();
        ToggleButton chip = new ToggleButton();
        Label mark = Parts.label(!screen.canBeOff() ? "•" : state.on() ? "☑" : "☐", "chip-count");
        Label name = Parts.label(screen.words(), "chip-name");
        String figure = state.on() ? state.count() < 0 ? "…" : Figures.count(state.count()) : Words.of("rides.off");
        chip.setGraphic(Parts.row(
                6,
                mark,
                swatch(RideTrace.kind(screen), rides.session().themeProperty().get()),
                name,
                Parts.label(figure, "chip-count")));
        chip.getStyleClass().add("chip");
        chip.setId("chip-" + screen.name().toLowerCase(java.util.Locale.ROOT));
        chip.setSelected(state.on());
        chip.setMouseTransparent(!screen.canBeOff());
        chip.setFocusTraversable(screen.canBeOff());
        String why = Words.of("rides.chip", screen.words(), screen.why());
        chip.setTooltip(new Tooltip(why));
        chip.setAccessibleText(why + " " + figure);
        chip.setOnAction(e -> model.turn(screen, chip.isSelected()));
        return chip;
    }

    private static Canvas swatch(OutKind kind, Theme theme) {
        Canvas swatch = new Canvas(16, 12);
        kind.paint(CanvasInk.on(swatch), theme.palette(), 0, 0, 16, 9, 1.6);
        swatch.getGraphicsContext2D().setFill(kind.colour(theme.palette()));
        swatch.getGraphicsContext2D().fillRect(0, 9, 16, 3);
        return swatch;
    }
}
