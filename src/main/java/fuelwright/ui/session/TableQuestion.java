package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.job.PastTable;
import fuelwright.ride.Ride;
import fuelwright.table.Table;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import fuelwright.work.AnotherTable;
import fuelwright.work.TableInUnit;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * Rides that came after a table had left for the control unit, or into a job that has had more than one: with which of them they were made is
 * asked. Until it is answered they wait beside the job and nothing is proposed from them.
 */
public final class TableQuestion {

    /** What else than the job's fuel table may have been in the control unit. */
    public enum Other {
        /** The corrected table that was handed over. */
        HANDED,
        /** What a job that was opened from its file proposes: it may have been handed over another day. */
        PROPOSED,
        FIRST_RIDE;

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /**
     * An answer that was given, to be asked again where it is undone.
     *
     * @param other what was asked about
     */
    private record Given(Job before, Job after, List<Ride> rides, Other other) {}

    /** What is asked, and what waits for the answer: it belongs to one job and to no other. */
    record State(
            List<Ride> waiting,
            List<Given> given,
            Other other,
            Optional<LocalDateTime> leftAt,
            Analysis handed,
            Table firstRide,
            Table opened) {}

    private static final int MOST_NAMED = 3;
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("d MMM, HH:mm", Locale.ENGLISH);

    private final Session session;
    private final List<Given> given = new ArrayList<>();
    private final ReadOnlyObjectWrapper<List<Ride>> waiting = new ReadOnlyObjectWrapper<>(List.of());
    private Other other;
    private Optional<LocalDateTime> leftAt = Optional.empty();
    private Analysis handed;
    private Table firstRide;
    private Table opened;

    TableQuestion(Session session) {
        this.session = session;
    }

    /** A table left for the control unit. */
    void left(Analysis analysis) {
        left(Other.HANDED, analysis, null);
    }

    void left(Table firstRideTable) {
        left(Other.FIRST_RIDE, null, firstRideTable);
    }

    private void left(Other what, Analysis analysis, Table first) {
        other = what;
        leftAt = what == Other.HANDED || what == Other.FIRST_RIDE ? Optional.of(LocalDateTime.now()) : Optional.empty();
        handed = analysis;
        firstRide = first;
        opened = null;
    }

    /** Another job is there: nothing of the old one is asked any more. */
    void begin(boolean fromFile) {
        left(fromFile ? Other.PROPOSED : null, null, null);
        waiting.set(List.of());
        given.clear();
    }

    /** What is asked now, to be asked again when its job is shown again. */
    State state() {
        return new State(waiting.get(), List.copyOf(given), other, leftAt, handed, firstRide, opened);
    }

    /** The job that this was asked of is shown again. */
    void bring(State state) {
        other = state.other();
        leftAt = state.leftAt();
        handed = state.handed();
        firstRide = state.firstRide();
        opened = state.opened();
        given.clear();
        given.addAll(state.given());
        waiting.set(state.waiting());
    }

    /** The rides that wait don't come into the job. */
    public void leaveOut() {
        List<Ride> rides = take();
        if (!rides.isEmpty()) {
            unsay();
            session.say(Words.of(
                    "question.left", rides.stream().map(Ride::name).collect(Collectors.joining(", ")), rides.size()));
        }
    }

    private void unsay() {
        session.issues().removeIf(i -> i.todo().equals(Words.of("question.waiting.todo")));
    }

    /** A fuel table was opened: it is the newest, and nobody has to be asked whether new rides were made with it. */
    void opened(Table table) {
        opened = table;
    }

    /** What was handed over last. */
    Optional<Analysis> handed() {
        return Optional.ofNullable(handed);
    }

    /** Whether it isn't clear with which table a ride that comes now was made. */
    boolean arises() {
        Job job = session.job();
        if (job.fuelTable().isPresent() && !earlier().isEmpty()) {
            return true;
        }
        if (other == null || job.fuelTable().isEmpty()) {
            return false;
        }
        Table now = job.fuelTable().get();
        boolean newest = opened != null && AnotherTable.sameFigures(now, opened);
        boolean unridden = job.rides().isEmpty() && other == Other.PROPOSED;
        return !newest
                && !unridden
                && table().map(t -> !AnotherTable.sameFigures(now, t)).orElse(true);
    }

    /**
     * Tables that were in the control unit before the job's fuel table, the newest first: the newest table in the job isn't therefore the one that
     * a ride was made with.
     */
    public List<Table> earlier() {
        Job job = session.job();
        List<Table> all = new ArrayList<>();
        job.past().forEach(p -> all.add(0, p.table()));
        job.rides().forEach(r -> r.madeWith().ifPresent(all::add));
        List<Table> told = new ArrayList<>();
        for (Table table : all) {
            boolean another = job.fuelTable().filter(f -> canServe(f, table)).isPresent()
                    && told.stream().noneMatch(t -> AnotherTable.sameFigures(t, table));
            if (another) {
                told.add(table);
            }
        }
        return told;
    }

    private static boolean canServe(Table fuel, Table table) {
        return fuel.quantity() == table.quantity()
                && fuel.load().kind() == table.load().kind()
                && fuel.cylinder().equals(table.cylinder())
                && !AnotherTable.sameFigures(fuel, table);
    }

    /** The tables that were in the control unit, in their order, the job's fuel table last. */
    private List<Table> numbered() {
        Job job = session.job();
        List<Table> tables = new ArrayList<>();
        job.past().stream()
                .map(PastTable::table)
                .filter(t -> tables.stream().noneMatch(n -> AnotherTable.sameFigures(n, t)))
                .forEach(tables::add);
        job.fuelTable()
                .filter(t -> tables.stream().noneMatch(n -> AnotherTable.sameFigures(n, t)))
                .ifPresent(tables::add);
        return tables;
    }

    /** Which of the tables that were in the control unit it is, from 1; empty where it is none of them. */
    public OptionalInt number(Table table) {
        List<Table> numbered = numbered();
        return IntStream.range(0, numbered.size())
                .filter(i -> AnotherTable.sameFigures(numbered.get(i), table))
                .map(i -> i + 1)
                .findFirst();
    }

    /** A table of this job by its number and the rides that used it. */
    public String words(Table table) {
        OptionalInt number = number(table);
        boolean now = session.job()
                .fuelTable()
                .filter(t -> AnotherTable.sameFigures(t, table))
                .isPresent();
        String name = Words.of(
                now ? "question.number.now" : number.isPresent() ? "question.number" : "question.number.none",
                number.orElse(0));
        List<String> rides = ridesWith(table);
        return name + " "
                + (rides.isEmpty()
                        ? Words.of("question.unridden")
                        : Words.of(
                                "question.ridden",
                                rides.stream().limit(MOST_NAMED).collect(Collectors.joining(", ")),
                                Math.max(0, rides.size() - MOST_NAMED)));
    }

    /** The other table: the number it would have, what it is, and when it left. */
    public String otherWords() {
        String what = Words.of("question." + other.key());
        return Words.of("question.number.of", numbered().size() + 1, what)
                + leftAt.map(t -> " " + Words.of("question.left.at", t.format(WHEN)))
                        .orElse("");
    }

    /** Rides of the job that were made with a table, by which it is known. */
    public List<String> ridesWith(Table table) {
        return session.job().rides().stream()
                .filter(r -> r.madeWith()
                        .or(() -> session.job().fuelTable())
                        .filter(t -> AnotherTable.sameFigures(t, table))
                        .isPresent())
                .map(r -> r.ride().name())
                .toList();
    }

    void ask(List<Ride> rides) {
        List<Ride> all = new ArrayList<>(waiting.get());
        all.addAll(rides);
        waiting.set(List.copyOf(all));
    }

    /** The rides that wait, taken out of the queue. */
    List<Ride> take() {
        List<Ride> all = waiting.get();
        waiting.set(List.of());
        return all;
    }

    /** An answer has made one job out of another. */
    void answered(Job before, List<Ride> rides, Other asked) {
        if (!rides.isEmpty()) {
            given.add(new Given(before, session.job(), rides, asked));
        }
    }

    /** Undo or redo has gone from one job to another: where it took an answer back, its rides wait again. */
    void stepped(Job from, Job to) {
        for (Given answer : given) {
            if (answer.after() == from && answer.before() == to) {
                other = other == null ? answer.other() : other;
                ask(answer.rides());
            } else if (answer.before() == from && answer.after() == to) {
                List<Ride> left = new ArrayList<>(waiting.get());
                left.removeAll(answer.rides());
                waiting.set(List.copyOf(left));
            }
        }
    }

    /** The other table; empty while it is being worked out. */
    private Optional<Table> table() {
        if (other == Other.FIRST_RIDE) {
            return Optional.of(firstRide);
        }
        return corrected().map(TableInUnit::table);
    }

    private Optional<Analysis> corrected() {
        return other == Other.HANDED
                ? handed()
                : Optional.ofNullable(session.analysis())
                        .filter(a -> !session.staleProperty().get() && a.job().equals(session.job()));
    }

    /** What else than the job's fuel table may have been in the control unit; null where nothing is known. */
    public Other other() {
        return other;
    }

    /** Whether the other table is there to be chosen. */
    public boolean canBeOther() {
        return other != null && table().isPresent();
    }

    /** The rides that wait were made with the job's fuel table. */
    public void madeWithFuelTable() {
        Other asked = other;
        if (other == Other.PROPOSED) {
            other = null;
        }
        add(session.job(), asked);
    }

    /** The rides that wait were made with the other one: it is the job's fuel table from now on, and earlier rides keep theirs. */
    public void madeWithOther() {
        Job job = session.job();
        Table now = table().orElseThrow();
        add(
                other == Other.FIRST_RIDE
                        ? AnotherTable.opened(job, now).job()
                        : TableInUnit.after(corrected().orElseThrow(), job),
                other);
    }

    /** The rides that wait were made with an earlier table of this job. */
    public void madeWithEarlier(Table table) {
        add(session.job(), Optional.of(table), other);
    }

    private void add(Job base, Other asked) {
        add(base, Optional.empty(), asked);
    }

    private void add(Job base, Optional<Table> madeWith, Other asked) {
        Job before = session.job();
        Job job = base;
        List<Ride> rides = take();
        for (Ride ride : rides) {
            job = job.withRide(new JobRide(ride, madeWith));
        }
        Job all = job;
        unsay();
        session.edit(old -> all);
        answered(before, rides, asked);
    }

    /** Rides that wait for an answer. */
    public ReadOnlyObjectProperty<List<Ride>> waitingProperty() {
        return waiting.getReadOnlyProperty();
    }
}
