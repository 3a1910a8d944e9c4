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
import javafx.geometry.Insets;
import javafx.scene.control.Button;
import javafx.scene.control.Hyperlink;
import javafx.scene.layout.HBox;
import org.controlsfx.control.StatusBar;

/** One line: what the job holds or what is being done and how far, and the Stop sentence. */
final class StatusLine extends StatusBar {

    private static final double LEAST_SHOWN = 1e-3;
    private static final double APART = 12;

    private final Session session;
    private final Button cancel;
    private final Hyperlink stop = new Hyperlink();
    private String stopWords = "";
    private int stops;

    StatusLine(Session session) {
        this.session = session;
        cancel = Parts.button("status.cancel", session::cancel, "compact", "small");
        cancel.setId("status-cancel");
        stop.getStyleClass().add("status-stop");
        stop.setMinWidth(USE_PREF_SIZE);
        stop.setOnAction(e -> session.stageProperty().set(Stage.CAUTIONS));
        // In front of the words, so that it stays where it is as they change.
        HBox.setMargin(cancel, new Insets(0, APART, 0, 0));
        HBox.setMargin(stop, new Insets(0, 0, 0, APART));
        getLeftItems().add(cancel);
        getRightItems().add(stop);
        session.workingProperty().addListener((p, old, now) -> refresh());
        session.progressProperty().addListener((p, old, now) -> progress());
        session.saidProperty().addListener((p, old, now) -> refresh());
        session.doingProperty().addListener((p, old, now) -> refresh());
        session.analysisProperty().addListener((p, old, now) -> refresh());
        session.jobProperty().addListener((p, old, now) -> refresh());
        session.issues().addListener((ListChangeListener<Issue>) c -> refresh());
        widthProperty().addListener((p, old, now) -> fit());
        refresh();
    }

    /** The bar shows itself while there is any progress; at the very beginning there is none yet. */
    private void progress() {
        double done = session.progressProperty().get();
        setProgress(!session.workingProperty().get() ? 0 : done < 0 ? done : Math.max(LEAST_SHOWN, done));
    }

    private void refresh() {
        boolean working = session.workingProperty().get();
        progress();
        Parts.show(cancel, working);
        String said = session.saidProperty().get();
        String doing = session.doingProperty().get();
        String now = working || !doing.isEmpty() ? doing : said.isEmpty() ? holds() : "";
        setText(said.isEmpty() || now.isEmpty() ? said + now : said + " " + now);
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
