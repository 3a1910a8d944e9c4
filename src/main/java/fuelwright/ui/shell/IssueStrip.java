package fuelwright.ui.shell;

import fuelwright.issue.Issue;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Button;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** What went wrong or was doubtful, in words, with what to do; gone when it is dismissed or the next files come. */
final class IssueStrip extends VBox {

    private static final int MOST = 3;

    private final Session session;

    IssueStrip(Session session) {
        super(4);
        this.session = session;
        session.issues().addListener((ListChangeListener<Issue>) c -> refresh());
        refresh();
    }

    private void refresh() {
        getChildren().clear();
        Parts.show(this, !session.issues().isEmpty());
        if (session.issues().isEmpty()) {
            return;
        }
        boolean refused = session.issues().stream().anyMatch(i -> i.severity() == Issue.Severity.ERROR);
        VBox box = Parts.callout(refused ? "stop" : "check", Words.of(refused ? "issues.error" : "issues.warning"));
        session.issues().stream().limit(MOST).forEach(i -> box.getChildren().add(Parts.text(i.sentence())));
        if (session.issues().size() > MOST) {
            box.getChildren()
                    .add(Parts.text(Words.of("issues.more", session.issues().size() - MOST), "muted"));
        }
        Button dismiss = Parts.button("issues.dismiss", () -> session.issues().clear(), "compact");
        HBox.setHgrow(box, Priority.ALWAYS);
        HBox row = new HBox(8, box, dismiss);
        row.setAlignment(javafx.geometry.Pos.TOP_LEFT);
        row.setStyle("-fx-padding: 12 16 0 16;");
        getChildren().add(row);
    }
}
