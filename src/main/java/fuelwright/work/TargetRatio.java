package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import fuelwright.mixture.MixtureScale;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The ratio by which a target in AFR is lambda. It is the target's own: no ride's display moves it. */
public final class TargetRatio {

    private static final double USUAL = MixtureScale.USUAL_DISPLAY_RATIO;

    private TargetRatio() {}

    /** A job with what was told of its target's ratio; refused where a guess would be the leaner one. */
    public static Loaded<Job> told(Loaded<Job> read, OptionalDouble ratio) {
        Optional<Job> job = read.value().map(j -> j.withTargetRatio(ratio));
        if (job.filter(j -> j.asksForTargetRatio() && j.displayRatio() > USUAL).isEmpty()) {
            return new Loaded<>(job, read.issues());
        }
        List<Issue> issues = new ArrayList<>(read.issues());
        issues.add(Issue.error(
                "target table",
                0,
                0,
                "this target is AFR, and the rides' display shows more than " + USUAL + " at lambda 1: divided by "
                        + USUAL + " it would be leaner than if it were meant for that display",
                "say which ratio the target's figures mean (--target-ratio RATIO)"));
        return Loaded.refused(issues);
    }

    /** What is taken, where nobody has told the ratio of a job's AFR target. */
    public static Optional<Issue> remark(Job job) {
        return job.asksForTargetRatio()
                ? remark("target table", job.targetTable().orElseThrow())
                : Optional.empty();
    }

    /** The same of a target of which nothing was told; empty where it holds lambda. */
    public static Optional<Issue> remark(String name, Table target) {
        return target.quantity() == Quantity.AFR
                ? Optional.of(
                        Issue.warning(
                                name,
                                0,
                                0,
                                "this target is AFR; it is divided by " + USUAL
                                        + ", whatever the displays of the rides are set to",
                                "If its figures mean another ratio at lambda 1, say which (--target-ratio, or beside the target on the stage Tables)"))
                : Optional.empty();
    }
}
