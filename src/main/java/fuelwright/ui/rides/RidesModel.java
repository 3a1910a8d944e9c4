package fuelwright.ui.rides;

import fuelwright.job.Job;
import fuelwright.job.JobRide;
import fuelwright.ride.Channel;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.safety.Caution;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.ui.plot.Trace;
import fuelwright.ui.session.RideTrace;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleIntegerProperty;

/** The stage Rides without its looks. */
public final class RidesModel {

    /**
     * A screen as it stands.
     *
     * @param count readings of the selected ride kept out; −1 where not known
     */
    public record ScreenState(Screen screen, boolean on, long count) {}

    /** Displays are set to some fuel's stoichiometric ratio: about 6.5 for methanol, 14.7 for petrol, 17 for methane (handbook values). */
    static final int LEAST_RATIO = 6;

    static final int MOST_RATIO = 20;

    private final Session session;
    private final IntegerProperty selected = new SimpleIntegerProperty(0);
    private final ReadOnlyObjectWrapper<Trace> trace = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyObjectWrapper<List<ScreenState>> screens = new ReadOnlyObjectWrapper<>(List.of());
    private final ReadOnlyStringWrapper summary = new ReadOnlyStringWrapper("");

    public RidesModel(Session session) {
        this.session = session;
        session.jobProperty().addListener((p, old, now) -> update());
        session.analysisProperty().addListener((p, old, now) -> update());
        session.afrProperty().addListener((p, old, now) -> update());
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

    /** The ride that is looked at. */
    public Optional<Ride> ride() {
        int at = Math.min(Math.max(0, selected.get()), rides().size() - 1);
        return at < 0 ? Optional.empty() : Optional.of(rides().get(at).ride());
    }

    private Optional<ScreenedRide> screened() {
        Analysis analysis = session.analysis();
        return ride().flatMap(ride -> analysis == null
                ? Optional.empty()
                : analysis.screened().stream().filter(s -> s.ride() == ride).findFirst());
    }

    private void update() {
        Optional<ScreenedRide> screened = screened();
        trace.set(ride().map(r -> RideTrace.of(r, screened, session.job().targetTable(), session.mixture()))
                .orElse(null));
        List<ScreenState> states = new ArrayList<>();
        for (Screen screen : Screen.values()) {
            boolean on = session.job().screens().isOn(screen);
            long count = screened.map(s -> (long) s.count(screen)).orElse(-1L);
            if (count > 0 || !on) {
                states.add(new ScreenState(screen, on, count));
            }
        }
        screens.set(List.copyOf(states));
        summary.set(ride().map(r -> summary(r, screened)).orElse(""));
    }

    private static String summary(Ride ride, Optional<ScreenedRide> screened) {
        String holds =
                Words.of("rides.summary", ride.name(), Figures.span(ride.durationS()), Figures.count(ride.size()));
        return screened.map(s -> holds + " "
                        + Words.of(
                                "rides.summary.kept",
                                Figures.count(s.kept()),
                                Figures.plain(100.0 * s.kept() / Math.max(1, ride.size()), 0)))
                .orElse(holds);
    }

    /** Screens that keep nothing out of this ride, and are on. */
    public List<Screen> idle() {
        List<Screen> shown = screens.get().stream().map(ScreenState::screen).toList();
        return List.of(Screen.values()).stream().filter(s -> !shown.contains(s)).toList();
    }

    /** Switches a screen; everything that follows is worked out anew. */
    public void turn(Screen screen, boolean on) {
        if (screen.canBeOff()) {
            session.edit(job -> job.withScreens(job.screens().with(screen, on)));
        }
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
            ride().ifPresent(r -> session.reading().again(r, options -> options.withRole(channel.heading(), role)));
        }
    }

    /** Whether the selected ride has a mixture column whose meaning rests on what its display is set to. */
    public boolean asksForRatio() {
        return ride().flatMap(r -> r.channel(Role.AFR)).isPresent();
    }

    /** Whether the user has said what the display is set to. */
    public boolean ratioSaid() {
        return ride().filter(r -> session.reading().options(r).afrScale().isPresent())
                .isPresent();
    }

    public double displayRatio() {
        return session.job().displayRatio();
    }

    /** Takes the display's ratio as typed, for all rides; false where it can't be one. */
    public boolean displayRatio(String typed) {
        double ratio;
        try {
            ratio = Double.parseDouble(typed.strip().replace(',', '.'));
        } catch (NumberFormatException e) {
            return false;
        }
        if (!(ratio >= LEAST_RATIO && ratio <= MOST_RATIO)) {
            return false;
        }
        session.reading().setDisplayRatio(ratio);
        return true;
    }

    /** Takes the selected ride out of the job. */
    public void remove() {
        ride().ifPresent(ride -> session.edit(job -> without(job, ride)));
    }

    private static Job without(Job job, Ride ride) {
        return job.withRides(job.rides().stream().filter(r -> r.ride() != ride).toList());
    }

    public IntegerProperty selectedProperty() {
        return selected;
    }

    /** Null where there is no ride. */
    public ReadOnlyObjectProperty<Trace> traceProperty() {
        return trace.getReadOnlyProperty();
    }

    /** Screens that kept something out of the selected ride, and those that are off. */
    public ReadOnlyObjectProperty<List<ScreenState>> screensProperty() {
        return screens.getReadOnlyProperty();
    }

    public ReadOnlyStringProperty summaryProperty() {
        return summary.getReadOnlyProperty();
    }

    public Session session() {
        return session;
    }
}
