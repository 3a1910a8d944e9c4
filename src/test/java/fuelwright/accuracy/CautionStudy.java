package fuelwright.accuracy;

import fuelwright.issue.Loaded;
import fuelwright.safety.Caution;
import fuelwright.work.Analyse;
import fuelwright.work.Analysis;
import fuelwright.work.Cancellation;
import fuelwright.work.Progress;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Judges many simulated rides through the whole computation, from the logs' text to the cautions, with the machine described and with
 * nothing of it told. Prints what fired, and says where a clean ride got a Stop or a planted danger wasn't found.
 */
public final class CautionStudy {

    private CautionStudy() {}

    /** @param arguments parts of the names of the cases to run, {@code -v} for every sentence; none: all cases */
    public static void main(String[] arguments) {
        List<String> parts =
                Arrays.stream(arguments).filter(a -> !a.equals("-v")).toList();
        boolean all = parts.size() < arguments.length;
        int faults = 0;
        int runs = 0;
        for (CautionCase one : CautionCases.all()) {
            if (parts.isEmpty() || parts.stream().anyMatch(one.name()::contains)) {
                for (boolean described : new boolean[] {true, false}) {
                    faults += judge(one, described, all);
                    runs++;
                }
            }
        }
        System.out.println(runs + " judgements, " + faults + " wrong");
    }

    private static int judge(CautionCase one, boolean described, boolean all) {
        Loaded<Analysis> loaded = Analyse.run(one.job(described), Progress.NONE, Cancellation.NEVER);
        if (loaded.value().isEmpty()) {
            System.out.println("REFUSED " + one.name() + ": " + loaded.issues());
            return one.isClean() ? 1 : 0;
        }
        List<Caution> cautions = loaded.value().get().cautions();
        List<String> faults = one.faults(cautions);
        StringBuilder fired = new StringBuilder();
        for (Caution c : cautions) {
            fired.append(c.level().words().charAt(0))
                    .append(':')
                    .append(c.rule())
                    .append(' ');
        }
        System.out.println(String.format(
                Locale.ROOT,
                "%s %s%s | %s",
                faults.isEmpty() ? "ok   " : "WRONG",
                one.name(),
                described ? "" : " (machine unknown)",
                fired));
        faults.forEach(f -> System.out.println("      " + f));
        if (all) {
            System.out.println("      " + loaded.value().get().estimate().sensor());
            cautions.forEach(c -> System.out.println("      " + c.sentence() + " // " + c.todo()));
        }
        return faults.size();
    }
}
