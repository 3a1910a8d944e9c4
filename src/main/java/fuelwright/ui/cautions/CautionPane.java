package fuelwright.ui.cautions;

import fuelwright.safety.Caution;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.scene.Node;
import javafx.scene.control.Hyperlink;
import javafx.scene.layout.VBox;

/** The selected caution: what was found, what to do, where and when. */
final class CautionPane {

    private static final int MOST_MOMENTS = 6;

    private final CautionsModel model;
    private final VBox box = new VBox(12);
    private final Node pane = Parts.scroll(box);

    CautionPane(CautionsModel model) {
        this.model = model;
        box.getStyleClass().add("explanation-inner");
        model.selectedProperty().addListener((p, old, now) -> fill());
        fill();
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
                .addAll(
                        new VBox(8, CautionsView.level(caution), Parts.text(Parts.capital(caution.title()), "section")),
                        Parts.text(Parts.sentence(caution.what())),
                        new VBox(
                                4,
                                Parts.label(Words.of("cautions.todo"), "section"),
                                Parts.text(Parts.sentence(caution.todo()))));
        if (!caution.cells().isEmpty()) {
            box.getChildren()
                    .add(new VBox(
                            8,
                            Parts.label(Words.of("cautions.where"), "section"),
                            Parts.text(model.cells(caution), "muted"),
                            Parts.button("cautions.showcell", model::showCell)));
        }
        if (!caution.moments().isEmpty()) {
            VBox when = new VBox(4, Parts.label(Words.of("cautions.when"), "section"));
            caution.moments().stream()
                    .limit(MOST_MOMENTS)
                    .forEach(m -> when.getChildren().add(moment(m)));
            int more = caution.moments().size() - MOST_MOMENTS;
            if (more > 0) {
                when.getChildren().add(Parts.text(Words.of("issues.more", more), "muted"));
            }
            box.getChildren().add(when);
        }
        box.getChildren().add(Parts.text(Words.of("cautions.levels"), "muted", "small"));
    }

    private Node moment(Caution.Moment moment) {
        Hyperlink link = new Hyperlink(
                model.words(moment) + model.worst(moment).map(w -> ", " + w).orElse(""));
        link.setWrapText(true);
        link.setAccessibleText(Words.of("cautions.showmoment", link.getText()));
        link.setOnAction(e -> model.showMoment(moment));
        return link;
    }
}
