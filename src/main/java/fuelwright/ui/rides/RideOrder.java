package fuelwright.ui.rides;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Ride;
import fuelwright.table.Table;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The rides of the job as a list: their order, taking one out, and the table that each was made with. */
public final class RideOrder {

    private final RidesModel model;

    RideOrder(RidesModel model) {
        this.model = model;
    }

    /** Takes the selected ride out of the job. */
    public void remove() {
        model.ride().ifPresent(ride -> model.session().edit(job -> without(job, ride)));
    }

    private static Job without(Job job, Ride ride) {
        return job.withRides(job.rides().stream().filter(r -> r.ride() != ride).toList());
    }

    /** Moves the selected ride up (−1) or down (+1) in the order of the job. */
    public void move(int by) {
        int from = model.index();
        int to = from + by;
        if (from >= 0 && to >= 0 && to < model.rides().size()) {
            List<JobRide> order = new ArrayList<>(model.rides());
            order.add(to, order.remove(from));
            model.session().edit(job -> job.withRides(order));
            model.selectedProperty().set(to);
        }
    }

    /** The tables that the selected ride may have been made with: the one now, then the past ones, newest first. */
    List<Optional<Table>> tables() {
        List<Optional<Table>> tables = new ArrayList<>();
        tables.add(Optional.empty());
        for (int i = model.session().job().past().size() - 1; i >= 0; i--) {
            tables.add(Optional.of(model.session().job().past().get(i).table()));
        }
        model.jobRide().map(JobRide::madeWith).filter(t -> !tables.contains(t)).ifPresent(tables::add);
        return tables;
    }

    /** What a table of {@link #tables} is called. */
    String tableWords(Optional<Table> table) {
        Optional<Table> fuel = model.session().job().fuelTable();
        if (table.isEmpty() && fuel.isEmpty()) {
            return Words.of("rides.made.none");
        }
        boolean alone = model.session().job().past().isEmpty();
        if (table.isEmpty() && alone) {
            return Words.of("rides.made.now");
        }
        OptionalInt number =
                model.session().question().number(table.or(() -> fuel).orElseThrow());
        return number.isEmpty()
                ? Words.of("rides.made.other")
                : Words.of(table.isEmpty() ? "rides.made.newest" : "rides.made.past", number.getAsInt());
    }

    /** The table that a ride of the job was made with. */
    Optional<Table> madeWith(int index) {
        return model.rides().get(index).madeWith();
    }

    /** Says with which table the selected ride was made: its readings are judged by that. */
    public void madeWith(Optional<Table> table) {
        JobRide old = model.jobRide().orElse(null);
        if (old != null && !old.madeWith().equals(table)) {
            JobRide now = new JobRide(old.ride(), table, old.source());
            model.session()
                    .edit(job -> job.withRides(
                            job.rides().stream().map(r -> r == old ? now : r).toList()));
        }
    }
}
