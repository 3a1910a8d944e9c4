package fuelwright.ui.tables;

import fuelwright.safety.Caution;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.FirstRide;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** The first-ride table's cautions and how it leaves: never without the Stop that stands against it having been read. */
final class FirstRidePane extends VBox {

    /** @param owner what the folder dialogue belongs to */
    FirstRidePane(TablesModel model, Node owner) {
        super(8);
        FirstRide.Outcome first = model.firstRideProperty().get();
        Label outcome = Parts.text("", "strong");
        outcome.textProperty().bind(model.outcomeProperty());
        Button write = Parts.button(
                "tables.first.write",
                () -> AskFiles.folder(owner, Words.of("handover.folder"), model::writeFirstRide),
                "primary");
        getChildren().add(Parts.text(Parts.sentence(first.remark()), "muted"));
        List<Caution> all = first.cautions().stream()
                .map(c -> c.in(model.session().shownIn()))
                .toList();
        List<Caution> stops = all.stream().filter(Caution::isStop).toList();
        stops.forEach(c -> getChildren().add(callout(c)));
        if (!stops.isEmpty()) {
            CheckBox read = new CheckBox(Words.of("handover.read"));
            read.setId("first-stops-read");
            read.setWrapText(true);
            write.disableProperty().bind(read.selectedProperty().not());
            getChildren().add(read);
        }
        getChildren().addAll(write, outcome);
        all.stream().filter(c -> !c.isStop()).forEach(c -> getChildren().add(callout(c)));
    }

    private static VBox callout(Caution caution) {
        return Parts.callout(
                caution.level().name().toLowerCase(java.util.Locale.ROOT),
                caution.level().words() + " · " + caution.title(),
                Parts.sentence(caution.what()) + " " + Parts.sentence(caution.todo()));
    }
}
