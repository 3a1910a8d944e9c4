package fuelwright.safety;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * A ride that reads otherwise than the rest in the same cells, though it was made with the same table. Rides with trims aren't judged: a trim
 * would hide or fake it. The oddest is named and left out, then the rest are looked at again.
 */
final class RidesApart implements Rule {

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        List<Integer> left = new ArrayList<>();
        List<CellMeans> means = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            if (!d.ride(r).hasTrims()
                    && d.file.rides()
                            .get(r)
                            .madeWith()
                            .equals(d.file.rides().get(0).madeWith())) {
                CellMeans mean = new CellMeans(d.fuel.cells());
                CellMeans.read(d, r, row -> mean);
                left.add(r);
                means.add(mean);
            }
        }
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
        return out;
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
