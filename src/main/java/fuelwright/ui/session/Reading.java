package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ui.theme.Words;
import java.time.Duration;
import java.util.List;
import java.util.function.UnaryOperator;

/** How the rides of the job were read, and reading them again in another way. */
public final class Reading {

    private final Session session;
    private final Services services;
    private final Errand errand;
    private final Notices notices;
    private final RideBook book;

    Reading(Session session, Services services, Errand errand, Notices notices, RideBook book) {
        this.session = session;
        this.services = services;
        this.errand = errand;
        this.notices = notices;
        this.book = book;
    }

    /** How a ride was read. */
    public RideOptions options(Ride ride) {
        return book.options(ride);
    }

    /** Reads a ride again, with something else said about its columns. */
    public void again(Ride ride, UnaryOperator<RideOptions> change) {
        again(List.of(ride), change, UnaryOperator.identity());
    }

    /** Reads every ride that has an AFR column as one from a display set to this ratio. */
    public void setDisplayRatio(double ratio) {
        List<Ride> rides = session.job().rides().stream()
                .map(JobRide::ride)
                .filter(r -> r.channel(Role.AFR).isPresent())
                .toList();
        again(rides, options -> options.withAfrScale(ratio), job -> job.withDisplayRatio(ratio));
    }

    /** Nothing changes where one of them can't be read that way. */
    private void again(List<Ride> rides, UnaryOperator<RideOptions> change, UnaryOperator<Job> more) {
        errand.run("open", Duration.ZERO, Words.of("doing.reading"), book.reading(rides, change, services), read -> {
            notices.errorsOnly(read.issues());
            if (notices.all().isEmpty()) {
                book.note(read);
                session.edit(job -> more.apply(read.in(job)));
            }
        });
    }
}
