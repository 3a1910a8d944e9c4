package fuelwright.ui.tables;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.OptionalDouble;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** What dead time the pulses of the table contain: asked for, never taken from the machine unasked. */
final class DeadTimePane extends VBox {

    DeadTimePane(TablesModel model) {
        OptionalDouble told = model.deadTimeToldMs();
        TextField field = new TextField(told.isPresent() ? Figures.shortest(told.getAsDouble()) : "");
        field.setId("dead-time");
        field.setPromptText(Words.of("tables.deadtime.unknown"));
        field.setAccessibleText(Words.of("tables.deadtime"));
        field.setMaxWidth(96);
        Label message = Parts.text("", "field-message");
        message.managedProperty().bind(message.textProperty().isNotEmpty());
        Runnable take = () -> message.setText(
                model.deadTime(field.getText())
                        ? ""
                        : Words.of("tables.deadtime.wrong", TablesModel.MOST_DEAD_TIME_MS));
        field.setOnAction(e -> take.run());
        field.focusedProperty().addListener((p, old, now) -> {
            if (!now) {
                take.run();
            }
        });
        VBox box = Parts.callout(told.isEmpty() ? "check" : "note", title(told), Words.of("tables.deadtime.why"));
        if (told.isEmpty()) {
            FlowPane answers =
                    new FlowPane(8, 8, Parts.button("tables.deadtime.none", () -> model.deadTime("0"), "compact"));
            model.injectorDeadTimeMs().ifPresent(ms -> {
                var button =
                        Parts.button("tables.deadtime.injectors", () -> model.deadTime(Double.toString(ms)), "compact");
                button.setText(Words.of("tables.deadtime.injectors", Figures.shortest(ms)));
                button.setAccessibleText(button.getText());
                button.setId("dead-time-injectors");
                answers.getChildren().add(button);
            });
            box.getChildren().add(answers);
        }
        box.getChildren().addAll(Parts.row(8, field, Parts.button("tables.ratio.take", take, "compact")), message);
        getChildren().add(box);
    }

    private static String title(OptionalDouble told) {
        return told.isEmpty()
                ? Words.of("tables.deadtime.ask")
                : told.getAsDouble() > 0
                        ? Words.of("tables.deadtime.told", Figures.shortest(told.getAsDouble()))
                        : Words.of("tables.deadtime.told.none");
    }
}
