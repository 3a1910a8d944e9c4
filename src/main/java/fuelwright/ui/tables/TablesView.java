package fuelwright.ui.tables;

import fuelwright.ui.plot.CurvesPlot;
import fuelwright.ui.plot.ScaleBar;
import fuelwright.ui.plot.SurfacePlot;
import fuelwright.ui.session.ShownTable;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.SideBySide;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import javafx.beans.binding.Bindings;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.input.Clipboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Tables. */
public final class TablesView implements StagePane {

    private static final int MOST_ODD = 3;

    private static final int MOST_BESIDE = 26;

    private final TablesModel model;
    private final EditableGrid grid;
    private final CurvesPlot curves;
    private final SurfacePlot surface;
    private final VBox root;
    private final Node unsaid;
    private final VBox facts = new VBox(12);
    private final Node explanation = Parts.scroll(facts);
    private EditPane edit;
    private String editKind;
    private TargetPane make;
    private final ScaleBar bar = new ScaleBar(240);

    public TablesView(TablesModel model) {
        this.model = model;
        grid = new EditableGrid(model);
        curves = new CurvesPlot(cell -> model.cellProperty().set(cell));
        surface = new SurfacePlot(cell -> model.cellProperty().set(cell));
        curves.setId("tables-curves");
        surface.setId("tables-surface");
        curves.setFocusTraversable(true);
        Node curvesKeys = curvesWithChoice();
        shownAs(grid, TablesModel.Form.MAP);
        shownAs(curvesKeys, TablesModel.Form.CURVES);
        shownAs(surface, TablesModel.Form.SURFACE);
        StackPane place = new StackPane(grid, curvesKeys, surface);
        for (ShownTable shown : ShownTable.values()) {
            place.getChildren().add(empty(shown));
        }
        VBox.setVgrow(place, Priority.ALWAYS);
        Label below = new Label(Words.of("tables.below"));
        unsaid = new UnsaidPane(model.session().unsaid()).node();
        root = new VBox(12, Parts.heading(new Label(Words.of("tables.title")), below), toolbar(), unsaid, place, bar);
        root.getStyleClass().add("work");
        facts.getStyleClass().add("explanation-inner");
        model.mapProperty().addListener((p, old, now) -> scale());
        model.formProperty().addListener((p, old, now) -> scale());
        model.factsProperty().addListener((p, old, now) -> explain());
        model.cellProperty().addListener((p, old, now) -> explain());
        model.session().whenShownOtherwise(this::explain);
        model.session().jobProperty().addListener((p, old, now) -> {
            boolean deadTime =
                    !old.proposal().deadTimeToldMs().equals(now.proposal().deadTimeToldMs())
                            || !old.machine().injectors().equals(now.machine().injectors());
            if (deadTime || !old.targetRatio().equals(now.targetRatio())) {
                explain();
            }
            if (now.fuelTable().isEmpty() && now.targetTable().isEmpty()) {
                model.editor().forget();
            }
        });
        model.shownProperty().addListener((p, old, now) -> explain());
        model.target().openProperty().addListener((p, old, now) -> explain());
        model.blockProperty().addListener((p, old, now) -> picture());
        model.formProperty().addListener((p, old, now) -> {
            picture();
            first().requestFocus();
        });
        model.alongLoadProperty().addListener((p, old, now) -> picture());
        model.session().textSizeProperty().addListener((p, old, now) -> picture());
        root.addEventHandler(KeyEvent.KEY_PRESSED, this::key);
        scale();
        explain();
    }

    private void scale() {
        List<String> labels = model.scale();
        boolean map = model.mapProperty().get() != null && model.formProperty().get() == TablesModel.Form.MAP;
        Parts.show(bar, map && !labels.isEmpty());
        if (bar.isVisible()) {
            boolean first = model.shownProperty().get() == ShownTable.FIRST_RIDE;
            Theme theme = model.session().themeProperty().get();
            bar.show(
                    theme,
                    t -> first ? TableMap.firstRideTint(theme.palette(), 2 * t - 1) : TableMap.tint(theme.palette(), t),
                    labels);
        }
    }

    private void shownAs(Node node, TablesModel.Form form) {
        node.visibleProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> model.mapProperty().get() != null
                                && model.formProperty().get() == form,
                        model.mapProperty(),
                        model.formProperty()));
    }

    private Node curvesWithChoice() {
        ToggleButton speed = toggle(
                "tables.along.speed", true, () -> model.alongLoadProperty().set(false));
        ToggleButton load = toggle(
                "tables.along.load", false, () -> model.alongLoadProperty().set(true));
        model.alongLoadProperty().addListener((p, old, now) -> (now ? load : speed).setSelected(true));
        VBox.setVgrow(curves, Priority.ALWAYS);
        return new VBox(
                8,
                Parts.row(
                        8,
                        Parts.choice(new ToggleGroup(), speed, load),
                        Parts.text(Words.of("tables.curves.hint"), "muted")),
                curves);
    }

    /** Where there is no table, what was copied becomes one. M, C and S choose how the table is looked at; X turns the curves. In curves the arrow keys go from cell to cell. */
    private void key(KeyEvent event) {
        boolean typing = event.getTarget() instanceof javafx.scene.control.TextInputControl;
        boolean pastes = event.isShortcutDown() && event.getCode() == KeyCode.V;
        if (!typing && pastes && model.table().isEmpty()) {
            model.session().unsaid().paste(copied());
            event.consume();
            return;
        }
        if (typing || event.isShortcutDown() || event.isAltDown()) {
            return;
        }
        switch (event.getCode()) {
            case M:
                model.formProperty().set(TablesModel.Form.MAP);
                break;
            case C:
                model.formProperty().set(TablesModel.Form.CURVES);
                break;
            case S:
                model.formProperty().set(TablesModel.Form.SURFACE);
                break;
            case X:
                model.alongLoadProperty().set(!model.alongLoadProperty().get());
                break;
            case LEFT:
            case RIGHT:
            case UP:
            case DOWN:
                if (event.getTarget() != curves) {
                    return;
                }
                curveKey(event.getCode());
                break;
            default:
                return;
        }
        event.consume();
    }

    private static String copied() {
        String text = Clipboard.getSystemClipboard().getString();
        return text == null ? "" : text;
    }

    private void curveKey(KeyCode code) {
        int along = code == KeyCode.RIGHT ? 1 : code == KeyCode.LEFT ? -1 : 0;
        int up = code == KeyCode.UP ? 1 : code == KeyCode.DOWN ? -1 : 0;
        boolean load = model.alongLoadProperty().get();
        model.step(load ? up : along, load ? along : up);
    }

    private void picture() {
        var theme = model.session().themeProperty().get();
        int cell = model.cellProperty().get();
        String words = model.selected().map(f -> f.words() + ": " + f.figure()).orElse(Words.of("tables.edit.select"));
        switch (model.formProperty().get()) {
            case CURVES:
                curves.show(model.curves().orElse(null), cell, theme, words);
                break;
            case SURFACE:
                surface.show(model.surface().orElse(null), cell, theme, words);
                break;
            default:
                break;
        }
    }

    private static String key(ShownTable shown) {
        switch (shown) {
            case TARGET:
                return "tables.empty.target";
            case FIRST_RIDE:
                return "tables.first.empty";
            default:
                return "tables.empty.fuel";
        }
    }

    private Node empty(ShownTable shown) {
        VBox empty = Parts.empty(
                Words.of(key(shown) + ".title"),
                Words.of(key(shown)),
                model.session().workingProperty(),
                model.session().doingProperty(),
                Parts.button("tables.open", this::open, "primary"),
                makeButton(shown));
        empty.visibleProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> model.mapProperty().get() == null
                                && model.shownProperty().get() == shown,
                        model.mapProperty(),
                        model.shownProperty()));
        return empty;
    }

    private Node makeButton(ShownTable shown) {
        Button make =
                Parts.button("tables.make", () -> model.target().openProperty().set(true));
        Parts.show(make, shown == ShownTable.TARGET);
        make.disableProperty()
                .bind(Bindings.createBooleanBinding(
                        () -> !model.target().isPossible(), model.session().jobProperty()));
        return make;
    }

    private void open() {
        AskFiles.choose(root, model.session()::open);
    }

    private Node toolbar() {
        ToggleButton fuel = shows("tables.fuel", ShownTable.FUEL);
        ToggleButton target = shows("tables.target", ShownTable.TARGET);
        ToggleButton first = shows("tables.first", ShownTable.FIRST_RIDE);
        ToggleButton chart =
                toggle("tables.chart", true, () -> model.asFileProperty().set(false));
        ToggleButton file =
                toggle("tables.file", false, () -> model.asFileProperty().set(true));
        ToggleButton[] forms = new ToggleButton[TablesModel.Form.values().length];
        for (TablesModel.Form form : TablesModel.Form.values()) {
            String key = "tables.form." + form.name().toLowerCase(java.util.Locale.ROOT);
            forms[form.ordinal()] = toggle(
                    key,
                    model.formProperty().get() == form,
                    () -> model.formProperty().set(form));
            forms[form.ordinal()].setTooltip(new Tooltip(Words.of(key + ".tip")));
        }
        model.formProperty().addListener((p, old, now) -> forms[now.ordinal()].setSelected(true));
        HBox which = Parts.row(
                8,
                Parts.choice(new ToggleGroup(), fuel, target, first),
                Parts.button("tables.open", this::open, "compact"));
        HBox how = Parts.row(
                12, quiet(Parts.choice(new ToggleGroup(), forms)), quiet(Parts.choice(new ToggleGroup(), chart, file)));
        return new SideBySide(which, how);
    }

    private static HBox quiet(HBox choice) {
        choice.getStyleClass().add("quiet-choice");
        return choice;
    }

    private ToggleButton shows(String key, ShownTable shown) {
        ToggleButton toggle = toggle(
                key,
                model.shownProperty().get() == shown,
                () -> model.shownProperty().set(shown));
        model.shownProperty().addListener((p, old, now) -> {
            if (now == shown) {
                toggle.setSelected(true);
            }
        });
        return toggle;
    }

    private static ToggleButton toggle(String key, boolean on, Runnable action) {
        ToggleButton toggle = new ToggleButton(Words.of(key));
        toggle.setSelected(on);
        toggle.setOnAction(e -> action.run());
        return toggle;
    }

    private void explain() {
        picture();
        facts.getChildren().clear();
        if (model.target().openProperty().get()) {
            facts.getChildren().add(targetPane());
            return;
        }
        model.selected()
                .ifPresent(cell -> facts.getChildren()
                        .add(new VBox(
                                4, Parts.text(cell.words(), "section"), Parts.label(cell.figure(), "big-figure"))));
        boolean editable = model.editor().isEditable();
        if (model.shownProperty().get() == ShownTable.TARGET) {
            Node button = makeButton(ShownTable.TARGET);
            button.setId("target-make");
            facts.getChildren().add(button);
        }
        if (editable) {
            facts.getChildren().add(editPane());
        }
        List<TablesModel.Fact> odd = model.oddCells();
        if (!odd.isEmpty()) {
            facts.getChildren().add(0, odd(odd));
        }
        if (model.isTargetRatioNeeded()) {
            boolean asks = model.session().job().asksForTargetRatio();
            facts.getChildren().add(asks ? 0 : facts.getChildren().size(), new TargetRatioPane(model));
        }
        if (model.ridesKeepAnotherTable()) {
            facts.getChildren().add(Parts.callout("check", Words.of("tables.rides"), Words.of("tables.rides.why")));
        }
        String title;
        String words;
        switch (model.shownProperty().get()) {
            case TARGET:
                title = "tables.target";
                words = model.targetWords();
                break;
            case FIRST_RIDE:
                title = "tables.first.title";
                words = Words.of("tables.first.explain");
                break;
            default:
                title = "tables.fuel";
                words = Words.of("tables.explain.fuel");
        }
        VBox list = new VBox(Parts.label(Words.of(title), "section"));
        model.factsProperty().get().forEach(f -> list.getChildren().add(fact(f)));
        facts.getChildren().addAll(list, Parts.text(words, "muted"));
        if (model.asksForDeadTime()) {
            boolean untold = model.isDeadTimeUntold();
            facts.getChildren().add(untold ? 0 : facts.getChildren().size(), new DeadTimePane(model));
        }
        if (model.shownProperty().get() == ShownTable.FIRST_RIDE
                && model.firstRideProperty().get() != null) {
            facts.getChildren().add(new FirstRidePane(model, root));
        }
    }

    /** What doesn't fit beside its name, such as a caution that the table carries, stands below it. */
    private static Node fact(TablesModel.Fact fact) {
        if (fact.figure().length() <= MOST_BESIDE) {
            return Parts.fact(fact.words(), fact.figure());
        }
        VBox below = new VBox(2, Parts.text(Parts.capital(fact.words())), Parts.text(fact.figure(), "muted"));
        below.getStyleClass().add("fact");
        return below;
    }

    private static VBox odd(List<TablesModel.Fact> odd) {
        List<String> lines = new ArrayList<>();
        odd.stream().limit(MOST_ODD).forEach(f -> lines.add(f.words() + ": " + f.figure() + "."));
        lines.add(Words.of("tables.odd.why"));
        return Parts.callout("check", Words.of("tables.odd", odd.size()), lines.toArray(new String[0]));
    }

    /** Kept as long as the axes are of the same kinds, so that what is typed in it stays. */
    private Node editPane() {
        String kind = model.shownProperty().get() + " "
                + model.table().map(t -> t.load().kind().name()).orElse("");
        if (edit == null || !kind.equals(editKind)) {
            edit = new EditPane(model);
            editKind = kind;
        }
        return edit;
    }

    private Node targetPane() {
        if (make == null) {
            make = new TargetPane(model.target());
        }
        return make;
    }

    @Override
    public Node work() {
        return root;
    }

    @Override
    public Node explanation() {
        return explanation;
    }

    @Override
    public Node first() {
        return Parts.firstIn(unsaid).orElseGet(this::table);
    }

    private Node table() {
        switch (model.formProperty().get()) {
            case CURVES:
                return curves;
            case SURFACE:
                return surface;
            default:
                return grid.grid();
        }
    }
}
