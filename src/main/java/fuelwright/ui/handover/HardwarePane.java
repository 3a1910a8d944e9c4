package fuelwright.ui.handover;

import fuelwright.handover.StandsOn;
import fuelwright.job.CellsNow;
import fuelwright.job.HardwareProfile;
import fuelwright.safety.Caution;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.input.Clipboard;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Step 1 of the handover: what the hardware takes, and what that costs. */
final class HardwarePane {

    private static final int FIGURE_COLUMNS = 6;

    private final HardwareModel model;
    private final VBox cautions = new VBox(8);
    private final GridPane grid = new GridPane();
    private final Node node;
    private int row;

    /** @param goOn to the next step */
    HardwarePane(HardwareModel model, Runnable goOn) {
        this.model = model;
        grid.setHgap(16);
        grid.setVgap(12);
        grid.getStyleClass().add("card");
        ColumnConstraints names = new ColumnConstraints();
        names.setMinWidth(120);
        ColumnConstraints fields = new ColumnConstraints();
        fields.setHgrow(Priority.ALWAYS);
        grid.getColumnConstraints().addAll(names, fields);
        line("hardware.holds", holds());
        line("hardware.figures", figures());
        now();
        line("hardware.speeds", breakpoints(HardwareForm.Field.SPEEDS));
        follow(line("hardware.loads", breakpoints(HardwareForm.Field.LOADS)), model::loads);
        grid.add(file(), 1, row++);
        line("hardware.orientation", orientation());
        line("hardware.decimal", decimal());
        Label cost = Parts.text("", "strong");
        cost.setId("hardware-cost");
        cost.textProperty().bind(model.costProperty());
        model.session().staleProperty().addListener((p, old, now) -> cost.setOpacity(now ? 0.45 : 1));
        VBox below = new VBox(8, Parts.label(Words.of("hardware.cost"), "section"), cost, cautions);
        model.cautionsProperty().addListener((p, old, now) -> cautions());
        cautions();
        node = new VBox(16, grid, done(goOn), below);
    }

    /** Says that all of this is so, and goes on. */
    private Node done(Runnable goOn) {
        Button done = Parts.button(
                "hardware.done",
                () -> {
                    if (model.confirm()) {
                        goOn.run();
                    }
                },
                "primary");
        done.setId("hardware-done");
        Runnable show = () -> done.setText(Words.of(model.isPlain() ? "hardware.done.plain" : "hardware.done"));
        model.session().jobProperty().addListener((p, old, now) -> show.run());
        show.run();
        return Parts.row(8, done);
    }

    /** Typed figures take the place of what the cells hold: that must be known. */
    private void now() {
        Label known = Parts.text("", "strong");
        known.setId("hardware-now");
        Label problem = message();
        problem.textProperty().bind(model.nowProblemProperty());
        ToggleGroup group = new ToggleGroup();
        ToggleButton none = new ToggleButton();
        none.setId("hardware-now-none");
        none.setOnAction(e -> model.holdNothing());
        ToggleButton worked = new ToggleButton(Words.of("hardware.now.worked"));
        worked.setId("hardware-now-worked");
        worked.setOnAction(e -> model.holdWorkedOut());
        Button paste = Parts.button("hardware.now.paste", () -> {
            String text = Clipboard.getSystemClipboard().getString();
            model.holdPasted(text == null ? "" : text);
        });
        paste.setId("hardware-now-paste");
        paste.setTooltip(new Tooltip(Words.of("hardware.now.paste.tip")));
        FlowPane ways = new FlowPane(8, 8, Parts.choice(group, none, worked), paste);
        VBox box = new VBox(4, ways, known, problem);
        Label name = line("hardware.now", box);
        Runnable show = () -> {
            Optional<CellsNow> now = model.nowProperty().get();
            Parts.show(box, now.isPresent());
            Parts.show(name, now.isPresent());
            if (now.isEmpty()) {
                return;
            }
            boolean multiplier = now.get().figures().quantity() == Quantity.MULTIPLIER;
            boolean said = now.get().known() == CellsNow.Known.SAID;
            none.setText(Words.of(multiplier ? "hardware.now.one" : "hardware.now.zero"));
            none.setSelected(said && now.get().isNone());
            worked.setSelected(said && !now.get().isNone());
            worked.setText(Words.of(said ? "hardware.now.kept" : "hardware.now.worked"));
            Parts.show(worked, !now.get().isNone());
            known.setText(StandsOn.words(now.get()));
            box.getStyleClass().removeAll("callout", "check");
            if (!said) {
                box.getStyleClass().addAll("callout", "check");
            }
        };
        model.nowProperty().addListener((p, old, now) -> show.run());
        show.run();
    }

    /** @return its name */
    private Label line(String key, Node field) {
        Label name = Parts.text(Words.of(key), "strong");
        name.setPadding(new javafx.geometry.Insets(6, 0, 0, 0));
        GridPane.setValignment(name, VPos.TOP);
        grid.add(name, 0, row);
        grid.add(field, 1, row++);
        return name;
    }

    /** Words that go with the job's table and with what a cell holds. */
    private void follow(Label label, Supplier<String> words) {
        Runnable show = () -> label.setText(words.get());
        model.session().jobProperty().addListener((p, old, now) -> show.run());
        model.formProperty().addListener((p, old, now) -> show.run());
        show.run();
    }

    private Node holds() {
        Map<String, HardwareProfile.Holds> all = new LinkedHashMap<>();
        for (HardwareProfile.Holds holds : HardwareProfile.Holds.values()) {
            all.put("hardware.holds." + holds.name().toLowerCase(Locale.ROOT), holds);
        }
        return choice(all, HardwareForm::holds, model::hold);
    }

    private Node orientation() {
        Map<String, Optional<Table.Orientation>> all = new LinkedHashMap<>();
        all.put("hardware.orientation.file", Optional.empty());
        all.put("hardware.orientation.down", Optional.of(Table.Orientation.SPEED_DOWN));
        all.put("hardware.orientation.across", Optional.of(Table.Orientation.SPEED_ACROSS));
        return choice(all, HardwareForm::orientation, model::orient);
    }

    private Node decimal() {
        Map<String, Boolean> all = new LinkedHashMap<>();
        all.put("hardware.decimal.point", false);
        all.put("hardware.decimal.comma", true);
        return choice(all, HardwareForm::decimalComma, model::useComma);
    }

    private <T> Node choice(Map<String, T> all, Function<HardwareForm, T> now, Consumer<T> choose) {
        ToggleGroup group = new ToggleGroup();
        Map<T, ToggleButton> toggles = new LinkedHashMap<>();
        all.forEach((key, value) -> {
            ToggleButton toggle = new ToggleButton(Words.of(key));
            toggle.setId(key.replace('.', '-'));
            toggle.setOnAction(e -> {
                if (toggle.isSelected()) {
                    choose.accept(value);
                }
            });
            toggles.put(value, toggle);
        });
        Runnable show = () -> toggles.get(now.apply(model.formProperty().get())).setSelected(true);
        HBox box = Parts.choice(group, toggles.values().toArray(ToggleButton[]::new));
        model.formProperty().addListener((p, old, form) -> show.run());
        show.run();
        return box;
    }

    private Node figures() {
        FlowPane flow = new FlowPane(16, 8);
        for (HardwareForm.Field field :
                new HardwareForm.Field[] {HardwareForm.Field.STEP, HardwareForm.Field.LEAST, HardwareForm.Field.MOST}) {
            TextField text = field(field);
            text.setPrefColumnCount(FIGURE_COLUMNS);
            Label unit = Parts.label("", "muted");
            follow(unit, model::unit);
            Label name = Parts.label(Words.of(field.key()), "field-name");
            name.setLabelFor(text);
            flow.getChildren().add(new VBox(4, name, Parts.row(4, text, unit), problem(field)));
        }
        return flow;
    }

    private Node breakpoints(HardwareForm.Field field) {
        TextField text = field(field);
        Runnable prompt = () -> text.setPromptText(Words.of("hardware.asfuel", model.fuelBreakpoints(field)));
        model.session().jobProperty().addListener((p, old, now) -> prompt.run());
        prompt.run();
        return new VBox(2, text, problem(field));
    }

    private Node file() {
        Button file = Parts.button(
                "hardware.file",
                () -> AskFiles.one(grid, Words.of("hardware.file.title"), model::breakpointsOf),
                "compact");
        file.setId("hardware-file");
        Button same = Parts.button("hardware.same", model::sameBreakpoints, "compact");
        same.setId("hardware-same");
        Label problem = message();
        problem.textProperty().bind(model.fileProblemProperty());
        return new VBox(4, Parts.row(8, file, same), problem);
    }

    private TextField field(HardwareForm.Field field) {
        TextField text = new TextField();
        text.setId(field.key().replace('.', '-'));
        text.textProperty().bindBidirectional(model.textProperty(field));
        text.setPromptText(Words.has(field.key() + ".none") ? Words.of(field.key() + ".none") : "");
        text.setAccessibleText(Words.of(field.key()));
        text.setAccessibleHelp(Words.of(field.key() + ".tip"));
        text.setTooltip(new Tooltip(Words.of(field.key() + ".tip")));
        text.setOnAction(e -> model.commit());
        text.focusedProperty().addListener((p, old, now) -> {
            if (!now) {
                model.commit();
            }
        });
        model.problemProperty(field).addListener((p, old, now) -> {
            text.getStyleClass().remove("bad-field");
            if (!now.isEmpty()) {
                text.getStyleClass().add("bad-field");
            }
        });
        return text;
    }

    private Label problem(HardwareForm.Field field) {
        Label label = message();
        label.textProperty().bind(model.problemProperty(field));
        return label;
    }

    private static Label message() {
        Label label = Parts.text("", "field-message");
        label.managedProperty().bind(label.textProperty().isNotEmpty());
        return label;
    }

    private void cautions() {
        cautions.getChildren().clear();
        for (Caution caution : model.cautionsProperty().get()) {
            cautions.getChildren().add(callout(caution));
        }
        Parts.show(cautions, !cautions.getChildren().isEmpty());
    }

    static Node callout(Caution caution) {
        return Parts.callout(
                caution.level().name().toLowerCase(Locale.ROOT),
                caution.level().words() + " · " + caution.title(),
                Parts.sentence(caution.what()) + " " + Parts.sentence(caution.todo()));
    }

    Node node() {
        return node;
    }
}
