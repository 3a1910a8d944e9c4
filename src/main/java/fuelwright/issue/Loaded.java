package fuelwright.issue;

import java.util.List;
import java.util.Optional;

/**
 * What reading an input gave: the value where it could be used, and everything there is to say about it.
 *
 * @param value present exactly when no issue is an error
 * @param issues in the order found; copied
 */
public record Loaded<T>(Optional<T> value, List<Issue> issues) {

    public Loaded {
        issues = List.copyOf(issues);
        boolean refused = issues.stream().anyMatch(i -> i.severity() == Issue.Severity.ERROR);
        if (refused == value.isPresent()) {
            throw new IllegalArgumentException("value must be present exactly when no issue is an error: " + issues);
        }
    }

    public static <T> Loaded<T> of(T value, List<Issue> issues) {
        return new Loaded<>(Optional.of(value), issues);
    }

    public static <T> Loaded<T> refused(List<Issue> issues) {
        return new Loaded<>(Optional.empty(), issues);
    }

    public static <T> Loaded<T> refused(Issue issue) {
        return refused(List.of(issue));
    }
}
