package fuelwright.work;

import fuelwright.issue.Loaded;
import fuelwright.job.Job;

/** The whole computation: job in, {@link Analysis} out. Pure: the same job gives the same analysis. */
public final class Analyse {

    private Analyse() {}

    /**
     * @param job must be {@link Job#isReady() ready}
     * @return the analysis, or why it can't be made (no mixture and no trims, no reading left, target without a figure …)
     */
    public static Loaded<Analysis> run(Job job, Progress progress, Cancellation cancellation) {
        throw new UnsupportedOperationException("not yet");
    }
}
