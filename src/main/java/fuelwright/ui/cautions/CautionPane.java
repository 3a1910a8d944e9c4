package fuelwright.ui.cautions;

import fuelwright.safety.Caution;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** Where and when of the selected caution: its cells on a map, its moments as links that show them in the trace. */
final class CautionPane {

    private static final int MOST_MOMENTS = 6;
    private static final double MAP_HEIGHT = 250;

    private final CautionsModel model;
    private final HeatGrid grid = new HeatGrid();
    private final Label place = Parts.text("", "strong");
    private final VBox box = new VBox(12);
    private final Node answer;
    private final Node pane = Parts.scroll(box);

    CautionPane(CautionsModel model) {
        this.model = model;
        box.getStyleClass().add("explanation-inner");
        grid.mapProperty().bind(model.mapProperty());
        grid.themeProperty().bind(model.session().themeProperty());
        grid.selectedProperty().bindBidirectional(model.session().cellProperty());
        grid.dimmedProperty().bind(model.session().staleProperty());
        grid.setMinSize(280, MAP_HEIGHT);
        grid.setPrefSize(280, MAP_HEIGHT);
        grid.setMaxHeight(MAP_HEIGHT);
        grid.setId("caution-map");
        answer = new AnswerPane(model).node();
        model.selectedProperty().addListener((p, old, now) -> fill());
        model.session().whenShownOtherwise(this::fill);
        model.session().cellProperty().addListener((p, old, now) -> show(model.selectedCell()));
        fill();
    }

    private void show(String cell) {
        place.setText(cell);
        Parts.show(place, !cell.isEmpty());
    }

    Node node() {
        return pane;
    }

    private void fill() {
        box.getChildren().clear();
        Caution caution = model.selectedProperty().get();
        if (caution == null) {
            box.getChildren().add(Parts.text(Words.of("cautions.levels"), "muted"));
            return;
        }
        box.getChildren()
                .add(new VBox(8, CautionsView.level(caution), Parts.text(Parts.capital(caution.name()), "section")));
        box.getChildren().add(answer);
        if (caution.cells().isEmpty()) {
            box.getChildren().add(Parts.text(Words.of("cautions.nocell"), "muted"));
        } else {
            show(model.selectedCell());
            box.getChildren()
                    .add(new VBox(
                            8,
                            Parts.label(
                                    Words.of("cautions.where", caution.cells().size()), "section"),
                            grid,
                            place,
                            Parts.button("cautions.showcell", model::showCell)));
        }
        if (!caution.moments().isEmpty()) {
            VBox when = new VBox(4, Parts.label(Words.of("cautions.when"), "section"));
            caution.moments().stream()
                    .limit(MOST_MOMENTS)
                    .forEach(m -> when.getChildren().add(moment(m)));
            int more = caution.moments().size() - MOST_MOMENTS;
            if (more > 0) {
                when.getChildren().add(Parts.text(Words.of("cautions.moremoments", more), "muted", "small"));
            }
            box.getChildren().add(when);
        }
        box.getChildren().add(Parts.text(Words.of("cautions.levels"), "muted", "small"));
    }

    private Node moment(Caution.Moment moment) {
        Hyperlink link = new Hyperlink(model.sentence(moment));
        link.setWrapText(true);
        link.setAccessibleText(Words.of("cautions.showmoment", link.getText()));
        link.setOnAction(e -> model.momentProperty().set(moment));
        return link;
    }
}
