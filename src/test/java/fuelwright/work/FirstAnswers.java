package fuelwright.work;

import fuelwright.estimate.Standing;
import fuelwright.job.Job;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenSettings;
import fuelwright.speed.BigRide;
import fuelwright.speed.Stages;
import java.io.IOException;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.UnaryOperator;

/** How far first answers are from whole ones, over a handful of screen changes: the sample job, and a big ride. */
public final class FirstAnswers {

    private static final Map<String, UnaryOperator<ScreenSettings>> CHANGES = new LinkedHashMap<>();

    static {
        CHANGES.put("coolant from 80 °C", s -> s.withCoolantAtLeast(80));
        CHANGES.put("spikes count", s -> s.with(Screen.SPIKE, false));
        CHANGES.put("moving throttle counts", s -> s.with(Screen.THROTTLE_MOVING, false));
        CHANGES.put("moving speed counts", s -> s.with(Screen.SPEED_MOVING, false));
        CHANGES.put("throttle to 15 %/s", s -> s.withThrottleRate(15));
        CHANGES.put("lambda 0.75 to 1.2", s -> s.withLambda(0.75, 1.2));
        CHANGES.put("0.3 s after fuel cut", s -> s.withAfterFuelCut(0.3));
    }

    private FirstAnswers() {}

    /** @param arguments rows of the big ride; none: the sample job only */
    public static void main(String[] arguments) throws IOException {
        compare("sample", SampleJob.load().value().orElseThrow());
        for (String rows : arguments) {
            compare(
                    rows + " rows",
                    Stages.files(BigRide.log(Integer.parseInt(rows)))
                            .load(Progress.NONE, Cancellation.NEVER)
                            .value()
                            .orElseThrow());
        }
    }

    private static void compare(String name, Job job) {
        System.out.println(name
                + ": readings that count before and after; first answer and whole apart, and what the change changed:");
        System.out.println(
                "  shortfall of all cells median, of ridden cells most, %, of all cells most in its own ±; proposal of all cells most, %");
        for (Map.Entry<String, UnaryOperator<ScreenSettings>> change : CHANGES.entrySet()) {
            Workbench workbench = new Workbench(0);
            Analysis before = workbench
                    .analyse(job, Progress.NONE, Cancellation.NEVER)
                    .value()
                    .orElseThrow();
            Job changed = job.withScreens(change.getValue().apply(job.screens()));
            Analysis first = workbench.first(changed, Cancellation.NEVER).orElseThrow();
            Analysis whole = workbench
                    .analyse(changed, Progress.NONE, Cancellation.NEVER)
                    .value()
                    .orElseThrow();
            System.out.printf(
                    "  %-24s %7d %7d   %s   %s%n",
                    change.getKey(), kept(before), kept(whole), apart(first, whole), apart(before, whole));
        }
    }

    private static int kept(Analysis analysis) {
        return analysis.screened().stream().mapToInt(s -> s.kept()).sum();
    }

    private static String apart(Analysis one, Analysis whole) {
        double[] apart = new double[whole.estimate().table().cells()];
        double ridden = 0;
        double relative = 0;
        double proposed = 0;
        for (int c = 0; c < apart.length; c++) {
            apart[c] = 100
                    * Math.abs(one.estimate().logFactor(c) - whole.estimate().logFactor(c));
            relative = Math.max(relative, apart[c] / 100 / whole.estimate().logUncertainty(c));
            if (whole.estimate().independentReadings(c) >= Standing.THIN_READINGS) {
                ridden = Math.max(ridden, apart[c]);
            }
            double share = one.proposal().corrected().at(c)
                    / whole.proposal().corrected().at(c);
            proposed = Math.max(proposed, 100 * Math.abs(share - 1));
        }
        Arrays.sort(apart);
        return String.format(
                Locale.ROOT, "%.2f  %.2f  %.2f  %.2f", apart[apart.length / 2], ridden, relative, proposed);
    }
}
