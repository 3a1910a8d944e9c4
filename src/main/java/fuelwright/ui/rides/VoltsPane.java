package fuelwright.ui.rides;

import fuelwright.ride.WidebandScale;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;

/** Asks for the scale of a wideband's volts by two points; empty until it is said, for nothing usual could be taken. */
final class VoltsPane {

    private static final List<String> PLACES = List.of("volt1", "lambda1", "volt2", "lambda2");

    private VoltsPane() {}

    static VBox of(RidesModel model) {
        Optional<WidebandScale> said = model.options().widebandScale();
        List<TextField> fields = PLACES.stream()
                .map(place -> {
                    TextField field = new TextField();
                    field.setMaxWidth(64);
                    field.setId("volts-" + place);
                    field.setAccessibleText(Words.of("rides.volts." + place));
                    return field;
                })
                .toList();
        said.ifPresent(s -> {
            double[] figures = {s.volt1(), s.lambda1(), s.volt2(), s.lambda2()};
            for (int i = 0; i < figures.length; i++) {
                fields.get(i).setText(Figures.shortest(figures[i]));
            }
        });
        Label message = Parts.text("", "field-message");
        message.managedProperty().bind(message.textProperty().isNotEmpty());
        Runnable take = () -> message.setText(
                model.widebandScale(fields.stream().map(TextField::getText).toList())
                        ? ""
                        : Words.of("rides.volts.wrong", RidesModel.LEAST_LAMBDA, RidesModel.MOST_LAMBDA));
        fields.forEach(field -> field.setOnAction(e -> take.run()));
        VBox box = Parts.callout(
                said.isPresent() ? "note" : "check",
                Words.of(said.isPresent() ? "rides.volts.said" : "rides.volts.ask"),
                Words.of("rides.volts.why"));
        box.getChildren()
                .addAll(
                        point(fields.get(0), fields.get(1)),
                        point(fields.get(2), fields.get(3)),
                        Parts.button("rides.volts.take", take, "compact"),
                        message);
        return box;
    }

    private static Node point(TextField volts, TextField lambda) {
        return Parts.row(6, volts, Parts.label("V  =  λ"), lambda);
    }
}
