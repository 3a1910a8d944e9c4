package fuelwright.cli;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.util.List;
import java.util.stream.Collectors;

/** A command can't be carried out: what the user is told, and the exit code. Only the top-level handler catches it. */
final class CommandFailed extends RuntimeException {

    private static final long serialVersionUID = 1;

    private final int code;

    private CommandFailed(int code, String message) {
        super(message);
        this.code = code;
    }

    static CommandFailed usage(String message) {
        return new CommandFailed(Exit.USAGE, message);
    }

    static CommandFailed input(String message) {
        return new CommandFailed(Exit.INPUT, message);
    }

    /** One line for each error among the issues. */
    static CommandFailed input(List<Issue> issues) {
        return input(issues.stream()
                .filter(i -> i.severity() == Issue.Severity.ERROR)
                .map(Said::sentence)
                .distinct()
                .collect(Collectors.joining(System.lineSeparator())));
    }

    /** The value, or the failure that its issues describe. */
    static <T> T valueOf(Loaded<T> loaded) {
        return loaded.value().orElseThrow(() -> input(loaded.issues()));
    }

    int code() {
        return code;
    }
}
