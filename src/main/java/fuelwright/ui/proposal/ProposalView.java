package fuelwright.ui.proposal;

import fuelwright.estimate.Decision;
import fuelwright.estimate.ProposalSettings;
import fuelwright.ui.plot.GridScroll;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.plot.ScaleBar;
import fuelwright.ui.plot.SlicePlot;
import fuelwright.ui.session.Missing;
import fuelwright.ui.session.UndoInField;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Proposal. */
public final class ProposalView implements StagePane {

    /** The map, or the selected cell's row or column as curves. */
    private enum Look {
        MAP,
        SPEED,
        LOAD
    }

    private final ProposalModel model;
    private Look look = Look.MAP;
    private final HeatGrid grid = new HeatGrid();
    private final ScaleBar bar = new ScaleBar(260);
    private final TextField add = field("proposal.add");
    private final TextField cut = field("proposal.cut");
    private final TextField step = field("proposal.step");
    private final Label stepUnit = Parts.label("", "muted");
    private final HBox held = sign("■", "legend.held");
    private final HBox set = sign("□", "legend.set");
    private final HBox far = sign("□!", "legend.far", "strong");
    private final Label problem = Parts.text("", "field-message");
    private final Button byRule = Parts.button("proposal.byrule", this::chooseByRule, "compact");
    private final List<ToggleButton> looks = new ArrayList<>();
    private final SlicePlot slice;
    private final StackPane root = new StackPane();
    private final Node explanation;

    public ProposalView(ProposalModel model) {
        this.model = model;
        grid.mapProperty().bind(model.mapProperty());
        grid.themeProperty().bind(model.session().themeProperty());
        grid.selectedProperty().bindBidirectional(model.session().cellProperty());
        grid.blockProperty().bindBidirectional(model.session().selection().blockProperty());
        grid.dimmedProperty().bind(model.session().staleProperty());
        grid.setId("proposal-grid");
        slice = new SlicePlot(model.session().cellProperty()::set);
        slice.setVisible(false);
        slice.setId("proposal-slice");
        slice.addEventHandler(KeyEvent.KEY_PRESSED, this::sliceKey);
        byRule.setId("proposal-byrule");
        add.setId("proposal-most");
        step.setTooltip(new Tooltip(Words.of("proposal.step.tip")));
        step.setAccessibleHelp(Words.of("proposal.step.tip"));
        FlowPane legend = legend();
        legend.visibleProperty().bind(grid.visibleProperty());
        GridScroll map = new GridScroll(grid, model.session().textSizeProperty());
        map.visibleProperty().bind(grid.visibleProperty());
        StackPane plots = new StackPane(map, slice);
        VBox.setVgrow(plots, Priority.ALWAYS);
        Label summary = new Label();
        summary.textProperty().bind(model.summaryProperty());
        VBox content = new VBox(
                12,
                Parts.heading(new Label(Words.of("proposal.title")), summary),
                toolbar(),
                rules(),
                problem,
                plots,
                legend);
        Node work = Parts.work(content);
        work.visibleProperty().bind(model.mapProperty().isNotNull());
        Node empty = Missing.instead(
                model.session(), "proposal.empty", model.mapProperty().isNotNull());
        root.getChildren().addAll(work, empty);
        root.getStyleClass().add("work");
        ExplanationPane pane = new ExplanationPane(model, () -> first().requestFocus());
        grid.addEventHandler(KeyEvent.KEY_PRESSED, this::selectAll);
        plots.addEventHandler(KeyEvent.KEY_TYPED, e -> type(pane, e));
        explanation = Missing.beside(
                pane.node(), "proposal.empty", model.mapProperty().isNotNull());
        ObservableValue<?>[] watched = {
            model.mapProperty(), model.session().themeProperty(), model.shownProperty(), model.rangeProperty()
        };
        for (ObservableValue<?> value : watched) {
            value.addListener((p, old, now) -> key());
        }
        model.mapProperty().addListener((p, old, now) -> {
            drawSlice();
            decided();
        });
        model.session().cellProperty().addListener((p, old, now) -> drawSlice());
        model.session().jobProperty().addListener((p, old, now) -> {
            fillRules();
            decided();
        });
        decided();
        problem.setId("proposal-problem");
        problem.managedProperty().bind(problem.textProperty().isNotEmpty());
        fillRules();
        UndoInField.on(add, () -> Figures.shortest(model.settings().maxAddPercent()), model.session());
        UndoInField.on(cut, () -> Figures.shortest(model.settings().maxCutPercent()), model.session());
        UndoInField.on(step, this::stepText, model.session());
        key();
    }

    private String stepText() {
        double taken = model.settings().step();
        return taken > 0 ? Figures.shortest(taken) : "";
    }

    private FlowPane toolbar() {
        ToggleButton[] toggles = new ToggleButton[ProposalMap.Shown.values().length];
        for (ProposalMap.Shown what : ProposalMap.Shown.values()) {
            ToggleButton toggle =
                    new ToggleButton(Words.of("proposal.shown." + what.name().toLowerCase(java.util.Locale.ROOT)));
            toggle.setSelected(what == model.shownProperty().get());
            toggle.setOnAction(e -> {
                model.shownProperty().set(what);
                lookAt(Look.MAP);
            });
            toggles[what.ordinal()] = toggle;
        }
        ToggleButton[] lookToggles = new ToggleButton[Look.values().length];
        for (Look look : Look.values()) {
            ToggleButton toggle =
                    new ToggleButton(Words.of("proposal.look." + look.name().toLowerCase(java.util.Locale.ROOT)));
            toggle.setId("proposal-look-" + look.name().toLowerCase(java.util.Locale.ROOT));
            toggle.setOnAction(e -> lookAt(look));
            lookToggles[look.ordinal()] = toggle;
        }
        lookToggles[0].setSelected(true);
        looks.addAll(List.of(lookToggles));
        return flow(Parts.choice(new ToggleGroup(), toggles), Parts.choice(new ToggleGroup(), lookToggles), byRule);
    }

    private static FlowPane flow(Node... nodes) {
        FlowPane pane = new FlowPane(12, 8, nodes);
        pane.setAlignment(Pos.CENTER_LEFT);
        return pane;
    }

    private HBox ranges() {
        ToggleButton[] toggles = new ToggleButton[ProposalMap.RANGES.size() + 1];
        for (int i = 0; i < toggles.length; i++) {
            int range = i == 0 ? 0 : ProposalMap.RANGES.get(i - 1);
            toggles[i] = new ToggleButton(range == 0 ? Words.of("proposal.range.auto") : "±" + range);
            toggles[i].setAccessibleText(
                    range == 0 ? Words.of("proposal.range.auto.words") : Words.of("proposal.range.words", range));
            toggles[i].setSelected(range == model.rangeProperty().get());
            toggles[i].setOnAction(e -> model.rangeProperty().set(range));
        }
        Label words = Parts.label(Words.of("proposal.range"), "muted");
        words.setMinWidth(Label.USE_PREF_SIZE);
        HBox row = Parts.row(8, words, Parts.choice(new ToggleGroup(), toggles));
        row.setId("proposal-range");
        // The other maps and the curves span what they hold.
        row.disableProperty()
                .bind(model.shownProperty()
                        .isNotEqualTo(ProposalMap.Shown.CHANGE)
                        .or(grid.visibleProperty().not()));
        return row;
    }

    private void lookAt(Look look) {
        this.look = look;
        looks.get(look.ordinal()).setSelected(true);
        grid.setVisible(look == Look.MAP);
        slice.setVisible(look != Look.MAP);
        drawSlice();
        first().requestFocus();
    }

    private void drawSlice() {
        if (look != Look.MAP) {
            model.slice(
                    look == Look.SPEED,
                    now -> slice.show(
                            now,
                            model.session().cellProperty().get(),
                            model.session().themeProperty().get()));
        }
    }

    /** The arrow keys go through the map's cells also while their row or column is shown as curves. */
    private void sliceKey(KeyEvent event) {
        if (event.getCode().isArrowKey() && !event.isShiftDown()) {
            grid.fireEvent(event.copyFor(grid, grid));
            event.consume();
        }
    }

    private void selectAll(KeyEvent event) {
        if (event.isShortcutDown() && event.getCode() == KeyCode.A) {
            grid.selectAll();
            event.consume();
        }
    }

    /** A figure typed on the map is that of the selected cells. */
    private void type(ExplanationPane pane, KeyEvent event) {
        boolean figure = event.getCharacter().length() == 1
                && "0123456789.,+-−".contains(event.getCharacter())
                && !event.isShortcutDown()
                && !event.isAltDown();
        if (figure && !model.session().selection().cells().isEmpty()) {
            pane.type(event.getCharacter());
            event.consume();
        }
    }

    private void chooseByRule() {
        RulePane pane = new RulePane(model, this::closeRule);
        pane.addEventHandler(KeyEvent.KEY_PRESSED, e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                closeRule();
                e.consume();
            }
        });
        StackPane.setAlignment(pane, Pos.TOP_RIGHT);
        StackPane.setMargin(pane, new Insets(104, 16, 16, 16));
        closeRule();
        root.getChildren().add(pane);
        pane.first().requestFocus();
    }

    private void closeRule() {
        if (root.getChildren().removeIf(RulePane.class::isInstance)) {
            first().requestFocus();
        }
    }

    private TextField field(String key) {
        TextField field = new TextField();
        field.setPrefColumnCount(4);
        field.getStyleClass().add("compact");
        field.setAccessibleText(Words.of(key));
        field.setOnAction(e -> commitRules());
        field.focusedProperty().addListener((p, old, now) -> {
            if (!now) {
                commitRules();
            }
        });
        return field;
    }

    private FlowPane rules() {
        return flow(
                labelled("proposal.add", add, Parts.label("%", "muted")),
                labelled("proposal.cut", cut, Parts.label("%", "muted")),
                labelled("proposal.step", step, stepUnit),
                ranges());
    }

    private static HBox labelled(String key, Node... nodes) {
        Label words = Parts.label(Words.of(key), "muted");
        words.setMinWidth(Label.USE_PREF_SIZE);
        HBox row = Parts.row(8, words);
        row.getChildren().addAll(nodes);
        return row;
    }

    private void fillRules() {
        ProposalSettings s = model.settings();
        mark(add, "");
        mark(cut, "");
        mark(step, "");
        problem.setText("");
        add.setText(Figures.shortest(s.maxAddPercent()));
        cut.setText(Figures.shortest(s.maxCutPercent()));
        step.setText(stepText());
        step.setPromptText(model.ownStep().map(Figures::shortest).orElseGet(() -> Words.of("proposal.step.none")));
        String unit =
                model.session().job().fuelTable().map(t -> t.quantity().unit()).orElse("1");
        boolean own = s.step() == 0 && model.ownStep().isPresent();
        stepUnit.setText((unit.equals("1") ? "" : unit) + (own ? Words.of("proposal.step.own") : ""));
    }

    /** Takes what is typed; what can't be is said and stays to be mended. */
    private void commitRules() {
        Cap most = Cap.most(add.getText());
        Cap least = Cap.least(cut.getText());
        Cap by = Cap.step(step.getText());
        if (Stream.of(most, least, by).allMatch(c -> c.value().isPresent())) {
            model.rules(
                    most.value().getAsDouble(),
                    least.value().getAsDouble(),
                    by.value().getAsDouble());
            fillRules();
        } else {
            mark(add, most.problem());
            mark(cut, least.problem());
            mark(step, by.problem());
            problem.setText(Stream.of(most, least, by)
                    .map(Cap::problem)
                    .filter(p -> !p.isEmpty())
                    .collect(Collectors.joining(" ")));
        }
    }

    private static void mark(TextField field, String problem) {
        field.getStyleClass().remove("bad-field");
        if (!problem.isEmpty()) {
            field.getStyleClass().add("bad-field");
        }
    }

    /** What the user decided is told only where something was. */
    private void decided() {
        Set<Decision.Kind> kinds = model.settings().decisions().values().stream()
                .map(Decision::kind)
                .collect(Collectors.toSet());
        Parts.show(held, kinds.contains(Decision.Kind.HELD));
        Parts.show(set, kinds.contains(Decision.Kind.SET));
        HeatMap map = model.mapProperty().get();
        Parts.show(far, map != null && map.cells().stream().anyMatch(c -> c.mark() == HeatCell.Mark.FAR));
    }

    private FlowPane legend() {
        FlowPane row = new FlowPane(
                16,
                4,
                bar,
                sign("1.2", "legend.measured", "strong"),
                sign("1.2", "legend.thin"),
                sign("▨", "legend.inferred"),
                sign("?", "legend.unknown", "strong"),
                sign("◢", "legend.stop", "legend-stop"),
                sign("━", "legend.highload"),
                held,
                set,
                far);
        row.setRowValignment(VPos.CENTER);
        row.setMinHeight(Region.USE_PREF_SIZE);
        return row;
    }

    private static HBox sign(String sign, String key, String... styles) {
        Label mark = Parts.label(sign, styles);
        Label words = Parts.label(Words.of(key), "muted", "small");
        words.setMinWidth(Region.USE_PREF_SIZE);
        return Parts.row(4, mark, words);
    }

    private void key() {
        Theme theme = model.session().themeProperty().get();
        int range = model.shownRange();
        if (model.shownProperty().get() == ProposalMap.Shown.CHANGE) {
            bar.show(
                    theme,
                    t -> theme.palette().diverging().at(2 * t - 1),
                    List.of(
                            "−" + range + " %",
                            Words.of("legend.less"),
                            "0",
                            Words.of("legend.more"),
                            "+" + range + " %"));
        } else if (model.session().analysis() != null && model.shownProperty().get() == ProposalMap.Shown.DIFFERENCE) {
            double most = ProposalMap.span(model.session().analysis(), ProposalMap.Shown.DIFFERENCE)[1];
            bar.show(
                    theme,
                    t -> theme.palette().diverging().at(2 * t - 1),
                    List.of(
                            Figures.signed(-most, 1),
                            Words.of("legend.less"),
                            "0",
                            Words.of("legend.more"),
                            Figures.signed(most, 1)));
        } else if (model.session().analysis() != null) {
            double[] span = ProposalMap.span(
                    model.session().analysis(), model.shownProperty().get());
            bar.show(
                    theme,
                    t -> theme.palette().sequential().at(t),
                    List.of(
                            Figures.plain(span[0], 1),
                            Figures.plain((span[0] + span[1]) / 2, 1),
                            Figures.plain(span[1], 1)));
        }
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
        return look == Look.MAP ? grid : slice;
    }
}
