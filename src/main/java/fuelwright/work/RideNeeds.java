package fuelwright.work;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** What a ride must have to say anything about a job's tables: a mixture or a trim, and the loads that the tables are indexed by. */
public final class RideNeeds {

    private RideNeeds() {}

    /** What every log of the job has to have a column for; the mixture stands as lambda. */
    public static Set<Role> of(Job job) {
        Set<Role> roles = new TreeSet<>(Set.of(Role.TIME, Role.ENGINE_SPEED, Role.LAMBDA));
        roles.addAll(loads(job));
        if (job.fuelTable().isEmpty() && job.targetTable().isEmpty()) {
            roles.add(Role.THROTTLE);
        }
        return roles;
    }

    private static Set<Role> loads(Job job) {
        Set<Role> roles = new TreeSet<>();
        job.fuelTable().ifPresent(t -> roles.add(roleOf(t.load().kind())));
        job.targetTable().ifPresent(t -> roles.add(roleOf(t.load().kind())));
        return roles;
    }

    static Role roleOf(Axis.Kind load) {
        return load == Axis.Kind.THROTTLE ? Role.THROTTLE : Role.MANIFOLD_PRESSURE;
    }

    /** What the ride lacks of what the job's tables need; the mixture stands as lambda. */
    public static List<Role> missing(Job job, Ride ride) {
        List<Role> missing = new ArrayList<>();
        loads(job).stream().filter(r -> ride.channel(r).isEmpty()).forEach(missing::add);
        if (ride.mixture().isEmpty() && !ride.hasTrims()) {
            missing.add(Role.LAMBDA);
        }
        return missing;
    }

    /** Rides that say nothing about the tables while others do: the analysis goes on without them, and says so. */
    public static List<JobRide> leftOut(Job job) {
        List<JobRide> lacking = job.rides().stream()
                .filter(r -> !missing(job, r.ride()).isEmpty())
                .toList();
        return lacking.size() == job.rides().size() ? List.of() : lacking;
    }
}
