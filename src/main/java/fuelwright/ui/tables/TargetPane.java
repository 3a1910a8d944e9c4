package fuelwright.ui.tables;

import fuelwright.ui.theme.FuelChoice;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.beans.property.StringProperty;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;

/** A target table from four choices, each with its reason; the map shows what would be taken. */
final class TargetPane extends VBox {

    TargetPane(TargetModel model) {
        super(12);
        Label problem = Parts.text("", "field-message");
        problem.setId("target-problem");
        problem.textProperty().bind(model.problemProperty());
        Parts.show(problem, !model.problemProperty().get().isEmpty());
        model.problemProperty().addListener((p, old, now) -> Parts.show(problem, !now.isEmpty()));
        Button take = Parts.button("tables.make.take", model::take, "primary");
        take.setId("target-take");
        take.disableProperty().bind(model.previewProperty().isNull());
        Button leave =
                Parts.button("tables.make.leave", () -> model.openProperty().set(false));
        getChildren()
                .addAll(
                        Parts.label(Words.of("tables.make.title"), "section"),
                        Parts.text(Words.of("tables.make.what"), "muted"),
                        choice("fullload", model.fullLoadProperty()),
                        choice("cruise", model.cruiseProperty()),
                        choice("idle", model.idleProperty()),
                        fuel(model),
                        problem,
                        Parts.row(8, take, leave));
    }

    private static VBox choice(String name, StringProperty text) {
        TextField field = new TextField();
        field.setId("target-" + name);
        field.setMaxWidth(90);
        field.textProperty().bindBidirectional(text);
        field.setAccessibleText(Words.of("tables.make." + name));
        field.setAccessibleHelp(Words.of("tables.make." + name + ".why"));
        return new VBox(
                4,
                Parts.row(8, Parts.label(Words.of("tables.make." + name), "strong"), Parts.gap(), field),
                Parts.text(Words.of("tables.make." + name + ".why"), "muted", "small"));
    }

    private static VBox fuel(TargetModel model) {
        FuelChoice box = new FuelChoice(model.fuelProperty());
        return new VBox(
                4,
                Parts.label(Words.of("machine.fuel"), "strong"),
                box,
                Parts.text(Words.of("tables.make.fuel.why"), "muted", "small"));
    }
}
