package fuelwright.ui.shell;

import fuelwright.issue.Issue;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
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
        refresh();
    }

    private void refresh() {
        getChildren().clear();
        Parts.show(this, !session.issues().isEmpty());
        if (session.issues().isEmpty()) {
            return;
        }
        List<Issue> refused = issues(true);
        List<Issue> remarks = issues(false);
        VBox boxes = new VBox(4);
        int left = all ? Integer.MAX_VALUE : MOST;
        left = box(boxes, "stop", "issues.error", refused, left);
        box(boxes, "check", "issues.warning", remarks, left);
        int more = session.issues().size() - MOST;
        if (more > 0 && !all) {
            Button open = Parts.button("issues.more", this::showAll, "compact");
            open.setText(Words.of("issues.more", more));
            open.setAccessibleText(open.getText());
            open.setId("issues-more");
            boxes.getChildren().add(open);
        }
        Node shown = boxes;
        if (all) {
            ScrollPane scroll = new ScrollPane(boxes);
            scroll.setFitToWidth(true);
            scroll.setMaxHeight(MOST_HEIGHT);
            shown = scroll;
        }
        Button dismiss = Parts.button("issues.dismiss", () -> session.issues().clear(), "compact");
        HBox.setHgrow(shown, Priority.ALWAYS);
        HBox row = new HBox(8, shown, dismiss);
        row.setAlignment(javafx.geometry.Pos.TOP_LEFT);
        row.setStyle("-fx-padding: 12 16 0 16;");
        getChildren().add(row);
    }

    private void showAll() {
        all = true;
        refresh();
    }

    private List<Issue> issues(boolean refused) {
        return session.issues().stream()
                .filter(i -> (i.severity() == Issue.Severity.ERROR) == refused)
                .toList();
    }

    /** What can't be used and what is only remarked stand apart. */
    private static int box(VBox boxes, String kind, String heading, List<Issue> issues, int most) {
        if (issues.isEmpty() || most == 0) {
            return most;
        }
        VBox box = Parts.callout(kind, Words.of(heading));
        issues.stream().limit(most).forEach(i -> box.getChildren().add(Parts.text(i.sentence())));
        boxes.getChildren().add(box);
        return most - Math.min(most, issues.size());
    }
}
