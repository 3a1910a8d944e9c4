package fuelwright.estimate;

import fuelwright.airflow.Machine;
import fuelwright.table.Table;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** Runs the estimate without one of its parts; for the accuracy study. */
public final class PartsStudy {

    private PartsStudy() {}

    /** How many variants there are: all parts, then without each in turn. */
    public static int variants() {
        return Part.values().length + 1;
    }

    /** What a variant is called. */
    public static String name(int variant) {
        return variant == 0
                ? "all parts"
                : "without "
                        + Part.values()[variant - 1]
                                .name()
                                .toLowerCase(Locale.ROOT)
                                .replace('_', ' ');
    }

    public static Estimate run(
            int variant,
            Table table,
            Table target,
            List<Estimator.Source> sources,
            Machine machine,
            double deadTimeMs) {
        Set<Part> off = EnumSet.noneOf(Part.class);
        if (variant > 0) {
            off.add(Part.values()[variant - 1]);
        }
        return new Estimator(table, target, sources, machine, deadTimeMs, off).run(() -> {});
    }
}
