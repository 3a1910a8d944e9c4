package fuelwright.ui.rides;

import fuelwright.table.Table;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.util.StringConverter;

/** The rides of the job in their order: which is looked at, moving it, taking it out, and the table it was made with. */
final class RidesBar {

    private final RidesModel model;
    private final List<Node> after;
    private final FlowPane bar = new FlowPane(8, 6);

    /** @param after what follows the rides in the same row, or in the next where there is too little room */
    RidesBar(RidesModel model, Node... after) {
        this.model = model;
        this.after = List.of(after);
        bar.setId("rides-bar");
        model.session().jobProperty().addListener((p, old, now) -> {
            if (old.rides() != now.rides() || old.past() != now.past()) {
                fill();
            }
        });
        model.selectedProperty().addListener((p, old, now) -> fill());
        fill();
    }

    Node node() {
        return bar;
    }

    private void fill() {
        bar.getChildren().clear();
        addRides();
        bar.getChildren().addAll(after);
    }

    private void addRides() {
        ToggleGroup group = new ToggleGroup();
        for (int i = 0; i < model.rides().size(); i++) {
            int index = i;
            String name = model.rides().get(i).ride().name();
            ToggleButton toggle = new ToggleButton(Words.of("rides.numbered", i + 1, name));
            toggle.getStyleClass().add("compact");
            toggle.setMaxWidth(260);
            String made = model.order().tableWords(model.order().madeWith(i));
            toggle.setTooltip(new Tooltip(name + ": " + made));
            toggle.setAccessibleText(name + ": " + made);
            toggle.setToggleGroup(group);
            toggle.setSelected(i == model.index());
            toggle.setOnAction(e -> {
                toggle.setSelected(true);
                model.selectedProperty().set(index);
            });
            bar.getChildren().add(toggle);
        }
        if (model.rides().isEmpty()) {
            return;
        }
        if (model.rides().size() > 1) {
            Button up = Parts.button("rides.up", () -> model.order().move(-1), "compact");
            up.setAccessibleText(Words.of("rides.up.words"));
            up.setTooltip(new Tooltip(Words.of("rides.up.words")));
            up.setDisable(model.index() == 0);
            Button down = Parts.button("rides.down", () -> model.order().move(1), "compact");
            down.setAccessibleText(Words.of("rides.down.words"));
            down.setTooltip(new Tooltip(Words.of("rides.down.words")));
            down.setDisable(model.index() == model.rides().size() - 1);
            bar.getChildren().add(Parts.row(4, up, down));
        }
        if (model.order().tables().size() > 1) {
            bar.getChildren().add(made());
        }
    }

    private Node made() {
        List<Optional<Table>> tables = model.order().tables();
        Optional<Table> now = model.order().madeWith(model.index());
        ComboBox<Optional<Table>> choice = new ComboBox<>();
        choice.getItems().setAll(tables);
        choice.setValue(now);
        choice.setConverter(new StringConverter<>() {
            @Override
            public String toString(Optional<Table> table) {
                return table == null ? "" : model.order().tableWords(table);
            }

            @Override
            public Optional<Table> fromString(String text) {
                throw new UnsupportedOperationException("not typed");
            }
        });
        choice.getStyleClass().add("compact");
        choice.setId("made-with");
        choice.setAccessibleText(Words.of("rides.made"));
        choice.setOnAction(e -> model.order().madeWith(choice.getValue()));
        return choice;
    }
}
