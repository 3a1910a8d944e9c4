package fuelwright.ui.session;

import fuelwright.ride.Channel;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.screen.Screen;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.ui.plot.Lane;
import fuelwright.ui.plot.RideClock;
import fuelwright.ui.plot.Trace;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/** A ride as lanes over time. Pure. */
public final class RideTrace {

    private RideTrace() {}

    /**
     * @param screened what was kept out; empty where that isn't known yet
     * @param target what mixture was wanted; empty where there is no target table
     */
    public static Trace of(Ride ride, Optional<ScreenedRide> screened, Optional<Table> target, Mixture notation) {
        int rows = ride.size();
        RideClock clock = new RideClock(rows, ride.timeS()::at, ride.segmentStarts());
        List<Lane> lanes = new ArrayList<>();
        add(lanes, ride, Role.ENGINE_SPEED, "lane.speed", "rpm", "lane-0", 0, 20000, 0);
        add(lanes, ride, Role.THROTTLE, "lane.throttle", "%", "lane-1", 0, 100, 0);
        List<Channel> mixtures = ride.mixtures();
        for (int i = 0; i < Math.min(2, mixtures.size()); i++) {
            lanes.add(mixture(ride, mixtures.get(i), i, mixtures.size(), target, notation));
        }
        add(lanes, ride, Role.MANIFOLD_PRESSURE, "lane.pressure", "kPa", "lane-3", 0, 400, 0);
        BitSet out = new BitSet(rows);
        screened.ifPresent(s -> {
            for (int row = 0; row < rows; row++) {
                // A repeated reading is no stretch of the ride that doesn't count.
                Optional<Screen> reason = s.reason(row);
                out.set(row, reason.isPresent() && reason.get() != Screen.HELD_VALUE);
            }
        });
        return new Trace(
                clock,
                lanes,
                out,
                row -> screened.flatMap(s -> s.reason(row)).map(Screen::words).orElse(""));
    }

    private static void add(
            List<Lane> lanes,
            Ride ride,
            Role role,
            String key,
            String unit,
            String colour,
            double lowest,
            double highest,
            int decimals) {
        ride.column(role)
                .ifPresent(c -> lanes.add(Lane.fitted(
                        Words.of(key),
                        unit,
                        colour,
                        ride.size(),
                        c::at,
                        Optional.empty(),
                        lowest,
                        highest,
                        decimals,
                        1)));
    }

    private static Lane mixture(
            Ride ride, Channel channel, int index, int of, Optional<Table> target, Mixture notation) {
        Optional<IntToDoubleFunction> wanted = target.flatMap(t -> wanted(ride, t, notation));
        String name = Words.of(of > 1 ? "lane.mixture.number" : "lane.mixture", index + 1);
        return Lane.fitted(
                name,
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
