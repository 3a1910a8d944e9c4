package fuelwright.ui.tables;

import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.TableOptions;
import fuelwright.table.Unsaid;
import fuelwright.ui.session.UnsaidTables;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.function.Function;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** Tables that don't say what they hold, each with choices of what it could be; nothing is chosen beforehand. */
final class UnsaidPane {

    private final UnsaidTables tables;
    private final VBox box = new VBox(8);

    UnsaidPane(UnsaidTables tables) {
        this.tables = tables;
        box.setId("unsaid-tables");
        tables.all().addListener((ListChangeListener<Unsaid>) c -> fill());
        fill();
    }

    Node node() {
        return box;
    }

    private void fill() {
        box.getChildren().setAll(tables.all().stream().map(this::form).toList());
        Parts.show(box, !tables.all().isEmpty());
    }

    private VBox form(Unsaid table) {
        ComboBox<Quantity> quantity = choice("tables.unsaid.quantity", table.quantities(), UnsaidPane::words);
        ComboBox<Axis.Kind> load = choice(
                "tables.unsaid.load",
                table.loads(),
                k -> k.words() + ", " + k.unit().symbol());
        quantity.setId("unsaid-quantity");
        load.setId("unsaid-load");
        Label message = Parts.text("", "field-message");
        message.managedProperty().bind(message.textProperty().isNotEmpty());
        Runnable open = () -> {
            boolean all = (table.quantities().isEmpty() || quantity.getValue() != null)
                    && (table.loads().isEmpty() || load.getValue() != null);
            if (!all) {
                message.setText(Words.of("tables.unsaid.choose"));
                return;
            }
            TableOptions said = TableOptions.none();
            said = quantity.getValue() == null ? said : said.withQuantity(quantity.getValue());
            tables.tell(table, load.getValue() == null ? said : said.withLoadKind(load.getValue()));
        };
        FlowPane fields = new FlowPane(12, 6);
        if (!table.quantities().isEmpty()) {
            fields.getChildren().add(named("tables.unsaid.quantity", quantity));
        }
        if (!table.loads().isEmpty()) {
            fields.getChildren().add(named("tables.unsaid.load", load));
        }
        VBox form = Parts.callout("check", Words.of("tables.unsaid", table.name()), Words.of("tables.unsaid.why"));
        form.getChildren()
                .addAll(
                        fields,
                        message,
                        Parts.row(
                                8,
                                Parts.button("tables.unsaid.open", open, "compact"),
                                Parts.button("rides.refused.leave", () -> tables.leave(table), "compact")));
        return form;
    }

    private static String words(Quantity quantity) {
        String unit = quantity.unit();
        return quantity.words() + (unit.equals("1") ? "" : ", " + unit);
    }

    private static Node named(String key, Node control) {
        Label name = Parts.label(Words.of(key), "field-name", "small");
        name.setLabelFor(control);
        return Parts.row(6, name, control);
    }

    private static <T> ComboBox<T> choice(String key, List<T> all, Function<T, String> words) {
        ComboBox<T> box = new ComboBox<>();
        box.getItems().setAll(all);
        box.setPromptText(Words.of("tables.unsaid.prompt"));
        box.setAccessibleText(Words.of(key));
        box.getStyleClass().add("compact");
        box.setConverter(new StringConverter<>() {
            @Override
            public String toString(T one) {
                return one == null ? "" : words.apply(one);
            }

            @Override
            public T fromString(String text) {
                throw new UnsupportedOperationException("it is chosen from");
            }
        });
        return box;
    }
}
