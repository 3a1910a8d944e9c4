package fuelwright.safety;

import fuelwright.mixture.Fuel;
import fuelwright.mixture.MixtureScale;
import fuelwright.unit.Sentence;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** The target table itself: leaner than safe where load is high, or written for another fuel's scale. */
final class TargetTable implements Rule {

    private static final double LEAST_PLAUSIBLE = 0.68;
    private static final double MOST_PLAUSIBLE = 1.12;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        if (!scale(d, out)) {
            lean(d, out);
        }
        return out;
    }

    private static boolean scale(Dossier d, List<Caution> out) {
        double[] sorted = d.target.toArray();
        Arrays.sort(sorted);
        double median = sorted[sorted.length / 2];
        if (isPlausible(median)) {
            return false;
        }
        Fuel fuel = d.file.machine().fuel();
        double shift = fuel.stoichiometricRatio() / MixtureScale.USUAL_DISPLAY_RATIO;
        boolean onPetrolScale = isPlausible(median * shift) && shift < 1;
        boolean onFuelsScale = isPlausible(median / shift) && shift < 1;
        out.add(new Caution(
                "target-scale",
                Caution.Level.STOP,
                "Target and fuel don't match",
                String.format(
                        Locale.ROOT,
                        "The target's middle figure is lambda %.2f on %s%s",
                        median,
                        fuel.words(),
                        onPetrolScale
                                ? "; it looks like an AFR on the scale of 14.7"
                                : onFuelsScale
                                        ? "; it looks like an AFR on the fuel's own scale"
                                        : ", which no engine runs at"),
                "Name the fuel in the tank and the scale of the target table, or give the target as lambda",
                new TreeSet<>(),
                List.of()));
        return true;
    }

    private static boolean isPlausible(double lambda) {
        return lambda >= LEAST_PLAUSIBLE && lambda <= MOST_PLAUSIBLE;
    }

    private static void lean(Dossier d, List<Caution> out) {
        double ceiling = d.limits.of(Limit.LEAN_CEILING);
        TreeSet<Integer> stop = new TreeSet<>();
        TreeSet<Integer> check = new TreeSet<>();
        for (int c = 0; c < d.fuel.cells(); c++) {
            double target = d.targetAt(c);
            if (!d.isHigh(c) || !(target > ceiling + 1e-9)) {
                continue;
            }
            boolean grave = d.isWellInside(c) || target > d.limits.edgeCeiling();
            (grave ? stop : check).add(c);
        }
        if (!stop.isEmpty()) {
            out.add(
                    caution(
                            d,
                            Caution.Level.STOP,
                            "The target is leaner than safe",
                            stop,
                            "Make the target richer at high load before anything else; the engine builder's figures come first"));
        }
        if (!check.isEmpty()) {
            out.add(caution(
                    d,
                    Caution.Level.CHECK,
                    "The target is lean at the edge of high load",
                    check,
                    "See whether the target should turn rich earlier with what is fitted now"));
        }
    }

    private static Caution caution(Dossier d, Caution.Level level, String title, TreeSet<Integer> cells, String todo) {
        int worst = cells.first();
        for (int c : cells) {
            worst = d.targetAt(c) > d.targetAt(worst) ? c : worst;
        }
        double ceiling = d.limits.of(Limit.LEAN_CEILING);
        Sentence what = Sentence.of(
                "%s at high load %s a target leaner than %s. Leanest: %s at %s",
                Say.cells(cells.size()),
                cells.size() == 1 ? "has" : "have",
                Say.lambda(ceiling),
                Say.lambdaBeyond(d.targetAt(worst), ceiling).alone(),
                Say.cell(d.fuel, worst));
        return new Caution("target-lean", level, title, what, todo, cells, List.of());
    }
}
