package fuelwright.ui.cautions;

import fuelwright.safety.Limit;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.geometry.HPos;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The limits as a table: name, figure, unit, the usual figure, bounds, meaning and origin. Typed figures count at once. */
final class LimitsPane {

    /** Twelve times the size of text. */
    private static final double NAME = 156;

    private static final int COLUMNS = 5;

    /** One line of the table. */
    private final class Line {
        private final Limit limit;
        private final Label name;
        private final TextField field = new TextField();
        private final Label usual = Parts.label("", "figure");
        private final Label mark = Parts.label("", "tag");
        private final Button back;
        private final HBox changed;
        private final Label problem = Parts.text("", "field-message");
        private final Label bounds = Parts.label("", "muted");
        private final Label origin = Parts.text("", "muted", "small");

        Line(Limit limit) {
            this.limit = limit;
            name = Parts.text("", "strong");
            name.setMinWidth(Fonts.grown(NAME));
            name.setMaxWidth(Fonts.grown(NAME));
            name.setLabelFor(field);
            field.setPrefColumnCount(5);
            field.setMaxWidth(80);
            field.setAlignment(Pos.CENTER_RIGHT);
            field.setId("limit-" + limit.key());
            field.setOnAction(e -> take());
            field.focusedProperty().addListener((p, old, now) -> {
                if (!now) {
                    take();
                }
            });
            back = Parts.button("limits.back", () -> back(), "compact", "small");
            changed = Parts.row(8, mark, back);
            back.setAccessibleText(Words.of("limits.back.words", limit.words()));
        }

        private void take() {
            if (field.getText().equals(model.text(limit))) {
                say(Optional.empty());
                return;
            }
            say(model.take(limit, field.getText()));
        }

        private void back() {
            say(Optional.empty());
            model.backToUsual(limit);
            refresh();
        }

        private void say(Optional<String> words) {
            problem.setText(words.orElse(""));
            Parts.show(problem, words.isPresent());
            field.getStyleClass().remove("bad-field");
            if (words.isPresent()) {
                field.getStyleClass().add("bad-field");
            }
        }

        void refresh() {
            if (problem.getText().isEmpty() || !field.isFocused()) {
                field.setText(model.text(limit));
            }
            name.setText(model.name(limit));
            field.setAccessibleText(Words.of(
                    "limits.field", limit.words(), model.bounds(limit), model.unit(limit), model.usual(limit)));
            usual.setText(model.usual(limit));
            bounds.setText(model.bounds(limit));
            origin.setText(Parts.capital(model.origin(limit)));
            boolean changed = model.isChanged(limit);
            Parts.show(this.changed, changed);
            mark.setText(Words.of(model.isWider(limit) ? "limits.wider" : "limits.stricter"));
        }
    }

    /** So that names stand on one line with the figures in their fields. */
    private static final double FIELD_TEXT_TOP = 7;

    private static final double SCROLL_BAR = 14;

    private final LimitsModel model;
    private final SimpleBooleanProperty anyChanged = new SimpleBooleanProperty();
    private final Map<Limit, Line> lines = new EnumMap<>(Limit.class);
    private final Label summary = new Label();
    private final Node node;

    LimitsPane(LimitsModel model) {
        this.model = model;
        GridPane grid = new GridPane();
        grid.setHgap(12);
        grid.setVgap(8);
        grid.getStyleClass().add("card");
        for (int c = 0; c < COLUMNS; c++) {
            ColumnConstraints column = new ColumnConstraints();
            column.setHalignment(c == 1 || c == 2 ? HPos.RIGHT : HPos.LEFT);
            column.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
            if (c == COLUMNS - 1) {
                column.setMinWidth(120);
                column.setHgrow(Priority.ALWAYS);
            }
            grid.getColumnConstraints().add(column);
        }
        int row = 0;
        String[] heads = {"limits.name", "limits.value", "limits.usual", "limits.from", "limits.meaning"};
        for (int c = 0; c < heads.length; c++) {
            if (!heads[c].isEmpty()) {
                grid.add(Parts.label(Words.of(heads[c]), "muted", "small"), c, row);
            }
        }
        row++;
        for (LimitsModel.Group group : LimitsModel.GROUPS) {
            Label heading = Parts.label(Words.of(group.key()), "section");
            heading.setPadding(new Insets(row == 1 ? 0 : 8, 0, 0, 0));
            grid.add(heading, 0, row++, COLUMNS, 1);
            for (Limit limit : group.limits()) {
                row = add(grid, limit, row);
            }
        }
        Button all = Parts.button("limits.allback", this::allBack, "compact");
        HBox top = Parts.row(12, summary, Parts.gap(), all);
        summary.getStyleClass().add("muted");
        summary.setWrapText(true);
        all.visibleProperty().bind(anyChanged);
        VBox box = new VBox(12, top, grid);
        box.setPadding(new Insets(0, SCROLL_BAR, 0, 0));
        node = Parts.scroll(box);
        VBox.setVgrow(node, Priority.ALWAYS);
        model.session().jobProperty().addListener((p, old, now) -> refresh());
        model.session().whenShownOtherwise(() -> {
            lines.values().forEach(l -> l.say(Optional.empty()));
            refresh();
        });
        refresh();
    }

    private int add(GridPane grid, Limit limit, int row) {
        Line line = new Line(limit);
        lines.put(limit, line);
        VBox words = new VBox(Parts.text(Parts.capital(limit.meaning())), line.origin, line.problem, line.changed);
        words.setSpacing(2);
        Parts.show(line.problem, false);
        for (Label label : new Label[] {line.name, line.usual, line.bounds}) {
            label.setPadding(new Insets(FIELD_TEXT_TOP, 0, 0, 0));
        }
        line.changed.setPadding(new Insets(2, 0, 2, 0));
        Node[] cells = {line.name, line.field, line.usual, line.bounds, words};
        for (int c = 0; c < cells.length; c++) {
            grid.add(cells[c], c, row);
            GridPane.setValignment(cells[c], VPos.TOP);
        }
        return row + 1;
    }

    private void allBack() {
        lines.values().forEach(l -> l.say(Optional.empty()));
        model.allBackToUsual();
    }

    private void refresh() {
        summary.setText(model.summary());
        anyChanged.set(lines.keySet().stream().anyMatch(model::isChanged));
        lines.values().forEach(Line::refresh);
    }

    Node node() {
        return node;
    }
}
