package fuelwright.ui.machine;

import fuelwright.airflow.Machine;
import fuelwright.job.FirstStart;
import fuelwright.ui.plot.CurvesPlot;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.UndoInField;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.FuelChoice;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.geometry.Bounds;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.Slider;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The stage Machine: a form, and the check list before the first start; on the right what to take care of. */
public final class MachineView implements StagePane {

    private static final String[] CARE = {"where", "screen", "gas", "hot", "law", "person"};

    /** Wider, fields are out of proportion to what stands in them. */
    private static final double WIDEST = 900;

    /** From here on the bore forecast stands beside the form, and is seen while one types. */
    private static final double BOTH = 1200;

    private static final double COLUMN = 600;

    private final MachineModel model;
    private final ScrollPane work;
    private final VBox content;
    private final List<CheckBox> boxes = new ArrayList<>();
    private final Node explanation;
    private final TextField name = new TextField();
    private final VBox form = new VBox(16);
    private final VBox forecast;
    private final GridPane pictures = new GridPane();
    private final HBox columns = new HBox(16, form);

    public MachineView(MachineModel model) {
        this.model = model;
        name.textProperty().bindBidirectional(model.nameProperty());
        commitOnLeave(name);
        content = new VBox(
                16, Parts.heading(new Label(Words.of("machine.title")), new Label(Words.of("machine.below"))), columns);
        form.getChildren().addAll(engine(), bodies(), checks(), injectors());
        form.setMinWidth(0);
        form.setPrefWidth(COLUMN);
        HBox.setHgrow(form, Priority.ALWAYS);
        forecast = forecast();
        forecast.setMinWidth(0);
        HBox.setHgrow(forecast, Priority.ALWAYS);
        arrange(false);
        content.widthProperty().addListener((p, old, now) -> arrange(now.doubleValue() >= Fonts.grown(BOTH)));
        content.getStyleClass().add("work");
        work = Parts.scroll(content);
        model.session().selection().checksProperty().addListener((p, old, now) -> showChecks());
        VBox right = new VBox(16, bores(), care());
        right.getStyleClass().add("explanation-inner");
        explanation = Parts.scroll(right);
    }

    /** The bore forecast beside the form, its map below its curves; or below the form, side by side. */
    private void arrange(boolean beside) {
        Pane place = beside ? columns : form;
        if (forecast.getParent() == place) {
            return;
        }
        columns.getChildren().remove(forecast);
        form.getChildren().remove(forecast);
        place.getChildren().add(forecast);
        forecast.setPrefWidth(beside ? COLUMN : Region.USE_COMPUTED_SIZE);
        GridPane.setConstraints(pictures.getChildren().get(1), beside ? 0 : 1, beside ? 1 : 0);
    }

    private VBox engine() {
        FieldGrid grid = new FieldGrid(4);
        name.setAccessibleText(Words.of("machine.name"));
        Tooltip whole = new Tooltip();
        whole.textProperty().bind(name.textProperty());
        name.setTooltip(whole);
        grid.add(2, named("machine.name"), name);
        grid.add(2, named("machine.fuel"), fuel());
        add(
                grid,
                MachineForm.Field.DISPLACEMENT,
                MachineForm.Field.BODIES,
                MachineForm.Field.REDLINE,
                MachineForm.Field.ALTITUDE);
        return card("machine.engine", grid);
    }

    private VBox injectors() {
        FieldGrid grid = new FieldGrid(5);
        add(
                grid,
                MachineForm.Field.INJECTORS,
                MachineForm.Field.INJECTOR_BEFORE,
                MachineForm.Field.INJECTOR_AFTER,
                MachineForm.Field.DEAD_TIME,
                MachineForm.Field.INJECTIONS);
        return card("machine.injectors", grid, Parts.text(Words.of("machine.injectors.hint"), "muted"));
    }

    private VBox bodies() {
        GridPane grid = grid(5);
        grid.setVgap(8);
        grid.getColumnConstraints().get(0).setHgrow(Priority.NEVER);
        grid.getColumnConstraints().forEach(c -> c.setPercentWidth(-1));
        grid.getColumnConstraints().stream().skip(1).forEach(c -> c.setPrefWidth(100));
        MachineForm.Field[] all = MachineForm.Field.values();
        for (int i = 0; i < 4; i++) {
            Label head = Parts.text(Words.of(all[MachineForm.Field.BORE_BEFORE.ordinal() + i].key()), "field-name");
            grid.add(head, i + 1, 0);
        }
        for (int row = 0; row < 2; row++) {
            MachineForm.Field bore = row == 0 ? MachineForm.Field.BORE_BEFORE : MachineForm.Field.BORE_AFTER;
            Label label = Parts.label(Words.of(row == 0 ? "machine.before" : "machine.after"), "strong");
            label.setMinHeight(32);
            label.setMinWidth(Label.USE_PREF_SIZE);
            grid.add(label, 0, row + 1);
            for (int i = 0; i < 4; i++) {
                MachineForm.Field field = all[bore.ordinal() + i];
                grid.add(new VBox(2, field(field), problem(field)), i + 1, row + 1);
            }
        }
        Label consequence = Parts.text("", "strong");
        consequence.textProperty().bind(model.consequenceProperty());
        return card("machine.bodies", grid, consequence, Parts.text(Words.of("machine.bodies.hint"), "muted"));
    }

    private VBox bores() {
        BoreDrawing drawing = new BoreDrawing();
        drawing.setId("machine-bores");
        Slider slider = new Slider(0, 100, model.throttleProperty().get());
        slider.setId("machine-throttle");
        slider.setBlockIncrement(5);
        slider.valueProperty().bindBidirectional(model.throttleProperty());
        slider.setAccessibleText(Words.of("machine.bores.throttle"));
        slider.setTooltip(new Tooltip(Words.of("machine.bores.throttle.tip")));
        HBox.setHgrow(slider, Priority.ALWAYS);
        Label percent = Parts.label("", "figure");
        percent.setMinWidth(52);
        Label ratio = Parts.text("", "strong");
        ratio.setId("machine-ratio");
        Runnable show = () -> {
            Machine machine = model.typedProperty().get();
            boolean both = machine.before().isPresent() && machine.after().isPresent();
            Parts.show(drawing, both);
            slider.setDisable(!both);
            percent.setText(Figures.plain(model.throttleProperty().get(), 0) + " %");
            drawing.show(
                    both ? machine.before().get() : null,
                    both ? machine.after().get() : null,
                    model.throttleProperty().get(),
                    model.session().themeProperty().get());
            ratio.setText(
                    !both
                            ? Words.of("machine.bores.empty")
                            : model.areaRatio().isEmpty()
                                    ? Words.of("machine.bores.closed")
                                    : opening(model.areaRatio().getAsDouble()) + air());
        };
        model.typedProperty().addListener((p, old, now) -> show.run());
        model.throttleProperty().addListener((p, old, now) -> show.run());
        model.forecastProperty().addListener((p, old, now) -> show.run());
        model.session().themeProperty().addListener((p, old, now) -> show.run());
        show.run();
        Label name = Parts.label(Words.of("machine.bores.throttle"), "field-name");
        name.setLabelFor(slider);
        return new VBox(
                8,
                Parts.label(Words.of("machine.bores"), "section"),
                drawing,
                Parts.row(8, name, slider, percent),
                ratio);
    }

    private String air() {
        BoreForecastPicture picture = model.forecastProperty().get();
        return picture == null
                ? ""
                : " " + picture.airWords(model.throttleProperty().get());
    }

    private String opening(double ratio) {
        double percent = 100 * (ratio - 1);
        return Words.of(
                Math.abs(percent) < 0.5
                        ? "machine.bores.same"
                        : percent > 0 ? "machine.bores.more" : "machine.bores.less",
                Figures.plain(model.throttleProperty().get(), 0),
                Figures.plain(Math.abs(percent), 0));
    }

    private VBox forecast() {
        CurvesPlot curves = new CurvesPlot(cell -> {});
        curves.setId("machine-curves");
        HeatGrid map = new HeatGrid();
        map.setId("machine-forecast");
        map.themeProperty().bind(model.session().themeProperty());
        curves.setPrefSize(360, 330);
        map.setPrefSize(420, 330);
        // Narrower than they like, rather than wider than the page.
        curves.setMinWidth(0);
        map.setMinWidth(0);
        GridPane.setHgrow(curves, Priority.SOMETIMES);
        GridPane.setHgrow(map, Priority.ALWAYS);
        GridPane.setVgrow(map, Priority.ALWAYS);
        VBox.setVgrow(pictures, Priority.ALWAYS);
        pictures.setHgap(12);
        pictures.setVgap(12);
        pictures.addRow(0, curves, map);
        Label words = Parts.text("", "muted");
        Runnable show = () -> {
            BoreForecastPicture picture = model.forecastProperty().get();
            Parts.show(pictures, picture != null);
            map.mapProperty().set(picture == null ? null : picture.map());
            curves.show(
                    picture == null ? null : picture.curves(),
                    -1,
                    model.session().themeProperty().get(),
                    picture == null ? "" : picture.words());
            words.setText(
                    picture == null
                            ? model.typedProperty().get().hasBodyChange() ? "" : Words.of("machine.forecast.empty")
                            : Words.of("machine.forecast.what") + " "
                                    + Words.of("machine.forecast.range", picture.range()) + " "
                                    + model.tableKeeps());
        };
        model.forecastProperty().addListener((p, old, now) -> show.run());
        model.session().jobProperty().addListener((p, old, now) -> show.run());
        show.run();
        return card("machine.forecast", words, pictures);
    }

    private VBox checks() {
        GridPane list = grid(2);
        Session session = model.session();
        for (FirstStart check : FirstStart.values()) {
            String key = "machine.check." + check.key();
            CheckBox box = new CheckBox();
            box.setId("check-" + check.key());
            box.setSelected(session.job().firstStart().contains(check));
            box.setOnAction(e -> model.tick(check, box.isSelected()));
            session.jobProperty()
                    .addListener(
                            (p, old, now) -> box.setSelected(now.firstStart().contains(check)));
            box.setAccessibleText(Words.of(key));
            boxes.add(box);
            Label words = Parts.text(Words.of(key), "strong");
            Label why = Parts.text(Words.of(key + ".why"), "muted");
            words.setLabelFor(box);
            VBox text = new VBox(1, words, why);
            text.setOnMouseClicked(e -> box.fire());
            var row = Parts.row(10, box, text);
            row.setAlignment(Pos.TOP_LEFT);
            HBox.setHgrow(text, Priority.ALWAYS);
            list.add(row, check.ordinal() % 2, check.ordinal() / 2);
        }
        return card("machine.checks", list);
    }

    /** Brings the check list into sight, the keyboard on what isn't done yet. */
    private void showChecks() {
        if (work.getScene() == null) {
            return;
        }
        work.getScene().getRoot().applyCss();
        work.getScene().getRoot().layout();
        CheckBox first = boxes.stream().filter(b -> !b.isSelected()).findFirst().orElse(boxes.get(0));
        first.requestFocus();
        Bounds at = content.sceneToLocal(first.localToScene(first.getBoundsInLocal()));
        double seen = work.getViewportBounds().getHeight();
        double more = content.getHeight() - seen;
        if (more > 0) {
            work.setVvalue(Math.max(0, Math.min(1, (at.getMinY() - seen / 3) / more)));
        }
    }

    private VBox care() {
        VBox box = new VBox(12, Parts.label(Words.of("machine.care"), "section"));
        for (String care : CARE) {
            box.getChildren()
                    .add(new VBox(
                            2,
                            Parts.text(Words.of("machine.care." + care), "strong"),
                            Parts.text(Words.of("machine.care." + care + ".why"), "muted")));
        }
        return box;
    }

    private static VBox card(String key, Node... content) {
        VBox card = new VBox(12, Parts.label(Words.of(key), "section"));
        card.getChildren().addAll(content);
        card.getStyleClass().add("card");
        card.setMaxWidth(Fonts.grown(WIDEST));
        return card;
    }

    private static GridPane grid(int columns) {
        GridPane grid = new GridPane();
        grid.setHgap(12);
        grid.setVgap(4);
        for (int i = 0; i < columns; i++) {
            ColumnConstraints column = new ColumnConstraints();
            column.setHgrow(Priority.ALWAYS);
            column.setPercentWidth(100.0 / columns);
            grid.getColumnConstraints().add(column);
        }
        return grid;
    }

    private void add(FieldGrid grid, MachineForm.Field... fields) {
        for (MachineForm.Field field : fields) {
            Label name = Parts.text("", "field-name");
            follow(() -> name.setText(model.name(field)));
            grid.add(1, name, field(field), problem(field));
        }
    }

    /** Does what depends on the units that are shown, now and whenever they change. */
    private void follow(Runnable then) {
        then.run();
        model.session().whenShownOtherwise(then);
    }

    private static Label named(String key) {
        return Parts.text(Words.of(key), "field-name");
    }

    private TextField field(MachineForm.Field field) {
        TextField text = new TextField();
        text.setId(field.name());
        text.textProperty().bindBidirectional(model.textProperty(field));
        text.promptTextProperty()
                .bind(Bindings.createStringBinding(
                        () -> model.prompt(field),
                        model.textProperty(MachineForm.Field.BORE_BEFORE),
                        model.textProperty(MachineForm.Field.BORE_AFTER)));
        UndoInField.on(text, () -> model.taken(field), model.session());
        Tooltip tip = new Tooltip();
        text.setTooltip(tip);
        follow(() -> {
            text.setAccessibleText(model.name(field));
            tip.setText(model.tip(field));
            text.setAccessibleHelp(model.tip(field));
        });
        model.problemProperty(field).addListener((p, old, now) -> {
            text.getStyleClass().remove("bad-field");
            if (!now.isEmpty()) {
                text.getStyleClass().add("bad-field");
            }
        });
        commitOnLeave(text);
        return text;
    }

    private Label problem(MachineForm.Field field) {
        Label label = Parts.text("", "field-message");
        label.textProperty().bind(model.problemProperty(field));
        label.managedProperty().bind(label.textProperty().isNotEmpty());
        return label;
    }

    private void commitOnLeave(TextField text) {
        text.setOnAction(e -> model.commit());
        text.focusedProperty().addListener((p, old, now) -> {
            if (!now) {
                model.commit();
            }
        });
    }

    private FuelChoice fuel() {
        return new FuelChoice(model.fuelProperty());
    }

    @Override
    public Node work() {
        return work;
    }

    @Override
    public Node explanation() {
        return explanation;
    }
}
