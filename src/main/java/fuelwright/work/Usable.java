package fuelwright.work;

import fuelwright.issue.Issue;
import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Whether tables and rides of a job fit together, and if not, why and what to do. */
final class Usable {

    private Usable() {}

    static List<Issue> problems(Job job) {
        List<Issue> issues = new ArrayList<>();
        Table fuel = job.fuelTable().orElseThrow();
        Table target = job.targetTable().orElseThrow();
        if (!fuel.quantity().isFuel()) {
            issues.add(Issue.error(
                    "fuel table",
                    0,
                    0,
                    "the fuel table holds " + fuel.quantity().words() + ", which isn't fuel",
                    target.quantity().isFuel()
                            ? "fuel table and target table look swapped: exchange them"
                            : "give a table of volumetric efficiency, injector pulse, fuel trim or multiplier"));
        }
        if (!target.quantity().isMixture()) {
            issues.add(Issue.error(
                    "target table",
                    0,
                    0,
                    "the target table holds " + target.quantity().words() + ", which isn't a mixture",
                    "give a table of lambda or AFR"));
        }
        if (issues.isEmpty()) {
            checkDelivered(job, fuel, "fuel table", issues);
            if (issues.isEmpty()) {
                HardwareStep.problem(job).ifPresent(issues::add);
            }
            List<JobRide> leftOut = RideNeeds.leftOut(job);
            for (JobRide ride : job.rides()) {
                checkRide(job, ride, fuel, issues);
                if (leftOut.stream().noneMatch(r -> r == ride)) {
                    issues.addAll(lacks(job, ride.ride()));
                }
            }
            if (fuel.cylinder().isPresent()) {
                checkOrderOfSensors(job, issues);
            }
            List<Ride> rides = job.rides().stream().map(JobRide::ride).toList();
            for (int i = 1; i < rides.size(); i++) {
                OpenRide.twice(rides.get(i), rides.subList(0, i)).ifPresent(issues::add);
            }
        }
        return issues;
    }

    private static void checkDelivered(Job job, Table table, String name, List<Issue> issues) {
        for (int cell = 0; cell < table.cells(); cell++) {
            if (!(table.quantity().delivered(table.at(cell), job.proposal().deadTimeMs()) > 0)) {
                issues.add(Issue.error(
                        name,
                        0,
                        0,
                        "the cell at " + number(table.speedAt(cell)) + " rpm and " + number(table.loadAt(cell)) + " "
                                + table.load().kind().unit().symbol() + " delivers no fuel: " + number(table.at(cell))
                                + " "
                                + table.quantity().unit(),
                        table.quantity() == Quantity.INJECTOR_PULSE
                                ? "check the dead time: it must be shorter than every pulse, and 0 if the table doesn't contain it"
                                : "correct the cell"));
                return;
            }
        }
    }

    private static void checkRide(Job job, JobRide jobRide, Table fuel, List<Issue> issues) {
        Ride ride = jobRide.ride();
        Table madeWith = jobRide.madeWith().orElse(fuel);
        if (madeWith.quantity() != fuel.quantity()
                || madeWith.load().kind() != fuel.load().kind()) {
            issues.add(Issue.error(
                    ride.name(),
                    0,
                    0,
                    "the table this ride was made with isn't of the same kind as the fuel table",
                    "give the table of " + fuel.quantity().words() + " over engine speed and "
                            + fuel.load().kind().words() + " that was in the control unit on this ride"));
            return;
        }
        checkCylinder(ride, fuel, madeWith, issues);
        checkDelivered(job, madeWith, "table of " + ride.name(), issues);
    }

    /** What the ride lacks to say anything about the tables. */
    static List<Issue> lacks(Job job, Ride ride) {
        Table fuel = job.fuelTable().orElseThrow();
        Table target = job.targetTable().orElseThrow();
        List<Issue> issues = new ArrayList<>();
        if (ride.mixture().isEmpty() && !ride.hasTrims()) {
            issues.add(Issue.error(
                    ride.name(),
                    0,
                    0,
                    "the ride has neither a mixture nor a fuel trim: nothing in it says whether the fuel was right"
                            + leftOut(ride),
                    "name the column that holds lambda, AFR, short trim or long trim (--role \"COLUMN=lambda\"), give the scale of wideband volts (--volts V=LAMBDA, twice), or ride again with a wideband"
                            + (leftOut(ride).isEmpty()
                                    ? ""
                                    : "; where a sensor was fitted see to it, its heater and its wiring first")));
        }
        needs(ride, fuel.load().kind(), "fuel table", issues);
        if (target.load().kind() != fuel.load().kind()) {
            needs(ride, target.load().kind(), "target table", issues);
        }
        return issues;
    }

    /** Sensors are counted from the left: where the same ones stand in another order, a cylinder would be taken for its neighbour. */
    private static void checkOrderOfSensors(Job job, List<Issue> issues) {
        List<String> first = List.of();
        String firstRide = "";
        for (JobRide jobRide : job.rides()) {
            List<String> sensors = jobRide.ride().mixtures().stream()
                    .map(c -> c.heading().strip().toLowerCase(Locale.ROOT))
                    .toList();
            if (first.isEmpty() && sensors.size() > 1) {
                first = sensors;
                firstRide = jobRide.ride().name();
            } else if (sensors.size() == first.size()
                    && !sensors.equals(first)
                    && Set.copyOf(sensors).equals(Set.copyOf(first))) {
                issues.add(Issue.error(
                        jobRide.ride().name(),
                        0,
                        0,
                        "its mixture sensors stand in another order than in " + firstRide + ": "
                                + String.join(", ", sensors) + " instead of " + String.join(", ", first),
                        "put the columns in the same order in both, so that each cylinder is counted alike"));
            }
        }
    }

    private static void checkCylinder(Ride ride, Table fuel, Table madeWith, List<Issue> issues) {
        if (fuel.cylinder().isEmpty()) {
            return;
        }
        int cylinder = fuel.cylinder().getAsInt();
        List<Channel> sensors = ride.mixtures();
        if (sensors.size() > 1 && cylinder > sensors.size()) {
            issues.add(
                    Issue.error(
                            ride.name(),
                            0,
                            0,
                            "the fuel table feeds cylinder " + cylinder + ", but the ride has the mixture of "
                                    + sensors.size() + " only: "
                                    + sensors.stream().map(Channel::heading).collect(Collectors.joining(", ")),
                            "count the sensors from the left and give that number (--cylinder), or name the missing column (--role \"COLUMN=lambda\")"));
        }
        if (madeWith.cylinder().isPresent() && madeWith.cylinder().getAsInt() != cylinder) {
            issues.add(Issue.error(
                    ride.name(),
                    0,
                    0,
                    "the table this ride was made with feeds cylinder "
                            + madeWith.cylinder().getAsInt() + ", the fuel table cylinder " + cylinder,
                    "give the table of the same cylinder that was in the control unit on this ride"));
        }
    }

    /** Columns that would have told, each with why it was left out. */
    private static String leftOut(Ride ride) {
        return ride.channels().stream()
                .filter(c -> c.confidence() == Channel.Confidence.LEFT_OUT)
                .filter(c -> c.role().isMixture()
                        || Arrays.stream(Role.values())
                                .anyMatch(r -> r.isMixture() && c.remark().startsWith("looks like " + r.words())))
                .map(c -> "; " + c.heading() + " is left out: " + c.remark())
                .collect(Collectors.joining());
    }

    private static void needs(Ride ride, Axis.Kind kind, String table, List<Issue> issues) {
        Role role = RideNeeds.roleOf(kind);
        if (ride.channel(role).isEmpty()) {
            issues.add(Issue.error(
                    ride.name(),
                    0,
                    0,
                    "the " + table + " is indexed by " + kind.words() + ", but the ride has no such channel",
                    "name the column that holds it (--role \"COLUMN=" + role.words()
                            + "\"), or log it on the next ride"));
        }
    }

    /** The target as lambda: an AFR target is in the figures of the display. */
    static Table targetLambda(Job job) {
        return job.targetLambda().orElseThrow();
    }

    /** Says that every reading was screened out, and by what. */
    static Issue nothingLeft(List<ScreenedRide> screened) {
        Map<Screen, Integer> counts = new EnumMap<>(Screen.class);
        for (ScreenedRide ride : screened) {
            for (Screen screen : Screen.values()) {
                counts.merge(screen, ride.count(screen), Integer::sum);
            }
        }
        Map.Entry<Screen, Integer> most =
                counts.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow();
        return Issue.error(
                screened.get(0).ride().name(),
                0,
                0,
                "no reading is left as evidence; most were screened out by '"
                        + most.getKey().words() + "' (" + most.getValue() + " rows: "
                        + most.getKey().why() + ")",
                "ride longer with a warm engine and steadier throttle, or look at the screens");
    }

    private static String number(double value) {
        return java.math.BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
    }
}
