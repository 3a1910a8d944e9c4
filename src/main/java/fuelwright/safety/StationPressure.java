package fuelwright.safety;

import fuelwright.airflow.HighLoad;
import fuelwright.airflow.Machine;
import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import fuelwright.table.Axis;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The barometer where the engine runs, as far as it isn't the standard one. On high ground full throttle doesn't reach 85 % of the standard
 * barometer, and what is full load there would pass for light. Told by a barometer in the log, else by the machine's altitude; else by the manifold pressure of settled full
 * throttle, or by the last row of a table over manifold pressure, since nobody makes one that ends short of full load (common practice, no
 * source). Either is a little less than the barometer, so that load counts as high a little sooner.
 */
final class StationPressure {

    private static final double FULL_PERCENT = 95;
    private static final double RUNNING_RPM = 500;
    /** Moments of full throttle below which they tell nothing. */
    private static final int LEAST = 20;
    /** The weather alone makes it as little as this at the sea (common practice, no source). */
    private static final double USUAL_KPA = 95;
    /** Nobody lives as high as this. */
    private static final double LEAST_KPA = 50;

    private StationPressure() {}

    /** kPa; NaN where nothing says that it isn't the standard one. */
    static double ofKpa(Machine machine, Axis load, List<Ride> rides) {
        double logged = rides.stream()
                .mapToDouble(r -> Dossier.median(r, Role.BAROMETER))
                .filter(k -> k > 0)
                .min()
                .orElse(Double.NaN);
        if (!Double.isNaN(logged)) {
            return logged;
        }
        if (!Double.isNaN(machine.barometerKpa())) {
            return machine.barometerKpa();
        }
        double kpa = Double.NaN;
        double full = rides.stream()
                .mapToDouble(StationPressure::atFullThrottle)
                .filter(k -> !Double.isNaN(k))
                .max()
                .orElse(Double.NaN);
        if (!Double.isNaN(full)) {
            kpa = full;
        } else if (load.kind() == Axis.Kind.MANIFOLD_PRESSURE) {
            kpa = load.at(load.size() - 1);
        }
        return kpa >= LEAST_KPA && kpa < USUAL_KPA ? kpa : Double.NaN;
    }

    /** What nine of ten moments at full throttle don't pass, kPa; NaN where there are too few. */
    private static double atFullThrottle(Ride ride) {
        Optional<Column> throttle = ride.column(Role.THROTTLE);
        Optional<Column> pressure = ride.column(Role.MANIFOLD_PRESSURE);
        Optional<Column> speed = ride.column(Role.ENGINE_SPEED);
        if (throttle.isEmpty() || pressure.isEmpty() || speed.isEmpty()) {
            return Double.NaN;
        }
        double[] seen = new double[ride.size()];
        int count = 0;
        for (int i = 1; i < ride.size(); i++) {
            boolean full =
                    throttle.get().at(i) >= FULL_PERCENT && throttle.get().at(i - 1) >= FULL_PERCENT;
            if (full && speed.get().at(i) >= RUNNING_RPM && pressure.get().at(i) > 0) {
                seen[count++] = pressure.get().at(i);
            }
        }
        if (count < LEAST) {
            return Double.NaN;
        }
        double[] sorted = Arrays.copyOf(seen, count);
        Arrays.sort(sorted);
        return Math.min(sorted[count * 9 / 10], HighLoad.STANDARD_BAROMETER_KPA);
    }
}
