package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Channel;
import fuelwright.ride.ColumnLooks;
import fuelwright.ride.LogColumn;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.work.RideNeeds;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.WeakHashMap;
import java.util.concurrent.ConcurrentHashMap;

/** What rides of a job lack although one of their columns, of which nothing is known, may be it. */
public final class RideLacks {

    /** A screen and the channel that it goes by. */
    private record Need(Screen screen, Role role) {}

    private static final List<Need> NEEDS =
            List.of(new Need(Screen.TOO_COLD, Role.COOLANT), new Need(Screen.THROTTLE_MOVING, Role.THROTTLE));

    /**
     * A screen that lacks its channel on a ride, and the column that looks like it.
     *
     * @param column its figures as they stand in the file
     */
    public record Doubt(Ride ride, Screen screen, Role role, LogColumn column) {}

    /**
     * Roles that a ride needs and hasn't got.
     *
     * @param roles the mixture stands as lambda
     * @param columns of which nothing is known
     */
    public record Lack(Ride ride, List<Role> roles, List<LogColumn> columns) {}

    /** What a ride's columns look like is worked out once: it is asked for at every change. */
    private static final Map<Ride, Looked> LOOKED = Collections.synchronizedMap(new WeakHashMap<>());

    /**
     * What a ride's columns look like.
     *
     * @param unknown columns of which nothing is known
     * @param like by what is missing
     */
    private record Looked(List<LogColumn> unknown, Map<Role, Optional<LogColumn>> like) {

        static Looked of(Ride ride) {
            return new Looked(
                    ride.channels().stream()
                            .filter(c -> c.role() == Role.OTHER && hasFigures(c))
                            .map(LogColumn::of)
                            .toList(),
                    new ConcurrentHashMap<>());
        }
    }

    private RideLacks() {}

    private static Looked looked(Ride ride) {
        return LOOKED.computeIfAbsent(ride, Looked::of);
    }

    /** The column that looks like a role, of those of which nothing is known and nothing was said. */
    private static Optional<LogColumn> like(Ride ride, Role role, RideOptions said) {
        Looked looked = looked(ride);
        return looked.like()
                .computeIfAbsent(
                        role,
                        r -> ColumnLooks.best(
                                r,
                                looked.unknown().stream()
                                        .filter(c -> !said.roles().containsKey(c.heading()))
                                        .toList()));
    }

    private static boolean hasFigures(Channel channel) {
        return !LogColumn.of(channel).examples().isEmpty();
    }

    /** Rides of which nothing counts until more is said, the ones first that came first. */
    public static List<Lack> lacks(Session session) {
        Job job = session.job();
        List<Lack> all = new ArrayList<>();
        for (JobRide each : job.rides()) {
            Ride ride = each.ride();
            List<Role> missing = RideNeeds.missing(job, ride).stream()
                    .filter(r -> !r.isMixture()
                            || ride.channels().stream().noneMatch(c -> c.role().isMixture()))
                    .toList();
            List<LogColumn> columns =
                    missing.isEmpty() ? List.of() : looked(ride).unknown();
            if (!missing.isEmpty() && !columns.isEmpty() && session.reading().canBeRead(ride)) {
                all.add(new Lack(ride, missing, columns));
            }
        }
        return all;
    }

    /** Rides that are left out while others count, none of whose columns could be what they lack. */
    public static List<Lack> useless(Session session) {
        Job job = session.job();
        List<Ride> asked = lacks(session).stream().map(Lack::ride).toList();
        return RideNeeds.leftOut(job).stream()
                .map(JobRide::ride)
                .filter(ride -> !asked.contains(ride))
                .map(ride -> new Lack(ride, RideNeeds.missing(job, ride), List.of()))
                .toList();
    }

    /** Screens that could work if a column is what it looks like; one for each ride and screen. */
    public static List<Doubt> doubts(Session session) {
        Job job = session.job();
        List<Doubt> doubts = new ArrayList<>();
        for (JobRide each : job.rides()) {
            Ride ride = each.ride();
            for (Need need : NEEDS) {
                boolean lacks = job.screens().isOn(need.screen())
                        && ride.channel(need.role()).isEmpty()
                        && !RideNeeds.missing(job, ride).contains(need.role())
                        && session.reading().canBeRead(ride);
                Optional<LogColumn> like =
                        lacks ? like(ride, need.role(), session.reading().options(ride)) : Optional.empty();
                like.ifPresent(column -> doubts.add(new Doubt(ride, need.screen(), need.role(), column)));
            }
        }
        return doubts;
    }
}
