package fuelwright.table;

import fuelwright.issue.Issue;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** What reading one file finds. Errors beyond the twentieth are only counted: nobody mends more than that in one go. */
final class Problems {

    static final int MOST_ERRORS = 20;

    private final String file;
    private final List<Issue> issues = new ArrayList<>();
    private int errors;

    Problems(String file) {
        this.file = file;
    }

    void error(int line, int column, String what, String todo) {
        errors++;
        if (errors <= MOST_ERRORS) {
            issues.add(Issue.error(file, line, column, what, todo));
        }
    }

    void warning(int line, int column, String what, String todo) {
        issues.add(Issue.warning(file, line, column, what, todo));
    }

    void note(int line, int column, String what) {
        issues.add(new Issue(Issue.Severity.NOTE, file, line, column, what, ""));
    }

    void add(List<Issue> others) {
        issues.addAll(others);
    }

    boolean refused() {
        return errors > 0;
    }

    /** All of them down the file; what concerns the whole file comes first. */
    List<Issue> issues() {
        List<Issue> all = new ArrayList<>(issues);
        all.sort(Comparator.comparingInt(Issue::line).thenComparingInt(Issue::column));
        if (errors > MOST_ERRORS) {
            int more = errors - MOST_ERRORS;
            all.add(Issue.error(
                    file,
                    0,
                    0,
                    more + (more == 1 ? " more error" : " more errors"),
                    "Mend these first and read again"));
        }
        return all;
    }
}
