package fuelwright.ui.rides;

import fuelwright.issue.Issue;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.animation.AnimationTimer;
import javafx.scene.Node;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/**
 * What was read, what is doubtful first: questions and warnings, then each column with what it was taken for, how the file is written, lines
 * that are no rows, the second logger, and what else was decided.
 */
final class ChannelsPane {

    private final RidesModel model;
    private final StackPane pane = new StackPane();
    private ScrollPane scroll = Parts.scroll(new VBox());
    private VBox box;
    private int shown = -1;
    /** What still has to be made, in order. */
    private final Deque<Runnable> waiting = new ArrayDeque<>();

    private final Parting parting = new Parting();

    ChannelsPane(RidesModel model) {
        this.model = model;
        model.pictureProperty().addListener((p, old, now) -> fill(now));
        model.session()
                .themeProperty()
                .addListener((p, old, now) -> fill(model.pictureProperty().get()));
        pane.sceneProperty().addListener((p, old, now) -> more());
        fill(model.pictureProperty().get());
    }

    Node node() {
        return pane;
    }

    /** The scrolled pane itself is a new one each time: with new content in the old one, JavaFX may go on showing what was in it. */
    private void fill(RidePicture picture) {
        box = new VBox(16);
        box.getStyleClass().add("explanation-inner");
        waiting.clear();
        write(picture);
        boolean same = shown == model.index();
        double at = same ? scroll.getVvalue() : 0;
        shown = model.index();
        if (same && pane.getScene() != null) {
            // Where the user is reading nothing must move.
            waiting.forEach(Runnable::run);
            waiting.clear();
        }
        scroll = Parts.scroll(box);
        scroll.setId("rides-channels");
        scroll.setVvalue(at);
        pane.getChildren().setAll(scroll);
        more();
    }

    /**
     * Makes a part in each frame: made at once, and styled in one frame, they would hold up the change of stage. While the stage isn't shown
     * they wait.
     */
    private final class Parting extends AnimationTimer {
        private boolean first = true;

        @Override
        public void start() {
            first = true;
            super.start();
        }

        @Override
        public void handle(long now) {
            if (pane.getScene() == null || waiting.isEmpty()) {
                stop();
            } else if (!first) {
                waiting.poll().run();
            }
            first = false;
        }
    }

    private void more() {
        if (pane.getScene() != null && !waiting.isEmpty()) {
            parting.start();
        }
    }

    private void write(RidePicture picture) {
        if (picture == null) {
            box.getChildren()
                    .addAll(
                            Parts.label(Words.of("rides.explain.title"), "section"),
                            Parts.text(Words.of("rides.explain"), "muted"));
            return;
        }
        Ride ride = picture.ride();
        List<DisplayRatio> ratios = Stream.of(model.ratio(), model.secondRatio())
                .filter(DisplayRatio::asked)
                .toList();
        ratios.forEach(r -> box.getChildren().add(ReadingPane.displayRatio(r)));
        if (model.asksForScale()) {
            box.getChildren().add(VoltsPane.of(model));
        }
        if (!model.sensorsToChooseFrom().isEmpty()) {
            box.getChildren().add(ReadingPane.cylinder(model));
        }
        List<Issue> doubts = ride.remarks().stream()
                .filter(r -> r.severity() != Issue.Severity.NOTE)
                // What the display is set to, and what volts mean, is asked above, with fields to answer in.
                .filter(r -> !(!ratios.isEmpty() && r.todo().contains("--afr-scale")))
                .filter(r -> !r.todo().contains(RidesModel.SCALE_OPTION))
                .toList();
        if (!doubts.isEmpty()) {
            VBox list = new VBox(8, Parts.label(Words.of("rides.doubts", doubts.size()), "section"));
            doubts.forEach(d -> list.getChildren().add(Parts.callout("check", d.what(), d.todo())));
            box.getChildren().add(list);
        }
        VBox channels = new VBox(
                Parts.label(Words.of("rides.channels"), "section"),
                Parts.text(Words.of("rides.channels.change"), "muted", "small"));
        box.getChildren().add(channels);
        for (Channel channel : model.channelsByDoubt(ride)) {
            int at = ride.channels().indexOf(channel);
            Optional<RidePicture.Spark> spark =
                    at < picture.sparks().size() ? Optional.of(picture.sparks().get(at)) : Optional.empty();
            waiting.add(() -> channels.getChildren().add(ReadingPane.channel(model, channel, spark)));
        }
        ride.form()
                .ifPresent(form -> waiting.add(() -> {
                    box.getChildren().add(FilePane.of(model, ride, form));
                    if (!form.leftOut().isEmpty()) {
                        box.getChildren().add(FilePane.leftOut(form));
                    }
                }));
        waiting.add(() -> {
            box.getChildren().add(SecondPane.of(model));
            notes(ride);
        });
    }

    private void notes(Ride ride) {
        List<Issue> notes = ride.remarks().stream()
                .filter(r -> r.severity() == Issue.Severity.NOTE)
                .toList();
        if (!notes.isEmpty()) {
            VBox list = new VBox(4, Parts.label(Words.of("rides.remarks"), "section"));
            notes.forEach(n -> list.getChildren().add(Parts.text(n.what(), "muted", "small")));
            box.getChildren().add(list);
        }
    }
}
