package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Roles that the user gave to columns: one that no ride has is a mistake to be told, not a wish to be dropped. */
final class GivenRoles {

    private GivenRoles() {}

    /** An error for each given column that none of the rides has. */
    static List<Issue> unmet(RideOptions options, List<Ride> rides) {
        List<Issue> issues = new ArrayList<>();
        for (Map.Entry<String, Role> given : new TreeMap<>(options.roles()).entrySet()) {
            // Time is no channel once it is read.
            if (given.getValue() != Role.TIME && rides.stream().noneMatch(r -> has(r, given.getKey()))) {
                issues.add(Issue.error(
                        rides.size() == 1 ? rides.get(0).name() : "",
                        1,
                        0,
                        "no ride has a column '" + given.getKey() + "', which was given the role "
                                + given.getValue().words(),
                        "Write the heading as the file has it; inspect lists them"));
            }
        }
        return issues;
    }

    private static boolean has(Ride ride, String column) {
        String wanted = column.strip().toLowerCase(Locale.ROOT);
        return ride.channels().stream()
                .map(c -> c.heading().strip().toLowerCase(Locale.ROOT))
                .anyMatch(heading -> {
                    return heading.equals(wanted)
                            || heading.startsWith(wanted)
                                    && heading.substring(wanted.length())
                                            .strip()
                                            .matches("[\\[(].*[\\])]");
                });
    }
}
