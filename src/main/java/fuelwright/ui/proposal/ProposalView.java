package fuelwright.ui.proposal;

import fuelwright.estimate.ProposalSettings;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.ScaleBar;
import fuelwright.ui.session.Missing;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.beans.value.ObservableValue;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Proposal. */
public final class ProposalView implements StagePane {

    private final ProposalModel model;
    private final HeatGrid grid = new HeatGrid();
    private final ScaleBar bar = new ScaleBar(260);
    private final TextField add = field("proposal.add");
    private final TextField cut = field("proposal.cut");
    private final TextField step = field("proposal.step");
    private final Label stepUnit = Parts.label("", "muted");
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
        VBox.setVgrow(grid, Priority.ALWAYS);
        Label summary = new Label();
        summary.textProperty().bind(model.summaryProperty());
        VBox content = new VBox(
                12, Parts.heading(new Label(Words.of("proposal.title")), summary), toolbar(), rules(), grid, legend());
        content.visibleProperty().bind(model.mapProperty().isNotNull());
        Node empty = Parts.empty(
                Missing.title(model.session(), "proposal.empty"),
                Missing.what(model.session(), "proposal.empty"),
                model.session().workingProperty(),
                model.session().doingProperty(),
                Parts.button("next.go", () -> Missing.go(model.session()), "primary"));
        empty.visibleProperty().bind(model.mapProperty().isNull());
        root.getChildren().addAll(content, empty);
        root.getStyleClass().add("work");
        explanation = new ExplanationPane(model).node();
        ObservableValue<?>[] watched = {
            model.mapProperty(), model.session().themeProperty(), model.shownProperty(), model.rangeProperty()
        };
        for (ObservableValue<?> value : watched) {
            value.addListener((p, old, now) -> key());
        }
        model.session().jobProperty().addListener((p, old, now) -> fillRules());
        fillRules();
        key();
    }

    private HBox toolbar() {
        ToggleGroup shown = new ToggleGroup();
        ToggleButton[] toggles = new ToggleButton[ProposalMap.Shown.values().length];
        for (ProposalMap.Shown what : ProposalMap.Shown.values()) {
            ToggleButton toggle =
                    new ToggleButton(Words.of("proposal.shown." + what.name().toLowerCase(java.util.Locale.ROOT)));
            toggle.setSelected(what == model.shownProperty().get());
            toggle.setOnAction(e -> model.shownProperty().set(what));
            toggles[what.ordinal()] = toggle;
        }
        ToggleGroup ranges = new ToggleGroup();
        ToggleButton[] rangeToggles = new ToggleButton[ProposalMap.RANGES.size() + 1];
        for (int i = 0; i < rangeToggles.length; i++) {
            int range = i == 0 ? 0 : ProposalMap.RANGES.get(i - 1);
            rangeToggles[i] = new ToggleButton(range == 0 ? Words.of("proposal.range.auto") : "±" + range);
            rangeToggles[i].setAccessibleText(
                    range == 0 ? Words.of("proposal.range.auto.words") : Words.of("proposal.range.words", range));
            rangeToggles[i].setSelected(range == model.rangeProperty().get());
            rangeToggles[i].setOnAction(e -> model.rangeProperty().set(range));
        }
        return Parts.row(
                8,
                Parts.choice(shown, toggles),
                Parts.gap(),
                Parts.label(Words.of("proposal.range"), "muted"),
                Parts.choice(ranges, rangeToggles));
    }

    private TextField field(String key) {
        TextField field = new TextField();
        field.setPrefColumnCount(4);
        field.setMaxWidth(64);
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

    private HBox rules() {
        return Parts.row(
                8,
                Parts.label(Words.of("proposal.add"), "muted"),
                add,
                Parts.label("%   ", "muted"),
                Parts.label(Words.of("proposal.cut"), "muted"),
                cut,
                Parts.label("%   ", "muted"),
                Parts.label(Words.of("proposal.step"), "muted"),
                step,
                stepUnit);
    }

    private void fillRules() {
        ProposalSettings s = model.settings();
        add.setText(Figures.shortest(s.maxAddPercent()));
        cut.setText(Figures.shortest(s.maxCutPercent()));
        step.setText(s.step() > 0 ? Figures.shortest(s.step()) : "");
        step.setPromptText(Words.of("proposal.step.none"));
        String unit =
                model.session().job().fuelTable().map(t -> t.quantity().unit()).orElse("1");
        stepUnit.setText(unit.equals("1") ? "" : unit);
    }

    private void commitRules() {
        try {
            model.rules(number(add), number(cut), number(step));
        } catch (NumberFormatException e) {
            // what isn't a number is put back below
        }
        fillRules();
    }

    private static double number(TextField field) {
        String text = field.getText().strip();
        return text.isEmpty() ? 0 : Double.parseDouble(text.replace(',', '.'));
    }

    private HBox legend() {
        HBox row = Parts.row(
                16,
                bar,
                sign("☰", "legend.inferred"),
                sign("◥", "legend.stop", "legend-stop"),
                sign("━", "legend.highload"),
                sign("■", "legend.held"));
        row.setMinHeight(34);
        return row;
    }

    private static HBox sign(String sign, String key, String... styles) {
        Label mark = Parts.label(sign.equals("☰") ? "▨" : sign, styles);
        Label words = Parts.label(Words.of(key), "muted", "small");
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
        return grid;
    }
}
