package fuelwright.ui.machine;

import fuelwright.airflow.ThrottleBody;
import fuelwright.ui.theme.Exhibit;
import fuelwright.ui.theme.Theme;
import java.util.ArrayList;
import java.util.List;

/** The pair of bores in every state. */
public final class MachineExhibits {

    private static final ThrottleBody SMALL = new ThrottleBody(38, 8, 5, 85);
    private static final ThrottleBody LARGE = new ThrottleBody(44, 8, 5, 85);

    private MachineExhibits() {}

    /** Every control of our own on the stage Machine. */
    public static List<Exhibit> all(Theme theme) {
        List<Exhibit> all = new ArrayList<>();
        add(all, "nothing known", null, null, 40, theme);
        for (double throttle : new double[] {0, 40, 100}) {
            add(all, (int) throttle + " % throttle", SMALL, LARGE, throttle, theme);
        }
        add(all, "much bigger", new ThrottleBody(20, 6, 5, 85), new ThrottleBody(80, 10, 5, 85), 40, theme);
        return all;
    }

    private static void add(
            List<Exhibit> all, String state, ThrottleBody before, ThrottleBody after, double throttle, Theme theme) {
        BoreDrawing drawing = new BoreDrawing();
        drawing.show(before, after, throttle, theme);
        all.add(new Exhibit("BoreDrawing", state, drawing, 300, 310));
    }
}
