package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.ui.theme.Words;
import java.util.stream.Collectors;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.StringBinding;

/** What a stage says where it has nothing to show: what is missing, or why the analysis was refused and what to do. */
public final class Missing {

    private Missing() {}

    /** @param key of the sentence for a job in which something is missing; its title has the same key with {@code .title} */
    public static StringBinding title(Session session, String key) {
        return Bindings.createStringBinding(
                () -> Words.of(session.refusalProperty().get().isEmpty() ? key + ".title" : "refused.title"),
                session.refusalProperty());
    }

    public static StringBinding what(Session session, String key) {
        return Bindings.createStringBinding(
                () -> session.refusalProperty().get().isEmpty()
                        ? Words.of(key)
                        : session.refusalProperty().get().stream()
                                .map(Issue::sentence)
                                .map(fuelwright.ui.theme.Parts::sentence)
                                .collect(Collectors.joining("\n")),
                session.refusalProperty());
    }

    /** Goes to where the next step is. */
    public static void go(Session session) {
        NextStep.of(session).ifPresent(step -> session.stageProperty().set(step.stage()));
    }
}
