package fuelwright.work;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;
import java.util.Optional;

/**
 * Analyses one job after another and does again only what a change touches: other caps, steps or decisions go from the fit on, other
 * limits from the proposal on, other screens from the screens on. The answer is the same, figure for figure, as {@link Analyse#run} gives. Holds on
 * to the rides of the last analysis. Thread-safe.
 */
public final class Workbench {

    /** Up to so many rows in all, the whole answer is there as quickly as one is noticed to wait. */
    private static final long LONG_ROWS = 100_000;

    private final Memo memo = new Memo();
    private final long longRows;

    /** Nothing is known yet. */
    public Workbench() {
        this(LONG_ROWS);
    }

    /** @param longRows rides with fewer rows in all get no first answer */
    Workbench(long longRows) {
        this.longRows = longRows;
    }

    /**
     * What can be said at once where other screens were set than in the last analysis and the rides are long: the new screens, one pass over
     * all readings with each weighed anew, and what is proposed from it. Where the last analysis found delay, lag, noise and smoothness, it
     * starts, and noise and smoothness stay. Nothing is judged: see {@link Analysis#settled}. Empty where {@link #analyse} is as quick, or nothing
     * is known yet. Changes nothing of what that gives.
     *
     * @throws Cancellation.CancelledException if it isn't wanted any more
     */
    public Optional<Analysis> first(Job job, Cancellation cancellation) {
        memo.forgetTried();
        return Analyse.first(job, memo, longRows, cancellation);
    }

    /** As {@link Analyse#run}. */
    public Loaded<Analysis> analyse(Job job, Progress progress, Cancellation cancellation) {
        Loaded<Analysis> analysis = Analyse.run(job, memo, progress, cancellation);
        // One that was cancelled has had no time to use what is known.
        memo.forgetUnused();
        return analysis;
    }
}
