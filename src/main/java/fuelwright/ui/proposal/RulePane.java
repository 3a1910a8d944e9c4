package fuelwright.ui.proposal;

import fuelwright.estimate.Standing;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** The form that a {@link CellRule} is told by; counts as one fills it in. */
final class RulePane extends VBox {

    private final ProposalModel model;
    private final Map<Standing, CheckBox> standings = new EnumMap<>(Standing.class);
    private final ChoiceBox<CellRule.Direction> direction = new ChoiceBox<>();
    private final TextField loadFrom = bound();
    private final TextField loadTo = bound();
    private final TextField speedFrom = bound();
    private final TextField speedTo = bound();
    private final CheckBox highLoad = new CheckBox(Words.of("rule.highload"));
    private final CheckBox stop = new CheckBox(Words.of("rule.stop"));
    private final Button select;

    /** @param done run when cells were chosen */
    RulePane(ProposalModel model, Runnable done) {
        super(10);
        this.model = model;
        getStyleClass().add("over");
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        VBox kinds = new VBox(4);
        for (Standing standing : Standing.values()) {
            CheckBox box = new CheckBox(Words.of("rule." + standing.name().toLowerCase(Locale.ROOT)));
            box.setSelected(true);
            box.setOnAction(e -> count());
            standings.put(standing, box);
            kinds.getChildren().add(box);
        }
        direction.getItems().setAll(CellRule.Direction.values());
        direction.setValue(CellRule.Direction.ANY);
        direction.setAccessibleText(Words.of("rule.direction"));
        direction.setConverter(new StringConverter<>() {
            @Override
            public String toString(CellRule.Direction d) {
                return d == null ? "" : Words.of("rule.direction." + d.name().toLowerCase(Locale.ROOT));
            }

            @Override
            public CellRule.Direction fromString(String text) {
                throw new UnsupportedOperationException("a choice box is not typed into");
            }
        });
        direction.setOnAction(e -> count());
        highLoad.setOnAction(e -> count());
        stop.setOnAction(e -> count());
        select = Parts.button(
                "rule.select",
                () -> {
                    model.select(rule());
                    done.run();
                },
                "primary");
        select.setId("rule-select");
        getChildren()
                .addAll(
                        Parts.label(Words.of("rule.title"), "section"),
                        kinds,
                        direction,
                        Parts.row(8, Parts.label(Words.of("rule.load"), "muted"), loadFrom, Parts.label("…"), loadTo),
                        Parts.row(
                                8, Parts.label(Words.of("rule.speed"), "muted"), speedFrom, Parts.label("…"), speedTo),
                        highLoad,
                        stop,
                        select);
        loadFrom.setId("rule-load-from");
        count();
    }

    /** What gets the keyboard first. */
    Node first() {
        return standings.get(Standing.MEASURED);
    }

    private TextField bound() {
        TextField field = new TextField();
        field.setPrefColumnCount(4);
        field.getStyleClass().add("compact");
        field.setPromptText(Words.of("rule.any"));
        field.setAccessibleText(Words.of("rule.bound"));
        field.textProperty().addListener((p, old, now) -> count());
        return field;
    }

    private void count() {
        if (select == null) {
            return;
        }
        int found = model.count(rule());
        select.setText(Words.of("rule.select.count", found));
        select.setDisable(found == 0);
    }

    private CellRule rule() {
        Set<Standing> chosen = EnumSet.noneOf(Standing.class);
        standings.forEach((standing, box) -> {
            if (box.isSelected()) {
                chosen.add(standing);
            }
        });
        return new CellRule(
                chosen,
                direction.getValue(),
                number(loadFrom, Double.NEGATIVE_INFINITY),
                number(loadTo, Double.POSITIVE_INFINITY),
                number(speedFrom, Double.NEGATIVE_INFINITY),
                number(speedTo, Double.POSITIVE_INFINITY),
                highLoad.isSelected(),
                stop.isSelected());
    }

    /** What isn't a number is shown as wrong, and matches nothing rather than everything. */
    private static double number(TextField field, double otherwise) {
        String text = field.getText().strip().replace(',', '.');
        field.getStyleClass().remove("bad-field");
        if (text.isEmpty()) {
            return otherwise;
        }
        try {
            return Double.parseDouble(text);
        } catch (NumberFormatException e) {
            field.getStyleClass().add("bad-field");
            return Double.NaN;
        }
    }
}
