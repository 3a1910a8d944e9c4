package fuelwright.ui.handover;

import fuelwright.safety.Caution;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.session.Missing;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Words;
import java.nio.file.Path;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.Node;
import javafx.scene.control.Alert;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonType;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Handover: Stop cautions first, then the figures, then the ways out. */
public final class HandoverView implements StagePane {

    private final HandoverModel model;
    private final AskFiles.FolderQuestion question;
    private final HeatGrid grid = new HeatGrid();
    private final VBox stops = new VBox(8);
    private final StackPane root = new StackPane();
    private final Node explanation;

    public HandoverView(HandoverModel model) {
        this(model, AskFiles::folder);
    }

    /** @param question how the user is asked for the folder */
    public HandoverView(HandoverModel model, AskFiles.FolderQuestion question) {
        this.model = model;
        this.question = question;
        grid.mapProperty().bind(model.mapProperty());
        grid.viewProperty().bind(model.viewProperty());
        grid.themeProperty().bind(model.session().themeProperty());
        grid.selectedProperty().bindBidirectional(model.session().cellProperty());
        grid.dimmedProperty().bind(model.session().staleProperty());
        VBox.setVgrow(grid, Priority.ALWAYS);
        BooleanBinding stays = Bindings.createBooleanBinding(
                () -> !model.mayLeave(),
                model.stopsProperty(),
                model.stopsReadProperty(),
                model.mapProperty(),
                model.session().staleProperty());
        Button export = Parts.button("handover.export", this::export, "primary");
        Button copy = Parts.button("handover.copy", this::copy);
        export.setId("export-folder");
        copy.setId("copy-table");
        export.disableProperty().bind(stays);
        copy.disableProperty().bind(stays);
        Label outcome = Parts.text("", "strong");
        outcome.textProperty().bind(model.outcomeProperty());
        outcome.managedProperty().bind(outcome.textProperty().isNotEmpty());
        CheckBox pdf = new CheckBox(Words.of("handover.pdf"));
        pdf.setId("pdf-too");
        pdf.selectedProperty().bindBidirectional(model.pdfProperty());
        HBox ways = Parts.row(8, export, copy, pdf);
        ways.setMinHeight(32);
        VBox content = new VBox(
                12,
                Parts.heading(new Label(Words.of("handover.title")), new Label(Words.of("handover.below"))),
                stops,
                ways,
                outcome,
                grid);
        content.visibleProperty().bind(model.mapProperty().isNotNull());
        VBox empty = Parts.empty(
                Missing.title(model.session(), "handover.empty"),
                Missing.what(model.session(), "handover.empty"),
                model.session().workingProperty(),
                model.session().doingProperty(),
                Parts.button("next.go", () -> Missing.go(model.session()), "primary"));
        empty.visibleProperty().bind(model.mapProperty().isNull());
        root.getChildren().addAll(content, empty);
        root.getStyleClass().add("work");
        explanation = Parts.scroll(explain());
        model.stopsProperty().addListener((p, old, now) -> stops());
        stops();
    }

    private void stops() {
        stops.getChildren().clear();
        List<Caution> all = model.stopsProperty().get();
        Parts.show(stops, !all.isEmpty());
        for (Caution caution : all) {
            stops.getChildren()
                    .add(Parts.callout(
                            "stop",
                            caution.level().words() + " · " + caution.title(),
                            Parts.sentence(caution.what()) + " " + Parts.sentence(caution.todo())));
        }
        if (!all.isEmpty()) {
            CheckBox read = new CheckBox(Words.of("handover.read"));
            read.setId("stops-read");
            read.selectedProperty().bindBidirectional(model.stopsReadProperty());
            stops.getChildren().add(read);
        }
    }

    private void export() {
        question.ask(root, Words.of("handover.folder"), folder -> {
            boolean there = model.wouldReplace(folder);
            if (!there || mayReplace(folder)) {
                model.export(folder, there);
            }
        });
    }

    private boolean mayReplace(Path folder) {
        Alert alert = new Alert(
                Alert.AlertType.CONFIRMATION,
                Words.of("handover.replace", folder.getFileName()),
                ButtonType.YES,
                ButtonType.NO);
        alert.initOwner(root.getScene().getWindow());
        alert.setHeaderText(null);
        alert.setTitle(Words.of("handover.title"));
        alert.getDialogPane().getStylesheets().setAll(root.getScene().getStylesheets());
        return alert.showAndWait().filter(b -> b == ButtonType.YES).isPresent();
    }

    private void copy() {
        Clipboard.getSystemClipboard().setContent(java.util.Map.of(DataFormat.PLAIN_TEXT, model.copy()));
    }

    private VBox explain() {
        VBox selected = new VBox(4);
        model.session().cellProperty().addListener((p, old, now) -> selected(selected));
        model.mapProperty().addListener((p, old, now) -> selected(selected));
        selected(selected);
        VBox box = new VBox(
                12,
                selected,
                new VBox(
                        4,
                        Parts.label(Words.of("handover.after.title"), "section"),
                        Parts.text(Words.of("handover.after.trims")),
                        Parts.text(Words.of("handover.after.type")),
                        Parts.text(Words.of("handover.after.ride"))),
                new VBox(
                        4,
                        Parts.label(Words.of("handover.files.title"), "section"),
                        Parts.text(Words.of("handover.files"), "muted")));
        box.getStyleClass().add("explanation-inner");
        return box;
    }

    private void selected(VBox box) {
        box.getChildren().clear();
        model.selected()
                .ifPresent(cell -> box.getChildren()
                        .addAll(
                                Parts.text(cell.place(), "section"),
                                Parts.row(
                                        8,
                                        Parts.label(cell.after(), "big-figure"),
                                        Parts.label(cell.unit(), "unit-word")),
                                Parts.text(Words.of("handover.cell.before", cell.before()), "muted")));
        Parts.show(box, !box.getChildren().isEmpty());
    }

    @Override
    public Node work() {
        return root;
    }

    @Override
    public Node explanation() {
        return explanation;
    }
}
