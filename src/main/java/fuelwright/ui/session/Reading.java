package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.ClockAlignment;
import fuelwright.ride.LogForm;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ui.theme.Words;
import fuelwright.work.SecondLogger;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

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

    /** Whether some of how a ride was read was remembered from an earlier log with the same headings. */
    public boolean remembered(Ride ride) {
        return book.origin(ride).filter(RideBook.Origin::remembered).isPresent();
    }

    /** Whether the ride can be read again: it is known where it came from. */
    public boolean canBeRead(Ride ride) {
        return book.origin(ride).isPresent();
    }

    /**
     * Reads a ride again, with something else said about its columns. What is said then is remembered for the next log with the same
     * headings.
     */
    public void again(Ride ride, UnaryOperator<RideOptions> change) {
        boolean own = book.origin(ride).flatMap(RideBook.Origin::file).isPresent();
        again(List.of(ride), change, UnaryOperator.identity(), read -> {
            if (own) {
                read.origins().forEach((now, origin) -> remember(now, origin.options()));
            }
        });
    }

    private void remember(Ride ride, RideOptions options) {
        List<String> headings = ride.form().map(LogForm::headings).orElse(List.of());
        if (!headings.isEmpty()) {
            session.look(
                    "look-recipe",
                    (p, c) -> {
                        services.remember(headings, options);
                        return headings;
                    },
                    done -> {});
        }
    }

    /** Forgets what is remembered about logs like this one and reads it again as if nothing had ever been said. */
    public void forget(Ride ride) {
        again(ride, options -> RideOptions.defaults());
    }

    /** The second logger that was added to a ride. */
    public Optional<SecondLogger> second(Ride ride) {
        return book.origin(ride).flatMap(RideBook.Origin::second);
    }

    /** Adds the log of a second logger to a ride; refused in words where the two don't match. */
    public void addSecond(Ride ride, Path file) {
        RideOptions options = options(ride);
        ToldRatios told = ToldRatios.of(session.job(), book);
        RideOptions[] said = {options};
        errand.run(
                "open",
                Duration.ZERO,
                Words.of("doing.aligning"),
                (p, c) -> {
                    // A display of its own: what was told of the first one's says nothing of it.
                    said[0] = options.withSecondAfrScale(
                            services.remembered(file, told.of(file)).afrScale());
                    return services.readSecond(ride, file, said[0], Optional.empty(), p, c);
                },
                loaded -> {
                    notices.errorsOnly(loaded.issues());
                    loaded.value().ifPresent(second -> put(ride, Optional.of(second), second.together(), said[0]));
                });
    }

    /** Lays a second log beside its ride as the user says. */
    public void align(Ride ride, UnaryOperator<ClockAlignment> change) {
        second(ride).ifPresent(second -> {
            SecondLogger moved = second.aligned(change.apply(second.alignment()));
            session.look(
                    "look-align",
                    (p, c) -> moved.together(),
                    together -> put(ride, Optional.of(moved), together, options(ride)));
        });
    }

    /** Takes a second log away again. */
    public void withoutSecond(Ride ride) {
        RideOptions alone = options(ride).withSecondAfrScale(OptionalDouble.empty());
        second(ride).ifPresent(second -> put(ride, Optional.empty(), second.first(), alone));
    }

    private void put(Ride old, Optional<SecondLogger> second, Ride now, RideOptions options) {
        RideBook.Origin before =
                book.origin(old).orElse(new RideBook.Origin(Optional.empty(), RideOptions.defaults(), false));
        book.note(now, new RideBook.Origin(before.file(), options, before.remembered(), second));
        session.edit(job -> job.withRides(job.rides().stream()
                .map(r -> r.ride() == old ? new JobRide(now, r.madeWith(), r.source()) : r)
                .toList()));
    }

    /**
     * Reads a ride, and those whose logs have the same headings, as ones from an AFR display set to this ratio.
     *
     * @param ofSecond whether it is the display of the second logger
     */
    public void setDisplayRatio(Ride ride, boolean ofSecond, double ratio) {
        List<List<String>> headings = headings(ride);
        List<Ride> rides = session.job().rides().stream()
                .map(JobRide::ride)
                .filter(r -> r == ride || r.form().isPresent() && headings(r).equals(headings))
                .filter(r -> log(r, ofSecond).flatMap(l -> l.channel(Role.AFR)).isPresent())
                .toList();
        again(
                rides,
                options ->
                        ofSecond ? options.withSecondAfrScale(OptionalDouble.of(ratio)) : options.withAfrScale(ratio),
                job -> job.withDisplayRatio(ratio),
                read -> {});
    }

    /** A ride's own log, or that of its second logger. */
    public Optional<Ride> log(Ride ride, boolean ofSecond) {
        return ofSecond
                ? second(ride).map(SecondLogger::second)
                : Optional.of(second(ride).map(SecondLogger::first).orElse(ride));
    }

    /** Those of the ride's log and of its second logger's. */
    private List<List<String>> headings(Ride ride) {
        return Stream.concat(Stream.of(ride), second(ride).map(SecondLogger::second).stream())
                .map(r -> r.form().map(LogForm::headings).orElse(List.of()))
                .toList();
    }

    /** Nothing changes where one of them can't be read that way. */
    private void again(
            List<Ride> rides,
            UnaryOperator<RideOptions> change,
            UnaryOperator<Job> more,
            Consumer<RideBook.Read> then) {
        errand.run("open", Duration.ZERO, Words.of("doing.reading"), book.reading(rides, change, services), read -> {
            notices.errorsOnly(read.issues());
            if (notices.all().isEmpty()) {
                book.note(read);
                session.edit(job -> more.apply(read.in(job)));
                then.accept(read);
            }
        });
    }
}
