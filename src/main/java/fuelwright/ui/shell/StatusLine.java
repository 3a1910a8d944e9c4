package fuelwright.ui.shell;

import fuelwright.issue.Issue;
import fuelwright.screen.ScreenedRide;
import fuelwright.ui.session.NextStep;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import javafx.collections.ListChangeListener;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;

/** One line: what the job holds or what is being done and how far, and the Stop sentence. */
final class StatusLine extends HBox {

    private final Session session;
    private final Label what = Parts.label("", "muted", "small");
    private final ProgressBar bar = new ProgressBar();
    private final Button cancel;
    private final Hyperlink stop = new Hyperlink();
    private String stopWords = "";
    private int stops;

    StatusLine(Session session) {
        super(12);
        this.session = session;
        getStyleClass().add("status");
        setAlignment(javafx.geometry.Pos.CENTER_LEFT);
        cancel = Parts.button("status.cancel", session::cancel, "compact", "small");
        stop.getStyleClass().add("status-stop");
        stop.setMinWidth(USE_PREF_SIZE);
        stop.setOnAction(e -> session.stageProperty().set(Stage.CAUTIONS));
        bar.progressProperty().bind(session.progressProperty());
        bar.setAccessibleText(Words.of("status.progress"));
        // In front of the words, so that it stays where it is as they change.
        getChildren().addAll(bar, cancel, what, Parts.gap(), stop);
        cancel.setId("status-cancel");
        session.workingProperty().addListener((p, old, now) -> refresh());
        session.saidProperty().addListener((p, old, now) -> refresh());
        session.doingProperty().addListener((p, old, now) -> refresh());
        session.analysisProperty().addListener((p, old, now) -> refresh());
        session.jobProperty().addListener((p, old, now) -> refresh());
        session.issues().addListener((ListChangeListener<Issue>) c -> refresh());
        widthProperty().addListener((p, old, now) -> fit());
        refresh();
    }

    private void refresh() {
        boolean working = session.workingProperty().get();
        Parts.show(bar, working);
        Parts.show(cancel, working);
        String said = session.saidProperty().get();
        String doing = session.doingProperty().get();
        String now = working || !doing.isEmpty() ? doing : said.isEmpty() ? holds() : "";
        what.setText(said.isEmpty() || now.isEmpty() ? said + now : said + " " + now);
        stops = session.analysis() == null ? 0 : session.analysis().stops().size();
        Parts.show(stop, stops > 0);
        boolean answered = NextStep.unanswered(session).isEmpty();
        boolean first = stops > 0 && !session.analysis().settled();
        String key = first ? "status.stops.anew" : answered ? "status.stops.answered" : "status.stops";
        stopWords = stops == 0 ? "" : Words.of(key, stops);
        fit();
    }

    /** The Stop in full where the line has room for it beside the rest, else in short. */
    private void fit() {
        stop.setText(stopWords);
        stop.setAccessibleText(stopWords);
        if (stops > 0 && getWidth() > 0 && prefWidth(-1) > getWidth()) {
            stop.setText(Words.of("status.stops.short", stops));
        }
    }

    private String holds() {
        Analysis analysis = session.analysis();
        if (analysis == null) {
            return Words.of("status.drop");
        }
        long rows = 0;
        long kept = 0;
        for (ScreenedRide ride : analysis.screened()) {
            rows += ride.ride().size();
            kept += ride.kept();
        }
        return Words.of("status.holds", analysis.screened().size(), Figures.count(rows), Figures.count(rows - kept));
    }
}
