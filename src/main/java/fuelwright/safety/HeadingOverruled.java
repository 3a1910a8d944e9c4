package fuelwright.safety;

import fuelwright.issue.Issue;
import fuelwright.ride.Ride;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** A heading whose unit the figures deny was overruled in reading. The figures are probably right; the heading is wrong all the same. */
final class HeadingOverruled implements Rule {

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        for (int r = 0; r < d.rides(); r++) {
            Ride ride = d.ride(r);
            List<Issue> overruled = ride.overruledUnits();
            if (!overruled.isEmpty()) {
                out.add(new Caution(
                                "unit-overruled",
                                Caution.Level.CHECK,
                                "A stated unit was overruled",
                                "In " + ride.name() + ": "
                                        + overruled.stream().map(Issue::what).collect(Collectors.joining("; ")),
                                "See that it was read rightly, and give the unit by hand where it wasn't",
                                new TreeSet<>(),
                                List.of())
                        .about(ride.name()));
            }
        }
        return out;
    }
}
