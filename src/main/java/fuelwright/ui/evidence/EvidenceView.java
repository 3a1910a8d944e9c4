package fuelwright.ui.evidence;

import fuelwright.handover.CellLook;
import fuelwright.handover.RoundEnds;
import fuelwright.ui.plot.GridScroll;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.Legend;
import fuelwright.ui.plot.ScaleBar;
import fuelwright.ui.session.Missing;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Evidence. */
public final class EvidenceView implements StagePane {

    private final EvidenceModel model;
    private final HeatGrid grid = new HeatGrid();
    private final ScaleBar bar = new ScaleBar(260);
    private final Label below = new Label();
    private final Label hidden = Parts.label(Words.of("legend.hidden"), "muted", "small");
    private final StackPane root = new StackPane();
    private final VBox aboutCell = new VBox(12);
    private final VBox aboutAll = new VBox(12);
    private final ReadingsPane readings;
    private final DelayPane delay;
    private final Node explanation;

    public EvidenceView(EvidenceModel model) {
        this.model = model;
        readings = new ReadingsPane(model);
        delay = new DelayPane(model.session());
        grid.mapProperty().bind(model.mapProperty());
        grid.themeProperty().bind(model.session().themeProperty());
        grid.selectedProperty().bindBidirectional(model.session().cellProperty());
        grid.dimmedProperty().bind(model.session().staleProperty());
        GridScroll map = new GridScroll(grid, model.session().textSizeProperty());
        VBox.setVgrow(map, Priority.ALWAYS);
        FlowPane legend = Legend.of(bar);
        legend.getChildren().addAll(Legend.standings());
        legend.getChildren().add(hidden);
        hidden.managedProperty().bind(hidden.visibleProperty());
        hidden.visibleProperty().bind(grid.belowHiddenProperty());
        VBox content =
                new VBox(12, Parts.heading(new Label(Words.of("evidence.title")), below), toolbar(), map, legend);
        Node work = Parts.work(content);
        work.visibleProperty().bind(model.mapProperty().isNotNull());
        Node empty = Missing.instead(
                model.session(), "evidence.empty", model.mapProperty().isNotNull());
        root.getChildren().addAll(work, empty);
        root.getStyleClass().add("work");
        VBox facts = new VBox(12, aboutCell, aboutAll);
        facts.getStyleClass().add("explanation-inner");
        explanation = Missing.beside(
                Parts.scroll(facts), "evidence.empty", model.mapProperty().isNotNull());
        model.mapProperty().addListener((p, old, now) -> refresh());
        model.cellProperty().addListener((p, old, now) -> explainCell());
        model.session().whenShownOtherwise(this::refresh);
        model.nearProperty().addListener((p, old, now) -> explainCell());
        model.session().textSizeProperty().addListener((p, old, now) -> refresh());
        refresh();
    }

    private HBox toolbar() {
        ToggleButton[] toggles = new ToggleButton[EvidenceMap.Shown.values().length];
        for (EvidenceMap.Shown what : EvidenceMap.Shown.values()) {
            ToggleButton toggle =
                    new ToggleButton(Words.of("evidence.shown." + what.name().toLowerCase(Locale.ROOT)));
            toggle.setSelected(what == model.shownProperty().get());
            toggle.setOnAction(e -> model.shownProperty().set(what));
            toggles[what.ordinal()] = toggle;
        }
        return Parts.choice(new ToggleGroup(), toggles);
    }

    private void refresh() {
        EvidenceMap.Shown shown = model.shownProperty().get();
        below.setText(Words.of("evidence.below." + shown.name().toLowerCase(Locale.ROOT)));
        Theme theme = model.session().themeProperty().get();
        if (shown == EvidenceMap.Shown.SHORTFALL || shown == EvidenceMap.Shown.MEAN) {
            bar.directions(theme, model.range(), Words.of("legend.rich"), Words.of("legend.lean"));
        } else if (shown == EvidenceMap.Shown.READINGS) {
            // Its colours go by the root.
            bar.show(
                    theme,
                    t -> theme.palette().sequential().at(t),
                    List.of(
                            "0",
                            CellLook.readings(model.most() / 4),
                            Words.of("legend.readings", CellLook.readings(model.most()))));
        } else if (shown == EvidenceMap.Shown.UNSEEN) {
            bar.amounts(theme, RoundEnds.of(0, model.most()), "%");
        } else {
            bar.uncertainties(theme, RoundEnds.of(0, model.most()));
        }
        explainCell();
        explainAll();
    }

    private void explainCell() {
        aboutCell.getChildren().clear();
        EvidenceModel.CellFacts cell = model.cellProperty().get();
        if (cell != null) {
            Label big = Parts.label(cell.shortfall(), "big-figure");
            HBox figure = new HBox(8, big, Parts.label("%\u00a0" + cell.uncertainty(), "unit-word"));
            figure.setAlignment(javafx.geometry.Pos.BASELINE_LEFT);
            VBox lines = new VBox(Parts.label(Words.of("evidence.made"), "section"));
            cell.lines().forEach(f -> lines.getChildren().add(Parts.fact(f.words(), f.figure())));
            aboutCell
                    .getChildren()
                    .addAll(
                            new VBox(
                                    4,
                                    Parts.text(cell.place(), "section"),
                                    Parts.text(cell.standing(), "muted"),
                                    figure,
                                    Parts.text(Words.of("evidence.shortfall.words"), "muted")),
                            lines);
            if (model.nearProperty().get() != null) {
                aboutCell.getChildren().add(readings.of(model.nearProperty().get()));
            }
        } else {
            aboutCell.getChildren().add(Parts.text(Words.of("evidence.none"), "muted"));
        }
    }

    private void explainAll() {
        aboutAll.getChildren().clear();
        if (model.session().analysis() == null) {
            return;
        }
        VBox all = new VBox(8, Parts.label(Words.of("evidence.all"), "section"));
        model.sentences().forEach(s -> all.getChildren().add(Parts.text(s, "muted")));
        VBox counts = new VBox(Parts.label(Words.of("evidence.kept"), "section"));
        model.counts().forEach(f -> counts.getChildren().add(Parts.fact(f.words(), f.figure())));
        aboutAll.getChildren().addAll(all, delay, tipIn(), counts);
    }

    private VBox tipIn() {
        VBox part = new VBox(4, Parts.label(Words.of("evidence.tipin"), "section"));
        List<List<String>> rows = model.tipIn();
        if (!rows.isEmpty()) {
            part.getChildren().add(Parts.columns(0, model.tipInHeadings(), rows));
        }
        part.getChildren().add(Parts.text(model.tipInWords(), "muted", "small"));
        return part;
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
