package fuelwright.ui.tables;

import fuelwright.safety.Caution;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Tables. */
public final class TablesView implements StagePane {

    private final TablesModel model;
    private final HeatGrid grid = new HeatGrid();
    private final VBox root;
    private final VBox facts = new VBox(12);
    private final Node explanation = Parts.scroll(facts);

    public TablesView(TablesModel model) {
        this.model = model;
        grid.mapProperty().bind(model.mapProperty());
        grid.viewProperty().bind(model.viewProperty());
        grid.themeProperty().bind(model.session().themeProperty());
        grid.selectedProperty().bindBidirectional(model.cellProperty());
        grid.visibleProperty().bind(model.mapProperty().isNotNull());
        StackPane place = new StackPane(grid);
        for (TablesModel.Shown shown : TablesModel.Shown.values()) {
            place.getChildren().add(empty(shown));
        }
        VBox.setVgrow(place, Priority.ALWAYS);
        Label below = new Label(Words.of("tables.below"));
        root = new VBox(12, Parts.heading(new Label(Words.of("tables.title")), below), toolbar(), place);
        root.getStyleClass().add("work");
        facts.getStyleClass().add("explanation-inner");
        model.factsProperty().addListener((p, old, now) -> explain());
        model.cellProperty().addListener((p, old, now) -> explain());
        model.shownProperty().addListener((p, old, now) -> explain());
        explain();
    }

    private static String key(TablesModel.Shown shown) {
        switch (shown) {
            case TARGET:
                return "tables.empty.target";
            case FIRST_RIDE:
                return "tables.first.empty";
            default:
                return "tables.empty.fuel";
        }
    }

    private Node empty(TablesModel.Shown shown) {
        VBox empty = Parts.empty(
                Words.of(key(shown) + ".title"),
                Words.of(key(shown)),
                model.session().workingProperty(),
                model.session().doingProperty(),
                Parts.button("tables.open", this::open, "primary"));
        empty.visibleProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> model.mapProperty().get() == null
                                && model.shownProperty().get() == shown,
                        model.mapProperty(),
                        model.shownProperty()));
        return empty;
    }

    private void open() {
        AskFiles.choose(root, model.session()::open);
    }

    private HBox toolbar() {
        ToggleButton fuel = shows("tables.fuel", TablesModel.Shown.FUEL);
        ToggleButton target = shows("tables.target", TablesModel.Shown.TARGET);
        ToggleButton first = shows("tables.first", TablesModel.Shown.FIRST_RIDE);
        ToggleButton chart =
                toggle("tables.chart", true, () -> model.asFileProperty().set(false));
        ToggleButton file =
                toggle("tables.file", false, () -> model.asFileProperty().set(true));
        return Parts.row(
                8,
                Parts.choice(new ToggleGroup(), fuel, target, first),
                Parts.gap(),
                Parts.choice(new ToggleGroup(), chart, file),
                Parts.button("tables.open", this::open, "compact"));
    }

    private ToggleButton shows(String key, TablesModel.Shown shown) {
        return toggle(
                key,
                model.shownProperty().get() == shown,
                () -> model.shownProperty().set(shown));
    }

    private static ToggleButton toggle(String key, boolean on, Runnable action) {
        ToggleButton toggle = new ToggleButton(Words.of(key));
        toggle.setSelected(on);
        toggle.setOnAction(e -> action.run());
        return toggle;
    }

    private void explain() {
        facts.getChildren().clear();
        model.selected()
                .ifPresent(cell -> facts.getChildren()
                        .add(new VBox(
                                4, Parts.text(cell.words(), "section"), Parts.label(cell.figure(), "big-figure"))));
        String title;
        String words;
        switch (model.shownProperty().get()) {
            case TARGET:
                title = "tables.target";
                words = "tables.explain.target";
                break;
            case FIRST_RIDE:
                title = "tables.first.title";
                words = "tables.first.explain";
                break;
            default:
                title = "tables.fuel";
                words = "tables.explain.fuel";
        }
        VBox list = new VBox(Parts.label(Words.of(title), "section"));
        model.factsProperty().get().forEach(f -> list.getChildren().add(Parts.fact(f.words(), f.figure())));
        facts.getChildren().addAll(list, Parts.text(Words.of(words), "muted"));
        if (model.asksForDeadTime()) {
            facts.getChildren().add(deadTime());
        }
        if (model.shownProperty().get() == TablesModel.Shown.FIRST_RIDE
                && model.firstRideProperty().get() != null) {
            facts.getChildren().add(firstRide());
        }
    }

    private VBox deadTime() {
        TextField field = new TextField(Figures.shortest(model.deadTimeMs()));
        field.setAccessibleText(Words.of("tables.deadtime"));
        field.setMaxWidth(80);
        field.setOnAction(e -> model.deadTime(field.getText()));
        field.focusedProperty().addListener((p, old, now) -> {
            if (!now) {
                model.deadTime(field.getText());
            }
        });
        return new VBox(
                4,
                Parts.label(Words.of("tables.deadtime"), "section"),
                field,
                Parts.text(Words.of("tables.deadtime.why"), "muted"));
    }

    private VBox firstRide() {
        Label outcome = Parts.text("", "strong");
        outcome.textProperty().bind(model.outcomeProperty());
        Button write = Parts.button(
                "tables.first.write",
                () -> AskFiles.folder(root, Words.of("handover.folder"), model::writeFirstRide),
                "primary");
        VBox box = new VBox(
                8, Parts.text(Parts.sentence(model.firstRideProperty().get().remark()), "muted"));
        List<Caution> stops = model.firstRideProperty().get().cautions().stream()
                .filter(Caution::isStop)
                .toList();
        // A table never leaves without the Stop that stands against it, and nobody writes it without having been told.
        if (!stops.isEmpty()) {
            stops.forEach(c -> box.getChildren()
                    .add(Parts.callout(
                            "stop",
                            c.level().words() + " · " + c.title(),
                            Parts.sentence(c.what()) + " " + Parts.sentence(c.todo()))));
            CheckBox read = new CheckBox(Words.of("handover.read"));
            read.setId("first-stops-read");
            write.disableProperty().bind(read.selectedProperty().not());
            box.getChildren().add(read);
        }
        box.getChildren().addAll(write, outcome);
        return box;
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
        return grid;
    }
}
