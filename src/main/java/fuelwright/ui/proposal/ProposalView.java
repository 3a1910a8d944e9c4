package fuelwright.ui.proposal;

import fuelwright.estimate.Decision;
import fuelwright.ui.plot.GridScroll;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.plot.Legend;
import fuelwright.ui.plot.ScaleBar;
import fuelwright.ui.plot.SlicePlot;
import fuelwright.ui.session.Missing;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import javafx.beans.value.ObservableValue;
import javafx.geometry.Bounds;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
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
import javafx.util.StringConverter;
import org.controlsfx.control.PopOver;

/** The stage Proposal. */
public final class ProposalView implements StagePane {

    /** The map, or the selected cell's row or column as curves. */
    private enum Look {
        MAP,
        SPEED,
        LOAD
    }

    private static final double RANGE_WIDTH = 78;

    /** No shadow and no round corners: where a display knows no transparency they would stand in white. */
    private static final String OVER = "-fx-fill: -fw-raised; -fx-stroke: -fw-line-strong; -fx-effect: null;";

    private static final double BELOW_BUTTON = 12;

    private final ProposalModel model;
    private Look look = Look.MAP;
    private final HeatGrid grid = new HeatGrid();
    private final ScaleBar bar = new ScaleBar(200);
    private final HBox held = Legend.sign("■", "legend.held");
    private final HBox set = Legend.sign("□", "legend.set");
    private final HBox lean = Legend.sign("■▾", "legend.leftlean", "strong");
    private final HBox far = Legend.sign("□!", "legend.far", "strong");
    private final Label hidden = Parts.label(Words.of("legend.hidden"), "muted", "small");
    private final ChoiceBox<Integer> ranges = new ChoiceBox<>();
    private final Button limits = Parts.button("proposal.limits", this::openLimits, "compact");
    private final Hyperlink rounded = new Hyperlink();
    private final Button byRule = Parts.button("proposal.byrule", this::chooseByRule, "compact");
    private final List<ToggleButton> looks = new ArrayList<>();
    private final SlicePlot slice;
    private final PopOver over = popOver();
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
        limits.setId("proposal-limits");
        rounded.setId("proposal-rounded");
        rounded.getStyleClass().add("small");
        rounded.setOnAction(e -> model.session().stageProperty().set(Stage.HANDOVER));
        FlowPane legend = legend();
        legend.visibleProperty().bind(grid.visibleProperty());
        GridScroll map = new GridScroll(grid, model.session().textSizeProperty());
        map.visibleProperty().bind(grid.visibleProperty());
        StackPane plots = new StackPane(map, slice);
        VBox.setVgrow(plots, Priority.ALWAYS);
        VBox content = new VBox(12, heading(), toolbar(), plots, legend);
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
        model.session().textSizeProperty().addListener((p, old, now) -> key());
        model.session().jobProperty().addListener((p, old, now) -> {
            limits();
            decided();
        });
        over.setOnHidden(e -> first().requestFocus());
        decided();
        limits();
        key();
    }

    /** The title, and what the proposal is made and chosen by. */
    private VBox heading() {
        Label title = new Label(Words.of("proposal.title"));
        Label summary = new Label();
        summary.textProperty().bind(model.summaryProperty());
        VBox heading = Parts.heading(title, summary);
        title.setMinWidth(Region.USE_PREF_SIZE);
        // Beside each other while there is room; with the largest text below.
        heading.getChildren().setAll(flow(title, byRule, limits), summary, rounded);
        return heading;
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
        return flow(Parts.choice(new ToggleGroup(), toggles), Parts.choice(new ToggleGroup(), lookToggles));
    }

    private static FlowPane flow(Node... nodes) {
        FlowPane pane = new FlowPane(12, 8, nodes);
        pane.setAlignment(Pos.CENTER_LEFT);
        return pane;
    }

    private ChoiceBox<Integer> ranges() {
        ranges.setId("proposal-range");
        ranges.getItems().add(0);
        ranges.getItems().addAll(ProposalMap.RANGES);
        ranges.setAccessibleText(Words.of("proposal.range"));
        ranges.setTooltip(new Tooltip(Words.of("proposal.range")));
        ranges.setConverter(new StringConverter<>() {
            @Override
            public String toString(Integer range) {
                return range == null || range == 0
                        ? Words.of("proposal.range.auto")
                        : Words.of("proposal.range.words", range);
            }

            @Override
            public Integer fromString(String text) {
                throw new UnsupportedOperationException("a choice box is not typed into");
            }
        });
        ranges.getStyleClass().add("compact");
        ranges.setMinWidth(0);
        ranges.setPrefWidth(RANGE_WIDTH);
        ranges.setValue(model.rangeProperty().get());
        ranges.setOnAction(e -> model.rangeProperty().set(ranges.getValue()));
        // The other maps and the curves span what they hold.
        ranges.disableProperty()
                .bind(model.shownProperty()
                        .isNotEqualTo(ProposalMap.Shown.CHANGE)
                        .or(grid.visibleProperty().not()));
        return ranges;
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
        RulePane pane = new RulePane(model, over::hide);
        open(byRule, pane, pane.first());
    }

    private void openLimits() {
        CapsPane pane = new CapsPane(model);
        open(limits, pane, pane.first());
    }

    /** Opens below its button; the button, Escape or a click beside it closes it. */
    private void open(Button button, Region pane, Node first) {
        boolean again = over.isShowing() && over.getOwnerNode() == button;
        over.hide();
        if (again) {
            return;
        }
        over.setContentNode(pane);
        Bounds at = button.localToScreen(button.getBoundsInLocal());
        over.show(button, at.getMinX(), at.getMaxY() + BELOW_BUTTON);
        first.requestFocus();
    }

    private static PopOver popOver() {
        PopOver over = new PopOver();
        over.setArrowLocation(PopOver.ArrowLocation.TOP_LEFT);
        over.setArrowSize(0);
        over.setArrowIndent(0);
        over.setCornerRadius(0);
        over.setDetachable(false);
        over.setAnimated(false);
        // Its own style sheet comes after the theme's.
        over.setOnShown(e -> over.getSkin().getNode().lookup(".border").setStyle(OVER));
        return over;
    }

    private void limits() {
        limits.setText(CapsPane.words(model.settings()));
        limits.setAccessibleText(Words.of("proposal.limits") + " " + limits.getText());
        rounded.setText(model.roundedWords());
        Parts.show(rounded, !rounded.getText().isEmpty());
    }

    /** What the user decided is told only where something was. */
    private void decided() {
        Set<Decision.Kind> kinds = model.settings().decisions().values().stream()
                .map(Decision::kind)
                .collect(Collectors.toSet());
        Parts.show(held, kinds.contains(Decision.Kind.HELD));
        Parts.show(set, kinds.contains(Decision.Kind.SET));
        HeatMap map = model.mapProperty().get();
        Parts.show(lean, map != null && map.cells().stream().anyMatch(HeatCell::isLeftLean));
        Parts.show(far, map != null && map.cells().stream().anyMatch(c -> c.mark() == HeatCell.Mark.FAR));
    }

    private FlowPane legend() {
        HBox unknown = Legend.sign("?", "legend.unknown", "strong");
        Tooltip.install(unknown, new Tooltip(Words.of("legend.unknown.words")));
        hidden.managedProperty().bind(hidden.visibleProperty());
        hidden.visibleProperty().bind(grid.belowHiddenProperty());
        return Legend.of(
                bar,
                ranges(),
                Legend.sign("1.2", "legend.measured", "strong"),
                Legend.sign("1.2", "legend.thin"),
                Legend.inferred(),
                unknown,
                Legend.sign("◢", "legend.stop", "legend-stop"),
                Legend.sign("━", "legend.highload"),
                held,
                set,
                lean,
                far,
                hidden);
    }

    private void key() {
        Theme theme = model.session().themeProperty().get();
        ProposalMap.Shown shown = model.shownProperty().get();
        Analysis analysis = model.session().analysis();
        if (shown == ProposalMap.Shown.CHANGE) {
            String range = Integer.toString(model.shownRange());
            bar.show(
                    theme,
                    t -> theme.palette().diverging().at(2 * t - 1),
                    List.of(Words.of("legend.less", range), "0", Words.of("legend.more", range)));
        } else if (analysis != null && shown == ProposalMap.Shown.DIFFERENCE) {
            List<String> ends = ProposalMap.ends(analysis, shown).labels(unit(analysis));
            bar.show(
                    theme,
                    t -> theme.palette().diverging().at(2 * t - 1),
                    List.of(ends.get(0), "0", "+" + ends.get(2)));
        } else if (analysis != null && shown == ProposalMap.Shown.UNCERTAINTY) {
            bar.uncertainties(theme, ProposalMap.ends(analysis, shown));
        } else if (analysis != null) {
            bar.amounts(theme, ProposalMap.ends(analysis, shown), unit(analysis));
        }
    }

    private static String unit(Analysis analysis) {
        return analysis.proposal().before().quantity().unit();
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
