package fuelwright.ui.session;

import fuelwright.estimate.ExpectedMixture;
import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.ui.plot.Lane;
import fuelwright.ui.plot.OutKind;
import fuelwright.ui.plot.RideClock;
import fuelwright.ui.plot.Shading;
import fuelwright.ui.plot.Trace;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/** A ride as lanes over time. Pure. */
public final class RideTrace {

    private RideTrace() {}

    private static final String PRESSURE = "lane.pressure";
    private static final Screen[] SCREENS = Screen.values();

    /**
     * @param screened what was kept out; empty where that isn't known yet
     * @param target what mixture was wanted; empty where there is no target table
     */
    public static Trace of(
            Ride ride, Optional<ScreenedRide> screened, Optional<Table> target, Mixture notation, Measures measures) {
        return shaded(lanes(ride, target, notation, measures), screened, List.of());
    }

    /** The lanes of a ride, nothing shaded. */
    public static Trace lanes(Ride ride, Optional<Table> target, Mixture notation, Measures measures) {
        List<Lane> lanes = new ArrayList<>();
        add(lanes, ride, Role.ENGINE_SPEED, "lane.speed", Unit.RPM, "lane-0", 20000, 0);
        add(lanes, ride, Role.THROTTLE, "lane.throttle", Unit.PERCENT, "lane-1", 100, 0);
        List<Channel> mixtures = ride.mixtures();
        for (int i = 0; i < Math.min(2, mixtures.size()); i++) {
            lanes.add(mixture(ride, mixtures.get(i), i, mixtures.size(), target, notation));
        }
        Unit pressure = measures.of(Unit.KILOPASCAL);
        int decimals = pressure == Unit.KILOPASCAL ? 0 : 1;
        add(lanes, ride, Role.MANIFOLD_PRESSURE, PRESSURE, pressure, "lane-3", pressure.fromCanonical(400), decimals);
        RideClock clock = new RideClock(ride.size(), ride.timeS()::at, ride.segmentStarts());
        return new Trace(clock, lanes, Shading.none(ride.size()), List.of(OutKind.DATA), row -> "", List.of());
    }

    /** The same with the mixture that the ride would have had with the proposed table, where one sensor alone is evidence. */
    public static Trace expecting(Trace lanes, Ride ride, ExpectedMixture expected, Mixture notation) {
        int sensors = ride.mixtures().size();
        String mixture = sensors > 1 && ride.isEvidence(0) && ride.isEvidence(1)
                ? ""
                : nameOfMixture(ride.firstEvidence(), sensors);
        return new Trace(
                lanes.clock(),
                lanes.lanes().stream()
                        .map(lane -> lane.name().equals(mixture)
                                ? lane.expecting(row -> expected.lambda(row) * notation.scale())
                                : lane)
                        .toList(),
                lanes.shading(),
                lanes.kinds(),
                lanes.reason(),
                lanes.marks());
    }

    /** The same, shaded where rows don't count, with marks. */
    public static Trace shaded(Trace lanes, Optional<ScreenedRide> screened, List<Trace.Mark> marks) {
        if (screened.isEmpty()) {
            return lanes.shaded(lanes.shading(), lanes.kinds(), row -> "", marks);
        }
        ScreenedRide s = screened.get();
        // A repeated reading is no stretch of the ride that doesn't count.
        Shading shading = new Shading(
                s.ride().size(),
                SCREENS.length,
                row -> s.reason(row)
                        .filter(r -> r != Screen.HELD_VALUE)
                        .map(Screen::ordinal)
                        .orElse(-1));
        List<OutKind> kinds = Arrays.stream(SCREENS).map(RideTrace::kind).toList();
        return lanes.shaded(
                shading, kinds, row -> s.reason(row).map(Screen::words).orElse(""), marks);
    }

    /** Whether a lane is that of the manifold pressure. */
    public static boolean isPressure(Lane lane) {
        return lane.name().equals(Words.of(PRESSURE));
    }

    /** The family of a screen: how its stretches are drawn. */
    public static OutKind kind(Screen screen) {
        return switch (screen) {
            case NOT_RUNNING, TOO_COLD -> OutKind.ENGINE;
            case FUEL_CUT -> OutKind.FUEL_CUT;
            case AFTER_FUEL_CUT -> OutKind.AFTER_FUEL_CUT;
            case GEAR_CHANGE -> OutKind.GEAR_CHANGE;
            case THROTTLE_MOVING -> OutKind.THROTTLE_MOVING;
            case SPEED_MOVING -> OutKind.SPEED_MOVING;
            case SENSOR_LIMIT, SENSOR_FROZEN, SPIKE -> OutKind.SENSOR;
            case NO_READING, TIME_BASE, CLOSED_LOOP_UNLOGGED, OUTSIDE_TABLE, HELD_VALUE -> OutKind.DATA;
        };
    }

    private static void add(
            List<Lane> lanes,
            Ride ride,
            Role role,
            String key,
            Unit unit,
            String colour,
            double highest,
            int decimals) {
        ride.column(role)
                .ifPresent(c -> lanes.add(Lane.fitted(
                        Words.of(key),
                        unit.symbol(),
                        colour,
                        ride.size(),
                        row -> unit.fromCanonical(c.at(row)),
                        Optional.empty(),
                        0,
                        highest,
                        decimals,
                        1)));
    }

    private static Lane mixture(
            Ride ride, Channel channel, int index, int of, Optional<Table> target, Mixture notation) {
        Optional<IntToDoubleFunction> wanted = target.flatMap(t -> wanted(ride, t, notation));
        return Lane.fitted(
                nameOfMixture(index, of),
                notation.afr() ? "AFR" : "λ",
                "lane-2",
                ride.size(),
                channel.values()::at,
                wanted,
                0.65,
                1.45,
                notation.decimals(),
                notation.scale());
    }

    private static String nameOfMixture(int index, int of) {
        return Words.of(of > 1 ? "lane.mixture.number" : "lane.mixture", index + 1);
    }

    private static Optional<IntToDoubleFunction> wanted(Ride ride, Table target, Mixture notation) {
        Role role = target.load().kind() == Axis.Kind.MANIFOLD_PRESSURE ? Role.MANIFOLD_PRESSURE : Role.THROTTLE;
        Optional<Column> speed = ride.column(Role.ENGINE_SPEED);
        Optional<Column> load = ride.column(role);
        if (speed.isEmpty() || load.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(row -> notation.lambdaOf(
                target.quantity(), target.value(speed.get().at(row), load.get().at(row))));
    }
}
