package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Roles and units that the user gave to columns: one that no ride has, or that can't be, is a mistake to be told, not a wish to be dropped. */
final class GivenRoles {

    private GivenRoles() {}

    /** An error for each given column that none of the rides has, and for each unit that doesn't fit what its column means. */
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
        for (Map.Entry<String, Unit> given : new TreeMap<>(options.units()).entrySet()) {
            // That no ride has the column was said when it was read.
            rides.stream()
                    .flatMap(r -> r.channels().stream())
                    .filter(c -> isNamed(c, given.getKey()))
                    .filter(c -> c.role() != Role.OTHER
                            && c.unit().dimension() != given.getValue().dimension()
                            && !isVolts(given.getValue()))
                    .findFirst()
                    .ifPresent(c -> issues.add(Issue.error(
                            rides.size() == 1 ? rides.get(0).name() : "",
                            1,
                            0,
                            "the unit " + given.getValue().symbol() + " can't be that of '" + c.heading()
                                    + "', which is read as " + c.role().words() + ", "
                                    + c.unit().symbol(),
                            "Correct the unit, or say what the column means (--role \"COLUMN=ROLE\")")));
        }
        return issues;
    }

    /** Throttle and wideband may be logged as volts. */
    private static boolean isVolts(Unit unit) {
        return unit.dimension() == Dimension.VOLTAGE;
    }

    private static boolean has(Ride ride, String column) {
        return ride.channels().stream().anyMatch(c -> isNamed(c, column));
    }

    private static boolean isNamed(Channel channel, String column) {
        String wanted = column.strip().toLowerCase(Locale.ROOT);
        String heading = channel.heading().strip().toLowerCase(Locale.ROOT);
        return heading.equals(wanted)
                || heading.startsWith(wanted)
                        && heading.substring(wanted.length()).strip().matches("[\\[(].*[\\])]");
    }
}
