package fuelwright.ui.tables;

import fuelwright.job.Job;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;

/** By which ratio an AFR target is lambda: said, and asked for. No ride's display has a say in it. */
final class TargetRatioPane extends VBox {

    TargetRatioPane(TablesModel model) {
        Job job = model.session().job();
        String ratio = Figures.shortest(job.usedTargetRatio());
        boolean asks = job.asksForTargetRatio();
        TextField field = new TextField(ratio);
        field.setId("target-ratio");
        field.setAccessibleText(Words.of("tables.ratio"));
        field.setMaxWidth(72);
        Label message = Parts.text("", "field-message");
        message.managedProperty().bind(message.textProperty().isNotEmpty());
        Runnable take = () -> message.setText(
                model.targetRatio(field.getText())
                        ? ""
                        : Words.of("tables.ratio.wrong", TablesModel.LEAST_RATIO, TablesModel.MOST_RATIO));
        field.setOnAction(e -> take.run());
        VBox box = Parts.callout(
                asks ? "check" : "note",
                Words.of(asks ? "tables.ratio.ask" : "tables.ratio.told", ratio),
                Words.of("tables.ratio.why"));
        box.getChildren().addAll(Parts.row(8, field, Parts.button("tables.ratio.take", take, "compact")), message);
        getChildren().add(box);
    }
}
