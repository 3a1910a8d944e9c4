package fuelwright.work;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;

/**
 * Analyses one job after another and does again only what a change touches: other caps, steps or decisions go from the fit on, other
 * limits from the proposal on, other screens from the screens on. The answer is the same, figure for figure, as {@link Analyse#run} gives. Holds on
 * to the rides of the last analysis. Thread-safe.
 */
public final class Workbench {

    private final Memo memo = new Memo();

    /** As {@link Analyse#run}. */
    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
        Loaded<Analysis> analysis = Analyse.run(job, memo, progress, cancellation);
        // One that was cancelled has had no time to use what is known.
        memo.forgetUnused();
        return analysis;
    }
}
