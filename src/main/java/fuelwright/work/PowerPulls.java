package fuelwright.work;

import fuelwright.airflow.PowerCorrection;
import fuelwright.handover.OutputException;
import fuelwright.handover.OutputFolder;
import fuelwright.handover.PowerFiles;
import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.job.Results;
import fuelwright.power.AirOfTheDay;
import fuelwright.power.PowerCurve;
import fuelwright.power.PowerCurves;
import fuelwright.power.Pull;
import fuelwright.power.PullComparison;
import fuelwright.power.RoadLoad;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Power curves of rides' pulls, the first pull of each compared with the first ride's. */
public final class PowerPulls {

    private PowerPulls() {}

    /**
     * @param road what road pulls are worked out with; empty: measured power or torque only
     * @param standard the reference air to correct to, with {@code air}
     * @param air the air of the day; both or neither
     */
    public record Settings(Optional<RoadLoad> road, Optional<PowerCorrection> standard, Optional<AirOfTheDay> air) {
        public Settings {
            if (standard.isPresent() && air.isEmpty()) {
                throw new IllegalArgumentException("air must be given with standard " + standard.get());
            }
        }
    }

    /**
     * @param curves curves of each ride, rides in the given order, none empty
     * @param comparisons the first ride's first pull with that of each other ride
     */
    public record Outcome(List<List<PowerCurve>> curves, List<PullComparison> comparisons) {
        public Outcome {
            curves = List.copyOf(curves);
            comparisons = List.copyOf(comparisons);
        }
    }

    /** @throws WorkException if a file can't be read at all */
    public static Loaded<Outcome> run(List<Path> files, RideOptions options, Settings settings) {
        List<Issue> issues = new ArrayList<>();
        List<Ride> rides = new ArrayList<>();
        for (Path file : files) {
            Loaded<Ride> loaded = OpenRide.read(file, options, Progress.NONE, Cancellation.NEVER);
            issues.addAll(loaded.issues());
            loaded.value().ifPresent(rides::add);
        }
        if (rides.size() < files.size()) {
            return Loaded.refused(issues);
        }
        List<Issue> unmet = GivenRoles.unmet(options, rides);
        if (!unmet.isEmpty()) {
            return Loaded.refused(unmet);
        }
        Loaded<Outcome> outcome = of(rides, settings);
        issues.addAll(outcome.issues());
        return new Loaded<>(outcome.value(), issues);
    }

    /** The same for rides that are read already. A pull that gives no curve is said; a ride without any curve is refused. */
    public static Loaded<Outcome> of(List<Ride> rides, Settings settings) {
        if (rides.isEmpty()) {
            return Loaded.refused(noRide());
        }
        List<Issue> issues = new ArrayList<>();
        List<List<PowerCurve>> curves = new ArrayList<>();
        for (Ride ride : rides) {
            List<Issue> why = new ArrayList<>();
            List<PowerCurve> ofRide = new ArrayList<>();
            for (Pull pull : Pull.in(ride)) {
                Loaded<PowerCurve> curve = PowerCurves.of(pull, settings.road());
                why.addAll(curve.issues());
                curve.value().map(c -> corrected(c, settings)).ifPresent(ofRide::add);
            }
            if (ofRide.isEmpty()) {
                issues.addAll(why.isEmpty() ? List.of(noPull(ride)) : why);
            } else {
                why.stream().map(PowerPulls::warning).forEach(issues::add);
                curves.add(ofRide);
            }
        }
        if (curves.size() < rides.size()) {
            return Loaded.refused(issues);
        }
        List<PullComparison> comparisons = new ArrayList<>();
        for (List<PowerCurve> other : curves.subList(1, curves.size())) {
            Loaded<PullComparison> compared = PullComparison.of(curves.get(0).get(0), other.get(0));
            compared.value().ifPresent(comparisons::add);
            compared.issues().stream().map(PowerPulls::warning).forEach(issues::add);
        }
        return Loaded.of(new Outcome(curves, comparisons), issues);
    }

    /**
     * The first and the last ride that have a curve; rides without one don't stand in the way.
     *
     * @return refused where no ride has one, with why not for each
     */
    public static Loaded<Outcome> firstAndLast(List<Ride> rides, Settings settings) {
        if (rides.isEmpty()) {
            return Loaded.refused(noRide());
        }
        List<Issue> issues = new ArrayList<>();
        List<Ride> good = new ArrayList<>();
        for (Ride ride : rides) {
            Loaded<Outcome> alone = of(List.of(ride), settings);
            if (alone.value().isPresent()) {
                good.add(ride);
            } else {
                issues.addAll(alone.issues());
            }
        }
        if (good.isEmpty()) {
            return Loaded.refused(issues);
        }
        Loaded<Outcome> together =
                of(good.size() > 1 ? List.of(good.get(0), good.get(good.size() - 1)) : good, settings);
        issues.replaceAll(PowerPulls::warning);
        issues.addAll(together.issues());
        return new Loaded<>(together.value(), issues);
    }

    /** Most power of their first pulls, from logged power or torque, as logged. */
    static List<Results.Peak> peaks(List<Ride> rides) {
        return firstAndLast(rides, new Settings(Optional.empty(), Optional.empty(), Optional.empty()))
                .value()
                .map(Outcome::curves)
                .orElse(List.of())
                .stream()
                .map(ofRide -> ofRide.get(0))
                .map(c -> new Results.Peak(
                        c.pull().ride().name(),
                        c.peakPower().powerKw(),
                        c.peakPower().errorKw(),
                        c.peakPower().rpm()))
                .toList();
    }

    private static Issue warning(Issue i) {
        return new Issue(Issue.Severity.WARNING, i.file(), 0, 0, i.said(), i.todo());
    }

    private static PowerCurve corrected(PowerCurve curve, Settings settings) {
        return settings.standard()
                .map(s -> settings.air().orElseThrow().corrected(curve, s))
                .orElse(curve);
    }

    private static Issue noRide() {
        return Issue.error(
                "",
                0,
                0,
                "No ride yet",
                "open one with a pull in it: full throttle from low engine speed upwards in one gear, on a dynamometer or a closed course");
    }

    private static Issue noPull(Ride ride) {
        for (Role role : List.of(Role.THROTTLE, Role.ENGINE_SPEED)) {
            if (ride.channel(role).isEmpty()) {
                return Issue.error(
                        ride.name(),
                        0,
                        0,
                        "No " + role.words() + " is logged, so no pull can be found",
                        "name its column if there is one; inspect lists them");
            }
        }
        return Issue.error(
                ride.name(),
                0,
                0,
                String.format(
                        Locale.ROOT,
                        "No pull found: %.0f %% throttle or more while engine speed rises by %.0f rpm or more in one gear",
                        Pull.FULL_THROTTLE_PERCENT,
                        Pull.LEAST_RISE_RPM),
                "open the throttle fully at low engine speed and hold it");
    }

    /**
     * Whether {@link #write} would be refused at once.
     *
     * @throws WorkException as {@code write} would
     */
    public static void check(Path folder, boolean replace) {
        try {
            OutputFolder.check(folder, PowerFiles.NAMES, replace);
        } catch (OutputException e) {
            throw HandOver.wrapped(e);
        }
    }

    /**
     * Writes curves and comparison, whole or not at all.
     *
     * @return the names of the files written
     * @throws WorkException if nothing could be written
     */
    public static List<String> write(Outcome outcome, Path folder, boolean replace) {
        return HandOver.write(PowerFiles.of(outcome.curves(), outcome.comparisons()), folder, replace);
    }
}
