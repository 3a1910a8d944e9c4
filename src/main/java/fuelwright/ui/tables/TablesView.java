package fuelwright.ui.tables;

import fuelwright.ui.plot.HeatGrid;
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
        StackPane place = new StackPane(grid, empty(false), empty(true));
        VBox.setVgrow(place, Priority.ALWAYS);
        Label below = new Label(Words.of("tables.below"));
        root = new VBox(12, Parts.heading(new Label(Words.of("tables.title")), below), toolbar(), place);
        root.getStyleClass().add("work");
        facts.getStyleClass().add("explanation-inner");
        model.factsProperty().addListener((p, old, now) -> explain());
        model.cellProperty().addListener((p, old, now) -> explain());
        explain();
    }

    private Node empty(boolean target) {
        String key = target ? "tables.empty.target" : "tables.empty.fuel";
        VBox empty = Parts.empty(
                Words.of(key + ".title"),
                Words.of(key),
                model.session().workingProperty(),
                model.session().doingProperty(),
                Parts.button("tables.open", () -> AskFiles.choose(root, model.session()::open), "primary"));
        empty.visibleProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> model.mapProperty().get() == null
                                && model.targetProperty().get() == target,
                        model.mapProperty(),
                        model.targetProperty()));
        return empty;
    }

    private HBox toolbar() {
        ToggleButton fuel =
                toggle("tables.fuel", true, () -> model.targetProperty().set(false));
        ToggleButton target =
                toggle("tables.target", false, () -> model.targetProperty().set(true));
        ToggleButton chart =
                toggle("tables.chart", true, () -> model.asFileProperty().set(false));
        ToggleButton file =
                toggle("tables.file", false, () -> model.asFileProperty().set(true));
        return Parts.row(
                8,
                Parts.choice(new ToggleGroup(), fuel, target),
                Parts.gap(),
                Parts.choice(new ToggleGroup(), chart, file),
                Parts.button("tables.open", () -> AskFiles.choose(root, model.session()::open), "compact"));
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
        VBox list = new VBox(
                Parts.label(Words.of(model.targetProperty().get() ? "tables.target" : "tables.fuel"), "section"));
        model.factsProperty().get().forEach(f -> list.getChildren().add(Parts.fact(f.words(), f.figure())));
        facts.getChildren().add(list);
        facts.getChildren()
                .add(Parts.text(
                        Words.of(model.targetProperty().get() ? "tables.explain.target" : "tables.explain.fuel"),
                        "muted"));
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
