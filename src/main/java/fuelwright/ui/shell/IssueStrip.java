package fuelwright.ui.shell;

import fuelwright.issue.Issue;
import fuelwright.ui.session.RefusedLogs;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.session.Unsettled;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Optional;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** What went wrong or was doubtful, in words, with what to do; gone when it is dismissed or the next files come. */
final class IssueStrip extends VBox {

    private static final int MOST = 3;
    private static final double MOST_HEIGHT = 280;

    private final Session session;
    /** Whether everything is shown, however much it is. */
    private boolean all;

    IssueStrip(Session session) {
        super(4);
        this.session = session;
        session.issues().addListener((ListChangeListener<Issue>) c -> {
            all = false;
            refresh();
        });
        session.refused().all().addListener((ListChangeListener<RefusedLogs.Refused>) c -> refresh());
        session.refusalProperty().addListener((p, old, now) -> refresh());
        session.stageProperty().addListener((p, old, now) -> refresh());
        session.whenShownOtherwise(this::refresh);
        refresh();
    }

    private void refresh() {
        getChildren().clear();
        List<Issue> here = session.issues().stream().filter(this::isToldHere).toList();
        List<Issue> elsewhere = session.issues().stream()
                .filter(i -> placeOf(i).isPresent() && placeOf(i).get() != stage() && !pageTells(i))
                .toList();
        Parts.show(this, !here.isEmpty() || !elsewhere.isEmpty());
        if (!elsewhere.isEmpty()) {
            add(line(elsewhere));
        }
        if (!here.isEmpty()) {
            VBox story = story(here);
            if (all) {
                ScrollPane scroll = Parts.scroll(story);
                scroll.setMaxHeight(MOST_HEIGHT);
                add(scroll);
            } else {
                add(story);
            }
        }
    }

    private void add(Node box) {
        VBox place = new VBox(box);
        place.setStyle("-fx-padding: 12 16 0 16;");
        getChildren().add(place);
    }

    private Stage stage() {
        return session.stageProperty().get();
    }

    /** Where it is told and can be put right; empty where only this strip tells it. */
    private Optional<Stage> placeOf(Issue issue) {
        if (session.refused().all().stream().anyMatch(r -> r.name().equals(issue.file()))) {
            return Optional.of(Stage.RIDES);
        }
        return session.refusalProperty().get().contains(issue)
                ? Optional.of(Unsettled.placeOf(issue))
                : Optional.empty();
    }

    /** Whether the stage itself says it: a refused log on Rides, a refused analysis wherever its figures would stand. */
    private boolean pageTells(Issue issue) {
        boolean refusal = session.refusalProperty().get().contains(issue);
        return refusal
                ? stage().compareTo(Stage.EVIDENCE) >= 0
                : placeOf(issue).isPresent() && placeOf(issue).get() == stage();
    }

    private boolean isToldHere(Issue issue) {
        return (placeOf(issue).isEmpty() || placeOf(issue).get() == stage()) && !pageTells(issue);
    }

    /** One line for what is told on another stage, and the way there. */
    private VBox line(List<Issue> issues) {
        Stage place = placeOf(issues.get(0)).orElseThrow();
        long files = issues.stream().map(Issue::file).distinct().count();
        boolean refusal = session.refusalProperty().get().contains(issues.get(0));
        Label words = Parts.text(refusal ? Words.of("refused.title") : Words.of("issues.answer", files), "strong");
        Button show = Parts.button("issues.show", () -> session.stageProperty().set(place), "compact");
        show.setId("issues-show");
        VBox box = new VBox(Parts.row(12, words, show));
        box.getStyleClass().addAll("callout", "check");
        return box;
    }

    /** What can't be used and what is only remarked stand apart. */
    private VBox story(List<Issue> issues) {
        VBox boxes = new VBox(4);
        int left = all ? Integer.MAX_VALUE : MOST;
        List<Issue> refused = issues.stream().filter(IssueStrip::isError).toList();
        List<Issue> remarks = issues.stream().filter(i -> !isError(i)).toList();
        box(boxes, "file", "issues.error", refused, left);
        box(boxes, "check", "issues.warning", remarks, left - Math.min(left, refused.size()));
        if (issues.size() > left) {
            Button more = Parts.button("issues.more", this::showAll, "compact");
            more.setText(Words.of("issues.more", issues.size() - left));
            more.setAccessibleText(more.getText());
            more.setId("issues-more");
            boxes.getChildren().add(more);
        }
        return boxes;
    }

    private static boolean isError(Issue issue) {
        return issue.severity() == Issue.Severity.ERROR;
    }

    private void showAll() {
        all = true;
        refresh();
    }

    private void box(VBox boxes, String kind, String heading, List<Issue> issues, int most) {
        if (issues.isEmpty() || most == 0) {
            return;
        }
        VBox box = new VBox(4);
        box.getStyleClass().addAll("callout", kind);
        HBox top = Parts.row(8, Parts.text(Words.of(heading), "callout-heading"), Parts.gap());
        if (kind.equals("file")) {
            top.getChildren().add(0, Parts.fileMark());
        }
        if (boxes.getChildren().isEmpty()) {
            top.getChildren()
                    .add(Parts.button("issues.dismiss", () -> session.issues().clear(), "compact"));
        }
        box.getChildren().add(top);
        issues.stream()
                .limit(most)
                .forEach(i -> box.getChildren()
                        .add(Parts.text(
                                Words.onStage(stage().number(), stage().words(), i.sentence(session.shownIn())))));
        boxes.getChildren().add(box);
    }
}
