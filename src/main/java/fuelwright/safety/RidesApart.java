package fuelwright.safety;

import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/**
 * A ride that reads otherwise than the rest in the same cells, though it was made with the same table. Rides with trims aren't judged: a trim
 * would hide or fake it. The oddest is named and left out, then the rest are looked at again.
 */
final class RidesApart implements Rule {

    /** At high load the leaner ride is a danger, and the mean of both too lean for it. */
    private static final double HIGH_LOAD_PERCENT = 5;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        d.file.rides().stream().map(CaseFile.JudgedRide::madeWith).distinct().forEach(table -> judge(d, table, out));
        return out;
    }

    private static void judge(Dossier d, Table madeWith, List<Caution> out) {
        List<Integer> left = new ArrayList<>();
        List<CellMeans> means = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            if (!d.ride(r).hasTrims() && d.file.rides().get(r).madeWith().equals(madeWith)) {
                CellMeans mean = new CellMeans(d.fuel.cells());
                CellMeans.read(d, r, row -> mean);
                left.add(r);
                means.add(mean);
            }
        }
        atHighLoad(d, left, means, out);
        anywhere(d, left, means, out);
    }

    private static void atHighLoad(Dossier d, List<Integer> left, List<CellMeans> means, List<Caution> out) {
        while (left.size() > 1) {
            int oddest = -1;
            CellMeans.Apart most = null;
            for (int i = 0; i < left.size(); i++) {
                Optional<CellMeans.Apart> apart =
                        means.get(i).apart(without(means, i, d.fuel.cells()), d::isHigh, HIGH_LOAD_PERCENT);
                if (apart.isPresent() && (most == null || apart.get().surelyPercent() > most.surelyPercent())) {
                    oddest = i;
                    most = apart.get();
                }
            }
            if (most == null) {
                return;
            }
            out.add(stop(d, left.get(oddest), left.size() == 2 ? left.get(1 - oddest) : -1, most));
            left.remove(oddest);
            means.remove(oddest);
        }
    }

    private static void anywhere(Dossier d, List<Integer> left, List<CellMeans> means, List<Caution> out) {
        while (left.size() > 1) {
            int oddest = 0;
            double most = 0;
            for (int i = 0; i < left.size(); i++) {
                double leaner = means.get(i).leanerPercent(without(means, i, d.fuel.cells()));
                if (Math.abs(leaner) > Math.abs(most)) {
                    oddest = i;
                    most = leaner;
                }
            }
            if (Math.abs(most) <= d.limits.of(Limit.DRIFT)) {
                break;
            }
            out.add(caution(d, left.remove(oddest), most));
            means.remove(oddest);
        }
    }

    /** @param other the only other one; negative where there are several */
    private static Caution stop(Dossier d, int ride, int other, CellMeans.Apart apart) {
        String name = d.ride(ride).name();
        String rest = other < 0 ? "the rest of the rides" : d.ride(other).name();
        boolean leaner = apart.leanerPercent() > 0;
        return new Caution(
                        "rides-apart",
                        Caution.Level.STOP,
                        "Rides disagree at high load",
                        String.format(
                                Locale.ROOT,
                                "In %s at high load, %s, %s read%s %.0f %% leaner than %s (noise allowed for, %.0f %% at least), though"
                                        + " all are said to be made with the same table. What is proposed there is a mean of right and wrong",
                                Say.cells(apart.cells().size()),
                                Say.speeds(d.fuel, apart.cells()),
                                leaner ? name : rest,
                                leaner || other >= 0 ? "s" : "",
                                apart.apartPercent(),
                                leaner ? rest : name,
                                apart.surelyPercent()),
                        "Say on the stage Rides with which table each ride was made; if it was the same, look at fuel, fuel pressure,"
                                + " sensor and display scale, and leave out the ride that is wrong before loading the engine",
                        apart.cells(),
                        List.of())
                .about(name);
    }

    private static CellMeans without(List<CellMeans> all, int one, int cells) {
        CellMeans rest = new CellMeans(cells);
        for (int i = 0; i < all.size(); i++) {
            if (i != one) {
                rest.add(all.get(i));
            }
        }
        return rest;
    }

    private static Caution caution(Dossier d, int ride, double leaner) {
        String name = d.ride(ride).name();
        return new Caution(
                        "rides-apart",
                        Caution.Level.CHECK,
                        "A ride reads otherwise",
                        String.format(
                                Locale.ROOT,
                                "In the same cells %s reads %.1f %% %s than the rest of the rides",
                                name,
                                Math.abs(leaner),
                                leaner > 0 ? "leaner" : "richer"),
                        "Look for what was different: fuel, fuel pressure, sensor, display scale, table; leave out the ride that is wrong",
                        new TreeSet<>(),
                        List.of())
                .about(name);
    }
}
