package fuelwright.safety;

import fuelwright.ride.Ride;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Tells rides of one name apart, so that a caution and its answer belong to one of them: each by how long it lasts, which stays the same when
 * another ride goes; rides of one length by their order.
 */
final class SameNames {

    private SameNames() {}

    static List<CaseFile.JudgedRide> apart(List<CaseFile.JudgedRide> rides) {
        Map<String, Integer> named = new HashMap<>();
        rides.forEach(r -> named.merge(name(r), 1, Integer::sum));
        if (named.size() == rides.size()) {
            return List.copyOf(rides);
        }
        Map<String, Integer> given = new HashMap<>();
        List<CaseFile.JudgedRide> out = new ArrayList<>();
        for (CaseFile.JudgedRide ride : rides) {
            if (named.get(name(ride)) == 1) {
                out.add(ride);
                continue;
            }
            String longer = name(ride) + ", " + length(ride.screened().ride());
            int nth = given.merge(longer, 1, Integer::sum);
            String other = nth == 1 ? longer : longer + " (" + nth + ")";
            out.add(new CaseFile.JudgedRide(ride.screened().named(other), ride.madeWith()));
        }
        return List.copyOf(out);
    }

    private static String name(CaseFile.JudgedRide ride) {
        return ride.screened().ride().name();
    }

    private static String length(Ride ride) {
        double seconds = ride.durationS();
        return String.format(Locale.ROOT, "%.0f min %04.1f s", Math.floor(seconds / 60), seconds % 60);
    }
}
