package fuelwright.simulated;

import java.util.Locale;

/** A table in the neutral file: notes, a corner with both axes, one row for each engine speed. */
public final class TableWriter {

    private TableWriter() {}

    /** The machine's fuel table. */
    public static String fuel(Machine machine, Grid table) {
        return csv(
                machine,
                table,
                machine.unit().fuel().heading(),
                machine.unit().fuel().step() < 0.05 ? 2 : 1);
    }

    /** Its target table. */
    public static String target(Machine machine, Grid target) {
        return csv(machine, target, "lambda [1]", 2);
    }

    private static String csv(Machine machine, Grid table, String quantity, int decimals) {
        boolean throttle = machine.unit().index() == ControlUnit.Index.THROTTLE;
        StringBuilder text = new StringBuilder("# quantity: " + quantity + "\n");
        text.append("engine speed [rpm] \\ ").append(throttle ? "throttle [%]" : "manifold pressure [kPa]");
        double[] speeds = table.speeds();
        double[] loads = table.loads();
        for (double load : loads) {
            text.append(',').append(String.format(Locale.ROOT, "%.0f", load));
        }
        text.append('\n');
        for (int i = 0; i < speeds.length; i++) {
            text.append(String.format(Locale.ROOT, "%.0f", speeds[i]));
            for (int j = 0; j < loads.length; j++) {
                text.append(String.format(Locale.ROOT, ",%." + decimals + "f", table.at(j * speeds.length + i)));
            }
            text.append('\n');
        }
        return text.toString();
    }
}
