package fuelwright.ui.power;

import fuelwright.power.PowerCurve;
import fuelwright.power.Pull;
import fuelwright.power.PullComparison;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ui.theme.Exhibit;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.Theme;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Curves of power and torque in every state. */
public final class PowerExhibits {

    private PowerExhibits() {}

    /** Every control of our own on the page of power. */
    public static List<Exhibit> all(Theme theme) {
        PowerCurve before = curve("before.csv", 48);
        PowerCurve after = curve("after.csv", 54);
        List<Exhibit> all = new ArrayList<>();
        add(all, "no pull", List.of(), Optional.empty(), theme);
        add(all, "one pull", List.of(before), Optional.empty(), theme);
        add(
                all,
                "two pulls, where the change pays",
                List.of(before, after),
                PullComparison.of(before, after).value(),
                theme);
        return all;
    }

    private static PowerCurve curve(String name, double mostKw) {
        List<PowerCurve.Point> points = new ArrayList<>();
        for (double rpm = 3000; rpm <= 8000; rpm += PowerCurve.STEP_RPM) {
            double share = (rpm - 7200) / 7200;
            points.add(new PowerCurve.Point(rpm, mostKw * (1 - 2.2 * share * share), 0.4));
        }
        Ride ride = new Ride(name, Column.of(0, 1), List.of(), List.of(0), List.of());
        return new PowerCurve(new Pull(ride, 0, 2), PowerCurve.Source.TORQUE, points, 1, List.of());
    }

    private static void add(
            List<Exhibit> all, String state, List<PowerCurve> curves, Optional<PullComparison> compared, Theme theme) {
        PowerPlot plot = new PowerPlot();
        plot.show(curves, compared, theme, Measures.METRIC);
        all.add(new Exhibit("PowerPlot", state, plot, 520, 420));
    }
}
