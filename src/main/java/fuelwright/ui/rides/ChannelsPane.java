package fuelwright.ui.rides;

import fuelwright.issue.Issue;
import fuelwright.ride.Ride;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.scene.Node;
import javafx.scene.layout.VBox;

/** What was read: each column, what it was taken for and how sure that is, and what was decided on the way. */
final class ChannelsPane {

    private final RidesModel model;
    private final VBox box = new VBox(12);
    private final Node pane = Parts.scroll(box);
    private Ride shown;

    ChannelsPane(RidesModel model) {
        this.model = model;
        box.getStyleClass().add("explanation-inner");
        model.traceProperty().addListener((p, old, now) -> fill());
        fill();
    }

    Node node() {
        return pane;
    }

    private void fill() {
        Ride ride = model.ride().orElse(null);
        if (ride == shown && ride != null) {
            return;
        }
        shown = ride;
        box.getChildren().clear();
        if (ride == null) {
            box.getChildren()
                    .addAll(
                            Parts.label(Words.of("rides.explain.title"), "section"),
                            Parts.text(Words.of("rides.explain"), "muted"));
            return;
        }
        if (model.asksForRatio()) {
            box.getChildren().add(ReadingPane.displayRatio(model));
        }
        VBox list = new VBox(
                Parts.label(Words.of("rides.channels"), "section"),
                Parts.text(Words.of("rides.channels.change"), "muted", "small"));
        ride.channels().forEach(c -> list.getChildren().add(ReadingPane.channel(model, c)));
        box.getChildren().add(list);
        if (!ride.remarks().isEmpty()) {
            VBox remarks = new VBox(8, Parts.label(Words.of("rides.remarks"), "section"));
            ride.remarks().forEach(r -> remarks.getChildren().add(remark(r)));
            box.getChildren().add(remarks);
        }
    }

    private static Node remark(Issue issue) {
        if (issue.severity() == Issue.Severity.NOTE) {
            return Parts.text(issue.what(), "muted", "small");
        }
        return Parts.callout("check", issue.what(), issue.todo());
    }
}
