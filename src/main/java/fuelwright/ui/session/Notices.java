package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.ui.theme.Words;
import java.nio.file.NoSuchFileException;
import java.util.List;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;

/** What the window says at once: what went wrong, and what is doubtful. */
final class Notices {

    private final ObservableList<Issue> all = FXCollections.observableArrayList();

    ObservableList<Issue> all() {
        return all;
    }

    /** What was doubtful in a ride is said beside the ride; only what can't be used is said at once. */
    void errorsOnly(List<Issue> issues) {
        all.setAll(issues.stream().filter(Notices::isError).toList());
    }

    /** Everything but notes, after what is there. */
    void add(List<Issue> issues) {
        all.addAll(
                issues.stream().filter(i -> i.severity() != Issue.Severity.NOTE).toList());
    }

    /** What an earlier analysis was refused for. */
    void forgetRefusals() {
        all.removeIf(i -> isError(i) && i.file().isEmpty());
    }

    /** A warning was seen on the stage where it came; it stays beside its ride. */
    void forgetWarnings() {
        if (all.stream().noneMatch(Notices::isError)) {
            all.clear();
        }
    }

    void failed(Exception problem) {
        all.setAll(Issue.error("", 0, 0, sentence(problem), Words.of("failed.todo")));
    }

    private static boolean isError(Issue issue) {
        return issue.severity() == Issue.Severity.ERROR;
    }

    private static String sentence(Exception problem) {
        if (problem instanceof NoSuchFileException) {
            return Words.of("failed.nofile", problem.getMessage());
        }
        String message = problem.getMessage();
        return message == null ? Words.of("failed.unknown", problem.getClass().getSimpleName()) : message;
    }
}
