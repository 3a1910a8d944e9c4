package fuelwright.ui.session;

import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.StringBinding;
import javafx.beans.value.ObservableBooleanValue;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** What a stage says where it has nothing to show: what is missing, or why the analysis was refused and what to do. */
public final class Missing {

    private Missing() {}

    /**
     * What stands in the work area, with the way to the next step.
     *
     * @param key of the sentence for a job in which something is missing; its title has the same key with {@code .title}
     * @param there whether the stage has something to show
     */
    public static VBox instead(Session session, String key, ObservableBooleanValue there) {
        Button go = Parts.button("next.go", () -> {}, "primary");
        go.setOnAction(e ->
                NextStep.of(session).ifPresent(step -> step.go(session, () -> AskFiles.choose(go, session::open))));
        go.textProperty()
                .bind(Bindings.createStringBinding(
                        () -> NextStep.of(session).map(NextStep::words).orElse(""),
                        session.jobProperty(),
                        session.refusalProperty(),
                        session.workingProperty()));
        go.accessibleTextProperty().bind(go.textProperty());
        VBox empty = Parts.empty(
                title(session, key), what(session, key), session.workingProperty(), session.doingProperty(), go);
        empty.visibleProperty().bind(Bindings.not(there));
        return empty;
    }

    /**
     * What stands on the right: the explanation or, where nothing is there to explain, what will come here.
     *
     * @param key its sentence has this key with {@code .about}
     */
    public static Node beside(Node explanation, String key, ObservableBooleanValue there) {
        VBox about = new VBox(
                4, Parts.label(Words.of("missing.about"), "section"), Parts.text(Words.of(key + ".about"), "muted"));
        about.getStyleClass().add("explanation-inner");
        explanation.visibleProperty().bind(there);
        about.visibleProperty().bind(Bindings.not(there));
        return new StackPane(explanation, about);
    }

    private static StringBinding title(Session session, String key) {
        return Bindings.createStringBinding(
                () -> Words.of(session.refusalProperty().get().isEmpty() ? key + ".title" : "refused.title"),
                session.refusalProperty());
    }

    static StringBinding what(Session session, String key) {
        return Bindings.createStringBinding(
                () -> session.refusalProperty().get().isEmpty()
                        ? Words.of(key)
                        : session.refusalProperty().get().stream()
                                .map(i -> i.sentence(session.shownIn()))
                                .map(Parts::sentence)
                                .collect(Collectors.joining("\n")),
                session.refusalProperty(),
                session.measuresProperty(),
                session.afrProperty());
    }
}
