package fuelwright.ui.handover;

import fuelwright.handover.Exports;
import fuelwright.handover.StandsOn;
import fuelwright.safety.Caution;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.Node;
import javafx.scene.control.Alert;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonType;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.input.Clipboard;
import javafx.scene.input.DataFormat;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Step 2 of the handover: Stop cautions first, then the ways out, then the figures. */
final class WritePane {

    private final HandoverModel model;
    private final AskFiles.FolderQuestion question;
    private final VBox stops = new VBox(8);
    private final VBox node;
    private final HeatGrid grid;

    /** @param question how the user is asked for the folder */
    WritePane(HandoverModel model, AskFiles.FolderQuestion question) {
        this.model = model;
        this.question = question;
        grid = TypingGrid.of(model, model.mapProperty(), "handover-grid");
        BooleanBinding stays = Bindings.createBooleanBinding(
                () -> !model.mayLeave(),
                model.stopsProperty(),
                model.stopsReadProperty(),
                model.mapProperty(),
                model.hardware().nowProperty(),
                model.session().staleProperty());
        Button export = way("handover.export", "export-folder", this::export, stays);
        export.getStyleClass().add("primary");
        CheckBox pdf = new CheckBox(Words.of("handover.pdf"));
        pdf.setId("pdf-too");
        pdf.selectedProperty().bindBidirectional(model.pdfProperty());
        Button cells = way(
                "handover.cells",
                "copy-cells",
                () -> put(model.copyCells()),
                stays.or(Bindings.createBooleanBinding(
                        () -> !model.stopsProperty().get().isEmpty(), model.stopsProperty())));
        FlowPane single = new FlowPane(
                8,
                8,
                way("handover.sheet", "sheet-pdf", () -> pdf(Exports.ENTRY_SHEET_PDF), stays),
                way("handover.report", "report-pdf", () -> pdf(Exports.REPORT_PDF), stays),
                way("handover.copy", "copy-table", () -> put(model.copy()), stays),
                cells);
        VBox ways = new VBox(8, new FlowPane(12, 8, export, tickFirst(), pdf), single, figuresAlone());
        Label outcome = Parts.text("", "strong");
        outcome.textProperty().bind(model.outcomeProperty());
        outcome.managedProperty().bind(outcome.textProperty().isNotEmpty());
        node = new VBox(12, sayFirst(), stops, ways, outcome, grid);
        model.stopsProperty().addListener((p, old, now) -> stops());
        model.leanedProperty().addListener((p, old, now) -> stops());
        model.sheetProperty().addListener((p, old, now) -> stops());
        model.session().whenShownOtherwise(this::stops);
        stops();
    }

    /** Typed figures take the place of what the cells hold: until that is known there is no sheet. */
    private Node sayFirst() {
        Label words = Parts.text("");
        Button say =
                Parts.button("handover.say", () -> model.stepProperty().set(HandoverModel.Step.HARDWARE), "primary");
        say.setId("say-cells");
        VBox frame =
                new VBox(8, Parts.text(Words.of("handover.say.title"), "callout-heading"), words, Parts.row(8, say));
        frame.getStyleClass().addAll("callout", "check");
        Runnable show = () -> {
            words.setText(
                    model.hardware().nowProperty().get().map(StandsOn::words).orElse(""));
            Parts.show(frame, !model.hardware().isNowKnown());
        };
        model.hardware().nowProperty().addListener((p, old, now) -> show.run());
        show.run();
        return frame;
    }

    /** Why the figures alone stay where the table may go. */
    private Label figuresAlone() {
        Label words = Parts.text(Words.of("handover.cells.stop"), "muted");
        words.setId("cells-stop");
        Runnable show = () -> Parts.show(
                words, model.mayLeave() && !model.stopsProperty().get().isEmpty());
        model.stopsProperty().addListener((p, old, now) -> show.run());
        model.stopsReadProperty().addListener((p, old, now) -> show.run());
        model.mapProperty().addListener((p, old, now) -> show.run());
        model.session().staleProperty().addListener((p, old, now) -> show.run());
        show.run();
        return words;
    }

    /** Why nothing can be written yet. */
    private Label tickFirst() {
        Label words = Parts.label("", "muted");
        words.setId("tick-first");
        words.textProperty()
                .bind(Bindings.createStringBinding(
                        model::whyNot,
                        model.stopsProperty(),
                        model.stopsReadProperty(),
                        model.mapProperty(),
                        model.hardware().nowProperty(),
                        model.session().staleProperty()));
        words.visibleProperty().bind(words.textProperty().isNotEmpty());
        words.managedProperty().bind(words.visibleProperty());
        return words;
    }

    private static Button way(String key, String id, Runnable action, BooleanBinding stays) {
        Button button = Parts.button(key, action);
        button.setId(id);
        button.disableProperty().bind(stays);
        if (Words.has(key + ".tip")) {
            button.setTooltip(new Tooltip(Words.of(key + ".tip")));
            button.setAccessibleHelp(Words.of(key + ".tip"));
        }
        return button;
    }

    /** All in one frame; once they were read, what they are called is enough. */
    private void stops() {
        stops.getChildren().clear();
        List<Caution> all = model.stopsProperty().get();
        Parts.show(stops, !all.isEmpty() || model.isNoCellLeaned());
        if (all.isEmpty()) {
            if (model.isNoCellLeaned()) {
                stops.getChildren().add(richerRow(false));
            }
            return;
        }
        VBox frame = new VBox(8);
        frame.getStyleClass().addAll("callout", "stop");
        for (Caution caution : all) {
            Label text = Parts.text(
                    Parts.sentence(caution.what(model.session().shownIn())) + " " + Parts.sentence(caution.todo()));
            text.managedProperty().bind(model.stopsReadProperty().not());
            text.visibleProperty().bind(text.managedProperty());
            frame.getChildren()
                    .add(new VBox(
                            2, Parts.text(caution.level().words() + " · " + caution.title(), "callout-heading"), text));
        }
        CheckBox read = new CheckBox(Words.of("handover.read"));
        read.setId("stops-read");
        read.selectedProperty().bindBidirectional(model.stopsReadProperty());
        read.setWrapText(true);
        read.setMinHeight(Region.USE_PREF_SIZE);
        stops.getChildren().addAll(frame, read, richerRow(true));
    }

    /** While a Stop stands, the table may be made richer but should take nothing away. */
    private CheckBox richer() {
        CheckBox richer = new CheckBox(Words.of("handover.richer"));
        richer.setId("only-richer");
        richer.setSelected(model.isNoCellLeaned());
        richer.setOnAction(e -> model.leanNoCell(richer.isSelected()));
        richer.setTooltip(new Tooltip(Words.of("handover.richer.tip")));
        richer.setAccessibleHelp(Words.of("handover.richer.tip"));
        richer.disableProperty().bind(model.session().staleProperty());
        return richer;
    }

    private Node richerRow(boolean stop) {
        int leaned = model.leanedProperty().get();
        boolean chosen = model.isNoCellLeaned();
        Label words = Parts.text(
                chosen
                        ? Words.of(stop ? "handover.richer.chosen" : "handover.richer.nostop", leaned)
                        : leaned > 0 ? Words.of("handover.leaned", leaned) : Words.of("handover.richer.done"));
        words.setId("leaned");
        CheckBox richer = richer();
        Parts.show(richer, leaned > 0 || chosen);
        return new VBox(4, words, richer);
    }

    private void export() {
        question.ask(node, Words.of("handover.folder"), folder -> {
            boolean there = model.wouldReplace(folder);
            if (!there || mayReplace(folder)) {
                model.export(folder, there);
            }
        });
    }

    private void pdf(String name) {
        AskFiles.pdf(node, Words.of("handover.pdf.title"), name, file -> model.writePdf(name, file));
    }

    private boolean mayReplace(Path folder) {
        Alert alert = new Alert(
                Alert.AlertType.CONFIRMATION,
                Words.of("handover.replace", folder.getFileName()),
                ButtonType.YES,
                ButtonType.NO);
        alert.initOwner(node.getScene().getWindow());
        alert.setHeaderText(null);
        alert.setTitle(Words.of("handover.title"));
        alert.getDialogPane().getStylesheets().setAll(node.getScene().getStylesheets());
        return alert.showAndWait().filter(b -> b == ButtonType.YES).isPresent();
    }

    private static void put(String text) {
        Clipboard.getSystemClipboard().setContent(Map.of(DataFormat.PLAIN_TEXT, text));
    }

    HeatGrid grid() {
        return grid;
    }

    Node node() {
        return node;
    }
}
