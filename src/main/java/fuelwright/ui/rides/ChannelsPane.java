package fuelwright.ui.rides;

import fuelwright.issue.Issue;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
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
        VBox list = new VBox(Parts.label(Words.of("rides.channels"), "section"));
        ride.channels().forEach(c -> list.getChildren().add(channel(c)));
        box.getChildren().add(list);
        if (!ride.remarks().isEmpty()) {
            VBox remarks = new VBox(8, Parts.label(Words.of("rides.remarks"), "section"));
            ride.remarks().forEach(r -> remarks.getChildren().add(remark(r)));
            box.getChildren().add(remarks);
        }
    }

    private static Node channel(Channel channel) {
        boolean known = channel.role() != Role.OTHER;
        Label role = Parts.text(known ? capital(channel.role().words()) : "“" + channel.heading() + "”", "strong");
        String unit = channel.unit().symbol().equals("1") || channel.heading().contains("[")
                ? ""
                : " [" + channel.unit().symbol() + "]";
        Label heading = Parts.text(
                (known ? "“" + channel.heading() + "”" + unit : Words.of("rides.notknown"))
                        + (channel.remark().isEmpty() ? "" : " — " + channel.remark()),
                "muted",
                "small");
        VBox left = new VBox(1, role, heading);
        HBox.setHgrow(left, Priority.ALWAYS);
        Label sure = Parts.label(
                Words.of("rides.confidence." + channel.confidence().name().toLowerCase(Locale.ROOT)), "small");
        sure.getStyleClass().add(channel.confidence() == Channel.Confidence.LOOK ? "tag" : "muted");
        sure.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        HBox row = new HBox(8, left, sure);
        row.getStyleClass().add("fact");
        return row;
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static Node remark(Issue issue) {
        if (issue.severity() == Issue.Severity.NOTE) {
            return Parts.text(issue.what(), "muted", "small");
        }
        return Parts.callout("check", issue.what(), issue.todo());
    }
}
