package fuelwright.safety;

import fuelwright.ride.Ride;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** Readings held against each other: two sensors, the same cells early and late, and what one sensor can't see. */
final class SensorsCompared implements Rule {

    private static final int LEAST_ROWS = 100;

    @Override
    public List<Caution> judge(Dossier d) {
        List<Caution> out = new ArrayList<>();
        boolean single = false;
        for (int r = 0; r < d.rides(); r++) {
            Ride ride = d.ride(r);
            single |= ride.mixtures().size() == 1 && d.fuel.cylinder().isEmpty();
            if (ride.mixtures().size() == 1 && d.fuel.cylinder().isPresent()) {
                out.add(takenFor(ride, d.fuel.cylinder().getAsInt()));
            }
            for (int s = 1; s < ride.mixtures().size(); s++) {
                int from = out.size();
                apart(d, r, s, out);
                Say.about(out, from, Say.sensor(ride, s));
            }
            if (!ride.mixtures().isEmpty()) {
                int from = out.size();
                drift(d, r, out);
                Say.about(out, from, ride.name());
            }
        }
        if (single) {
            out.add(new Caution(
                    "one-sensor",
                    Caution.Level.NOTE,
                    "One sensor sees a mean",
                    "One sensor shows the mean of the cylinders before it: one lean cylinder among them stays hidden",
                    "Where the engine has more than one cylinder, look at the plugs or measure each pipe by itself",
                    new TreeSet<>(),
                    List.of()));
        }
        return out;
    }

    private static Caution takenFor(Ride ride, int cylinder) {
        return new Caution(
                        "one-sensor-of-cylinder",
                        Caution.Level.NOTE,
                        "One sensor is taken for the table's cylinder",
                        ride.name() + " has one mixture sensor; it is taken for that of cylinder " + cylinder
                                + ", which the fuel table feeds",
                        "Leave the ride out if the sensor sat in another cylinder's pipe",
                        new TreeSet<>(),
                        List.of())
                .about(ride.name());
    }

    private static void apart(Dossier d, int r, int s, List<Caution> out) {
        RideRows rows = d.rows(r);
        double[] first = rows.mixture(0);
        double[] other = rows.mixture(s);
        double sum = 0;
        int n = 0;
        for (int i = 0; i < rows.size; i++) {
            boolean both = first[i] > 0 && other[i] > 0 && rows.isRunning(i) && !rows.isOverrun(i);
            if (both && first[i] < d.limits.of(Limit.SENSOR_TOP) && other[i] < d.limits.of(Limit.SENSOR_TOP)) {
                sum += Math.log(other[i] / first[i]);
                n++;
            }
        }
        double percent = 100 * Math.expm1(sum / Math.max(1, n));
        if (n < LEAST_ROWS || Math.abs(percent) <= d.limits.of(Limit.SENSORS_APART)) {
            return;
        }
        String a = rows.ride.mixtures().get(0).heading();
        String b = rows.ride.mixtures().get(s).heading();
        out.add(new Caution(
                "sensors-apart",
                Caution.Level.CHECK,
                "Two sensors disagree",
                String.format(
                        Locale.ROOT,
                        "In %s %s reads %.1f %% leaner than %s on the whole",
                        rows.ride.name(),
                        percent > 0 ? b : a,
                        Math.abs(percent),
                        percent > 0 ? a : b),
                (d.fuel.cylinder().isPresent() ? "Each cylinder's table is corrected by its own sensor. " : "")
                        + "Swap the sensors: if the difference goes with the sensor it is the sensor, if it stays it is the cylinder",
                new TreeSet<>(),
                List.of()));
    }

    /** The same cells in the first and the last third of a ride. Trims would hide or fake it, so a ride with trims isn't judged. */
    private static void drift(Dossier d, int r, List<Caution> out) {
        RideRows rows = d.rows(r);
        if (rows.ride.hasTrims() || rows.size == 0) {
            return;
        }
        double percent = CellMeans.thirds(d, r).leanerPercent();
        if (Math.abs(percent) > d.limits.of(Limit.DRIFT)) {
            out.add(new Caution(
                    "reading-drifts",
                    Caution.Level.CHECK,
                    "The reading drifts",
                    String.format(
                            Locale.ROOT,
                            "In %s the same cells read %.1f %% %s in the last third of the ride than in the first",
                            rows.ride.name(),
                            Math.abs(percent),
                            percent > 0 ? "leaner" : "richer"),
                    "Look for what changed: sensor, fuel pressure, heat; judge early and late parts by themselves",
                    new TreeSet<>(),
                    List.of()));
        }
    }
}
