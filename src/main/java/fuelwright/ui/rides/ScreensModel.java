package fuelwright.ui.rides;

import fuelwright.job.JobRide;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenSettings;
import fuelwright.screen.ScreenedRide;
import fuelwright.ui.session.Runner;
import fuelwright.ui.session.Session;
import fuelwright.work.Analysis;
import fuelwright.work.PreviewScreens;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;

/**
 * The screens as they are being set: what each keeps out of the selected ride, live while a slider is dragged. Each change is worked out
 * beside everything else, the newest only; the job itself changes when the slider is let go.
 */
public final class ScreensModel {

    /**
     * A screen as it stands.
     *
     * @param count readings of the selected ride kept out; −1 where not known
     */
    public record State(Screen screen, boolean on, long count) {}

    private static final String LANE = Runner.LOOK + "-screens";

    private final Session session;
    private final ReadOnlyObjectWrapper<List<State>> states = new ReadOnlyObjectWrapper<>(List.of());
    private final ReadOnlyObjectWrapper<ScreenSettings> shown = new ReadOnlyObjectWrapper<>(ScreenSettings.defaults());
    private final ReadOnlyObjectWrapper<Optional<ScreenedRide>> screened =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private JobRide ride;

    ScreensModel(Session session) {
        this.session = session;
        states();
    }

    /** Looks at a ride, null for none, by the job's own settings. */
    void show(JobRide other) {
        boolean same = other == ride;
        ride = other;
        shown.set(session.job().screens());
        Optional<ScreenedRide> known = known();
        if (ride == null || known.isPresent()) {
            session.look(LANE, (p, c) -> known, this::found);
        } else {
            if (!same) {
                found(Optional.empty());
            }
            workOut();
        }
    }

    /** What the newest analysis found out, if it is about this. */
    private Optional<ScreenedRide> known() {
        Analysis analysis = session.analysis();
        if (ride == null || analysis == null || !analysis.job().screens().equals(shown.get())) {
            return Optional.empty();
        }
        return analysis.screened().stream()
                .filter(s -> s.ride().isOf(ride.ride()))
                .findFirst();
    }

    private void workOut() {
        JobRide of = ride;
        ScreenSettings settings = shown.get();
        var job = session.job();
        if (of != null) {
            session.look(LANE, (p, c) -> Optional.of(PreviewScreens.of(job, of, settings, c)), this::found);
        }
    }

    private void found(Optional<ScreenedRide> now) {
        screened.set(now);
        states();
    }

    private void states() {
        List<State> all = new ArrayList<>();
        for (Screen screen : Screen.values()) {
            long count = screened.get().map(s -> (long) s.count(screen)).orElse(-1L);
            all.add(new State(screen, shown.get().isOn(screen), count));
        }
        states.set(List.copyOf(all));
    }

    /** Shows what other settings would do. The job stays as it is. */
    public void preview(ScreenSettings settings) {
        if (!settings.equals(shown.get())) {
            shown.set(settings);
            workOut();
        }
    }

    /** Takes the settings that are shown; everything that follows is worked out anew. */
    public void take() {
        ScreenSettings settings = shown.get();
        if (!settings.equals(session.job().screens())) {
            session.edit(job -> job.withScreens(settings));
        }
    }

    /** Switches a screen; everything that follows is worked out anew. */
    public void turn(Screen screen, boolean on) {
        if (screen.canBeOff()) {
            session.edit(job -> job.withScreens(job.screens().with(screen, on)));
        }
    }

    /** Takes the thresholds and switches that the program comes with. */
    public void usual() {
        session.edit(job -> job.withScreens(ScreenSettings.defaults()));
    }

    /** Every screen in order of precedence. */
    public ReadOnlyObjectProperty<List<State>> statesProperty() {
        return states.getReadOnlyProperty();
    }

    /** The settings that are shown: those of the job, or those being dragged. */
    public ReadOnlyObjectProperty<ScreenSettings> shownProperty() {
        return shown.getReadOnlyProperty();
    }

    /** What they keep out of the selected ride; empty where there is none, or it isn't known yet. */
    public ReadOnlyObjectProperty<Optional<ScreenedRide>> screenedProperty() {
        return screened.getReadOnlyProperty();
    }
}
