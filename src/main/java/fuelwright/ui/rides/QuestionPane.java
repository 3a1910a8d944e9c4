package fuelwright.ui.rides;

import fuelwright.ride.Ride;
import fuelwright.table.Table;
import fuelwright.ui.session.Session;
import fuelwright.ui.session.TableQuestion;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Asks with which table new rides were made; there until it is answered. */
final class QuestionPane {

    private final Session session;
    private final TableQuestion question;
    private final VBox box = new VBox();

    QuestionPane(Session session) {
        this.session = session;
        this.question = session.question();
        box.setId("table-question");
        question.waitingProperty().addListener((p, old, now) -> fill());
        session.analysisProperty().addListener((p, old, now) -> fill());
        session.staleProperty().addListener((p, old, now) -> fill());
        fill();
    }

    Node node() {
        return box;
    }

    private void fill() {
        box.getChildren().clear();
        List<Ride> rides = question.waitingProperty().get();
        Parts.show(box, !rides.isEmpty());
        if (rides.isEmpty()) {
            return;
        }
        String names = rides.stream().map(Ride::name).collect(Collectors.joining(", "));
        VBox asked = Parts.callout("check", Words.of("question.ask", rides.size(), names), Words.of("question.why"));
        FlowPane answers = new FlowPane(8, 6);
        if (question.other() != null) {
            Button other = Parts.button(
                    "question." + question.other().key(), question::madeWithOther, "compact", "question-answer");
            other.setText(Parts.capital(question.otherWords()));
            other.setAccessibleText(other.getText());
            other.setId("question-other");
            other.setDisable(!question.canBeOther());
            answers.getChildren().add(other);
        }
        Button same = Parts.button("question.same", question::madeWithFuelTable, "compact", "question-answer");
        session.job().fuelTable().ifPresent(t -> same.setText(Parts.capital(question.words(t))));
        same.setAccessibleText(same.getText());
        same.setId("question-same");
        answers.getChildren().add(same);
        for (Table table : question.earlier()) {
            Button earlier = Parts.button(
                    "question.earlier", () -> question.madeWithEarlier(table), "compact", "question-answer");
            earlier.setText(Parts.capital(question.words(table)));
            earlier.setAccessibleText(earlier.getText());
            answers.getChildren().add(earlier);
        }
        answers.getChildren()
                .addAll(Parts.button("question.open", () -> AskFiles.choose(box, session::open), "compact"));
        Button leave = Parts.button("question.leave", question::leaveOut, "compact");
        leave.setText(Words.of("question.leave", rides.size()));
        leave.setAccessibleText(leave.getText());
        leave.setId("question-leave");
        answers.getChildren().add(leave);
        asked.getChildren().add(answers);
        box.getChildren().add(asked);
    }
}
