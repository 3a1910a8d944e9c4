package fuelwright.ui.records;

import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.EnginesLike;
import javafx.scene.Node;
import javafx.scene.layout.VBox;

/** What parts like the open job's gave on engines like its own, by bands of load. */
final class LikePane extends VBox {

    private static final double MOST_WIDTH = 560;

    private final RecordsModel model;
    private final VBox content = new VBox(12);

    LikePane(RecordsModel model) {
        this.model = model;
        // Words and figures of a line must not stand far apart.
        content.setMaxWidth(MOST_WIDTH);
        Node scroll = Parts.scroll(content);
        VBox.setVgrow(scroll, javafx.scene.layout.Priority.ALWAYS);
        getChildren().add(scroll);
    }

    void show() {
        content.getChildren().clear();
        model.like()
                .ifPresentOrElse(
                        this::show,
                        () -> content.getChildren()
                                .add(Parts.callout(
                                        "note",
                                        Words.of("records.like.unknown"),
                                        Words.of("records.like.unknown.todo"))));
    }

    private void show(EnginesLike answer) {
        content.getChildren()
                .add(Parts.text(Words.of("records.like.asked", model.question().words()), "muted"));
        int jobs = answer.counted().size();
        if (jobs == 0) {
            content.getChildren().add(Parts.callout("note", Words.of("records.like.none")));
        } else {
            VBox bands = new VBox(Parts.label(Words.of("records.like.gave", jobs), "section"));
            answer.bands()
                    .forEach(b -> bands.getChildren().add(Parts.fact(b.band().words(), figure(b))));
            content.getChildren().add(bands);
            if (jobs < EnginesLike.FEW) {
                content.getChildren().add(Parts.text(Words.of("records.like.few", EnginesLike.FEW), "muted"));
            }
        }
        content.getChildren().add(Parts.text(Words.of("records.like.caveat"), "muted"));
        if (!answer.counted().isEmpty()) {
            VBox counted = new VBox(4, Parts.label(Words.of("records.like.counted"), "section"));
            answer.counted().forEach(j -> counted.getChildren().add(Parts.text(j.name() + ", " + j.place(), "small")));
            content.getChildren().add(counted);
        }
        if (!answer.left().isEmpty()) {
            VBox left = new VBox(4, Parts.label(Words.of("records.like.left"), "section"));
            answer.left()
                    .forEach(l -> left.getChildren()
                            .add(Parts.text(l.job().name() + ", " + l.job().place() + ": " + l.why(), "small")));
            content.getChildren().add(left);
        }
    }

    private static String figure(EnginesLike.Band band) {
        return band.jobs() == 1
                ? Words.of("records.like.band.one", Figures.signed(band.middlePercent(), 1))
                : Words.of(
                        "records.like.band",
                        Figures.signed(band.leastPercent(), 1),
                        Figures.signed(band.mostPercent(), 1),
                        Figures.signed(band.middlePercent(), 1),
                        band.jobs());
    }
}
