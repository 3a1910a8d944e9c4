package fuelwright.ui.rides;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ride.WidebandScale;
import fuelwright.safety.Caution;
import fuelwright.screen.ScreenedRide;
import fuelwright.ui.plot.Trace;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.RideTrace;
import fuelwright.ui.session.Runner;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Dimension;
import fuelwright.unit.Unit;
import fuelwright.work.Analysis;
import fuelwright.work.SecondLogger;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleIntegerProperty;

/** The stage Rides without its looks. */
public final class RidesModel {

    /** Lambda that a wideband's output can stand for: free air reads as 8 or so. */
    static final double LEAST_LAMBDA = 0.3;

    static final double MOST_LAMBDA = 10;

    private static final double LEAST_VOLTS_APART = 0.01;

    /** What the reader says of volts whose scale it would have to be told. */
    static final String SCALE_OPTION = "--volts";

    private static final String LANE = Runner.LOOK + "-ride";

    private final Session session;
    private final IntegerProperty selected = new SimpleIntegerProperty(0);
    private final ReadOnlyObjectWrapper<Trace> trace = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<RidePicture> picture = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyBooleanWrapper any = new ReadOnlyBooleanWrapper();
    private final ReadOnlyStringWrapper summary = new ReadOnlyStringWrapper("");
    private final ScreensModel screens;
    private final RideOrder order = new RideOrder(this);
    private final DisplayRatio ratio = new DisplayRatio(this, false);
    private final DisplayRatio secondRatio = new DisplayRatio(this, true);
    /** What the picture is of, so that it is made anew only where something in it changed. */
    private List<Object> pictured = List.of();

    public RidesModel(Session session) {
        this.session = session;
        this.screens = new ScreensModel(session);
        screens.screenedProperty().addListener((p, old, now) -> shade());
        session.jobProperty().addListener((p, old, now) -> update());
        session.analysisProperty().addListener((p, old, now) -> update());
        session.whenShownOtherwise(this::update);
        selected.addListener((p, old, now) -> update());
        session.momentProperty().addListener((p, old, now) -> moment(now));
        update();
        moment(session.momentProperty().get());
    }

    private void moment(Caution.Moment moment) {
        if (moment != null && moment.ride() < rides().size()) {
            selected.set(moment.ride());
        }
    }

    public List<JobRide> rides() {
        return session.job().rides();
    }

    /** The place of the ride that is looked at; −1 where there is none. */
    public int index() {
        return Math.min(Math.max(0, selected.get()), rides().size() - 1);
    }

    /** The ride that is looked at. */
    public Optional<Ride> ride() {
        return jobRide().map(JobRide::ride);
    }

    Optional<JobRide> jobRide() {
        return index() < 0 ? Optional.empty() : Optional.of(rides().get(index()));
    }

    private void update() {
        Job job = session.job();
        Optional<JobRide> ride = jobRide();
        Mixture notation = session.mixture();
        Measures measures = session.measuresProperty().get();
        List<Object> now = ride.isEmpty()
                ? List.of()
                : List.of(
                        ride.get().ride(),
                        ride.get().madeWith(),
                        job.fuelTable(),
                        job.targetTable(),
                        notation,
                        measures);
        if (!now.equals(pictured)) {
            pictured = now;
            if (ride.isEmpty()) {
                session.look(LANE, (p, c) -> Optional.<RidePicture>empty(), this::pictured);
                pictured(Optional.empty());
            } else {
                session.look(
                        LANE,
                        (p, c) -> Optional.of(
                                RidePicture.of(ride.get(), job.fuelTable(), job.targetTable(), notation, measures)),
                        this::pictured);
            }
        }
        any.set(ride.isPresent());
        screens.show(ride.orElse(null));
        shade();
    }

    private void pictured(Optional<RidePicture> now) {
        picture.set(now.orElse(null));
        shade();
    }

    /** Lays what is screened out, and what is warned of, over the lanes. */
    private void shade() {
        Optional<ScreenedRide> screened = screens.screenedProperty().get();
        RidePicture now = picture.get();
        summary.set(ride().map(r -> summary(r, screened.filter(s -> s.ride().isOf(r))))
                .orElse(""));
        if (now == null) {
            trace.set(null);
            return;
        }
        List<Trace.Mark> marks = marks(now);
        Analysis analysis = session.staleProperty().get() ? null : session.analysis();
        Mixture notation = session.mixture();
        if (trace.get() == null || trace.get().clock() != now.lanes().clock()) {
            trace.set(now.lanes());
        }
        session.look(
                LANE + "-shade",
                (p, c) -> RideTrace.shaded(
                        expecting(now, analysis, notation),
                        screened.filter(s -> s.ride().isOf(now.ride())),
                        marks),
                shaded -> {
                    if (picture.get() == now) {
                        trace.set(shaded);
                    }
                });
    }

    /** The lanes with the expected mixture, where the analysis has the ride. */
    private static Trace expecting(RidePicture of, Analysis analysis, Mixture notation) {
        if (analysis != null) {
            for (int i = 0; i < analysis.screened().size(); i++) {
                Ride heard = analysis.screened().get(i).ride();
                if (heard.isOf(of.ride())) {
                    return RideTrace.expecting(of.lanes(), heard, analysis.expectedMixture(i), notation);
                }
            }
        }
        return of.lanes();
    }

    private List<Trace.Mark> marks(RidePicture of) {
        Analysis analysis = session.analysis();
        List<Trace.Mark> marks = new ArrayList<>();
        if (analysis != null) {
            analysis.cautions()
                    .forEach(caution -> caution.moments().stream()
                            .filter(m -> isOf(analysis, m, of.ride()))
                            .forEach(m -> {
                                double from = of.lanes().clock().shown(m.startS());
                                marks.add(new Trace.Mark(
                                        from,
                                        from + m.lengthS(),
                                        caution.isStop(),
                                        caution.level().words() + ": " + caution.title()));
                            }));
        }
        return marks;
    }

    private static boolean isOf(Analysis analysis, Caution.Moment moment, Ride ride) {
        return moment.ride() < analysis.screened().size()
                && analysis.screened().get(moment.ride()).ride().isOf(ride);
    }

    /** Looks at the moment behind a mark. */
    public void choose(Trace.Mark mark) {
        Analysis analysis = session.analysis();
        RidePicture of = picture.get();
        if (analysis != null && of != null) {
            analysis.cautions().stream()
                    .flatMap(c -> c.moments().stream())
                    .filter(m -> isOf(analysis, m, of.ride())
                            && of.lanes().clock().shown(m.startS()) == mark.fromS()
                            && m.lengthS() == mark.toS() - mark.fromS())
                    .findFirst()
                    .ifPresent(session.momentProperty()::set);
        }
    }

    /** Whether a Stop caution has this moment; what no caution has any more counts as one, too. */
    boolean isOfStop(Caution.Moment moment) {
        List<Caution> having = session.analysis() == null
                ? List.of()
                : session.analysis().cautions().stream()
                        .filter(c -> c.moments().contains(moment))
                        .toList();
        return having.isEmpty() || having.stream().anyMatch(Caution::isStop);
    }

    private String summary(Ride ride, Optional<ScreenedRide> screened) {
        String holds = Words.of(
                "rides.summary",
                ride.name(),
                Figures.span(ride.durationS()),
                Figures.count(ride.size()),
                order.tableWords(order.madeWith(index())));
        return screened.map(s -> holds + " "
                        + Words.of(
                                "rides.summary.kept",
                                Figures.count(s.kept()),
                                Figures.plain(100.0 * s.kept() / Math.max(1, ride.size()), 0)))
                .orElse(holds);
    }

    /** What a column can be taken for: anything but time, which the reader finds by itself. */
    List<Role> rolesFor(Channel channel) {
        return Stream.of(Role.values())
                .filter(r -> r != Role.TIME || channel.role() == Role.TIME)
                .toList();
    }

    /** Takes a column for something else: the ride is read again. */
    public void role(Channel channel, Role role) {
        if (role != channel.role()) {
            read(options -> options.withRole(channel.heading(), role));
        }
    }

    /** Units that the figures of a column could be in. */
    List<Unit> unitsFor(Channel channel) {
        return Stream.of(Unit.values())
                .filter(u -> u.dimension() == channel.role().dimension()
                        || u == channel.unit()
                        || channel.role() == Role.THROTTLE && u.dimension() == Dimension.VOLTAGE)
                .filter(u -> channel.role() != Role.OTHER || u == channel.unit())
                .toList();
    }

    /** Takes the figures of a column for another unit: the ride is read again. */
    public void unit(Channel channel, Unit unit) {
        if (unit != channel.unit()) {
            read(options -> options.withUnit(channel.heading(), unit));
        }
    }

    /** Reads the selected ride again with something else said about it. */
    public void read(UnaryOperator<RideOptions> change) {
        ride().ifPresent(r -> session.reading().again(r, change));
    }

    /** Takes another column for the time. */
    void time(String old, String heading) {
        read(options -> {
            RideOptions other = options.roles().get(old) == Role.TIME ? options.withRole(old, Role.OTHER) : options;
            return other.withRole(heading, Role.TIME);
        });
    }

    /** Forgets what was said about logs like the selected one, and reads it as if nothing had been said. */
    public void forget() {
        ride().ifPresent(session.reading()::forget);
    }

    /** The second logger of the selected ride. */
    public Optional<SecondLogger> second() {
        return ride().flatMap(session.reading()::second);
    }

    /** Adds the log of a second logger to the selected ride. */
    public void addSecond(Path file) {
        ride().ifPresent(r -> session.reading().addSecond(r, file));
    }

    /** Moves the second log of the selected ride later. */
    public void nudge(double byS) {
        ride().ifPresent(r -> session.reading().align(r, a -> a.nudged(byS)));
    }

    /** Lets the second clock run faster, its middle staying where it is. */
    public void drift(double by) {
        second().ifPresent(s -> {
            double middle =
                    (s.second().timeS().at(0) + s.second().timeS().at(s.second().size() - 1)) / 2;
            session.reading().align(ride().orElseThrow(), a -> a.drifting(a.drift() + by, middle));
        });
    }

    /** Takes the second log of the selected ride away. */
    public void withoutSecond() {
        ride().ifPresent(session.reading()::withoutSecond);
    }

    /** What was said about the selected ride. */
    public RideOptions options() {
        return ride().map(session.reading()::options).orElse(RideOptions.defaults());
    }

    /** Channels, those that are worth a look first, those left out or not used last. */
    List<Channel> channelsByDoubt(Ride ride) {
        return ride.channels().stream()
                .sorted(Comparator.comparingInt(RidesModel::rank))
                .toList();
    }

    private static int rank(Channel channel) {
        return switch (channel.confidence()) {
            case LOOK -> 0;
            case SURE -> channel.role() == Role.OTHER ? 2 : 1;
            case LEFT_OUT -> channel.role() == Role.OTHER ? 3 : 1;
        };
    }

    /** Mixture sensors of the selected ride, where it matters which cylinder the fuel table feeds; else none. */
    public List<Channel> sensorsToChooseFrom() {
        boolean said = cylinder() > 0;
        return session.job().fuelTable().isEmpty()
                ? List.of()
                : ride().map(Ride::mixtures).filter(m -> m.size() > 1 || said).orElse(List.of());
    }

    /** The cylinder that the fuel table feeds; 0 for all. */
    public int cylinder() {
        return session.job().fuelTable().map(t -> t.cylinder().orElse(0)).orElse(0);
    }

    /** Says which cylinder the fuel table feeds; 0 for all. */
    public void cylinder(int number) {
        if (number != cylinder()) {
            session.edit(job -> job.withFuelTable(job.fuelTable()
                    .orElseThrow()
                    .ofCylinder(number == 0 ? OptionalInt.empty() : OptionalInt.of(number))));
        }
    }

    /** What the AFR display of the selected ride's log is set to. */
    DisplayRatio ratio() {
        return ratio;
    }

    /** The same of its second logger's. */
    DisplayRatio secondRatio() {
        return secondRatio;
    }

    /** Whether the selected ride has wideband volts that mean nothing without their scale, or mean what was said. */
    public boolean asksForScale() {
        Optional<Ride> ride = ride();
        boolean leftOut = ride.stream()
                .flatMap(r -> r.remarks().stream())
                .anyMatch(remark -> remark.todo().contains(SCALE_OPTION));
        return leftOut
                || options().widebandScale().isPresent()
                        && ride.stream()
                                .flatMap(r -> r.mixtures().stream())
                                .anyMatch(c -> c.role() == Role.WIDEBAND_VOLTS);
    }

    /**
     * Takes the scale of the selected ride's wideband volts as typed, and reads it again; false where it can't be one.
     *
     * @param typed volts and lambda of one point, volts and lambda of another
     */
    public boolean widebandScale(List<String> typed) {
        double[] figures;
        try {
            figures = typed.stream()
                    .mapToDouble(t -> Double.parseDouble(t.strip().replace(',', '.')))
                    .toArray();
        } catch (NumberFormatException e) {
            return false;
        }
        double apart = Math.abs(figures[0] - figures[2]);
        if (!(apart > LEAST_VOLTS_APART && apart < Double.POSITIVE_INFINITY)
                || !isLambda(figures[1])
                || !isLambda(figures[3])
                || figures[1] == figures[3]) {
            return false;
        }
        WidebandScale scale = new WidebandScale(figures[0], figures[1], figures[2], figures[3]);
        read(options -> options.withWidebandScale(scale));
        return true;
    }

    private static boolean isLambda(double figure) {
        return figure >= LEAST_LAMBDA && figure <= MOST_LAMBDA;
    }

    public IntegerProperty selectedProperty() {
        return selected;
    }

    /** Null where there is no ride, or until its lanes are made. */
    public ReadOnlyObjectProperty<Trace> traceProperty() {
        return trace.getReadOnlyProperty();
    }

    /** What is drawn of the selected ride whatever its screens; null until it is made. */
    ReadOnlyObjectProperty<RidePicture> pictureProperty() {
        return picture.getReadOnlyProperty();
    }

    /** The order of the rides, and the tables they were made with. */
    public RideOrder order() {
        return order;
    }

    /** The screens of the selected ride. */
    public ScreensModel screens() {
        return screens;
    }

    /** Whether there is a ride. */
    public ReadOnlyBooleanProperty anyProperty() {
        return any.getReadOnlyProperty();
    }

    public ReadOnlyStringProperty summaryProperty() {
        return summary.getReadOnlyProperty();
    }

    public Session session() {
        return session;
    }
}
