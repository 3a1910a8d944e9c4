package fuelwright.estimate;

import fuelwright.ride.Column;
import fuelwright.ride.Ride;
import fuelwright.ride.Role;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The gear ratios that rides show: clusters of road speed over engine speed, found as peaks of a histogram of its logarithm. Gears that
 * weren't ridden can't be known, so gears are counted among those seen. Immutable.
 */
public final class Gearing {

    private static final double BIN = 0.015;
    private static final double LEAST_SHARE = 0.02;
    /** Neighbouring gears differ by more than this in ln (common practice, no source). */
    private static final double APART = 0.08;

    /** No motorcycle has more gears that one shifts between: what shows more isn't the road speed (common practice, no source). */
    private static final int MOST_GEARS = 7;

    /** Rows that have to lie in the gears' own bins and those beside them: the rest is clutch and wheel slip (our choice, no source). */
    private static final double LEAST_IN_GEAR = 0.5;

    private static final double LEAST_KMH = 10;
    private static final double LEAST_RPM = 1000;
    private static final int LEAST_ROWS = 200;
    /** No public road is meant above this. */
    private static final double MOST_KMH = 90;

    private static final double LOWEST = Math.log(0.001);
    private static final int BINS = (int) Math.ceil((Math.log(0.2) - LOWEST) / BIN);

    private final double[] kmhPerRpm;
    private final boolean doubtful;

    private Gearing(double[] kmhPerRpm, boolean doubtful) {
        this.kmhPerRpm = kmhPerRpm;
        this.doubtful = doubtful;
    }

    /**
     * A gear for a region.
     *
     * @param number counted from the shortest gear seen, 1 first
     * @param seen how many gears the rides show
     * @param roadSpeedKmh at the middle of the region
     */
    public record Choice(int number, int seen, double roadSpeedKmh) {
        String words() {
            String gear = seen == 1 ? "the only gear that the rides show" : "gear %d of the %d that the rides show";
            return String.format(Locale.ROOT, "about %.0f km/h in " + gear, roadSpeedKmh, number, seen);
        }
    }

    /** The gears that rides show; none where road speed isn't logged, shows no clear clusters, or more of them than there are gears. */
    static Gearing of(List<Ride> rides) {
        double[] histogram = new double[BINS];
        int rows = 0;
        for (Ride ride : rides) {
            Optional<Column> road = ride.column(Role.ROAD_SPEED);
            Optional<Column> engine = ride.column(Role.ENGINE_SPEED);
            if (road.isEmpty() || engine.isEmpty()) {
                continue;
            }
            for (int i = 0; i < ride.size(); i++) {
                double kmh = road.get().at(i);
                double rpm = engine.get().at(i);
                int bin = kmh > LEAST_KMH && rpm > LEAST_RPM ? (int) ((Math.log(kmh / rpm) - LOWEST) / BIN) : -1;
                if (bin >= 0 && bin < BINS) {
                    histogram[bin]++;
                    rows++;
                }
            }
        }
        double[] gears = rows < LEAST_ROWS ? new double[0] : peaks(histogram, rows);
        return new Gearing(gears, rows >= LEAST_ROWS && gears.length == 0);
    }

    private static double[] peaks(double[] histogram, int rows) {
        int reach = (int) Math.round(APART / BIN / 2);
        List<Double> found = new ArrayList<>();
        double inGear = 0;
        for (int b = 1; b + 1 < BINS; b++) {
            double here = 0;
            double moment = 0;
            boolean highest = histogram[b] > 0;
            for (int o = Math.max(0, b - reach); o <= Math.min(BINS - 1, b + reach); o++) {
                highest &= o < b ? histogram[o] < histogram[b] : histogram[o] <= histogram[b];
                if (Math.abs(o - b) <= 1) {
                    here += histogram[o];
                    moment += histogram[o] * (LOWEST + (o + 0.5) * BIN);
                }
            }
            if (highest && here >= LEAST_SHARE * rows) {
                found.add(Math.exp(moment / here));
                inGear += here;
            }
        }
        if (found.size() > MOST_GEARS || inGear < LEAST_IN_GEAR * rows) {
            return new double[0];
        }
        return found.stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Whether there is a road speed that doesn't go with the engine speed as gears would make it. */
    boolean isDoubtful() {
        return doubtful;
    }

    /** km/h per rpm of each gear seen, shortest first. */
    double[] ratios() {
        return Arrays.copyOf(kmhPerRpm, kmhPerRpm.length);
    }

    /** The longest gear in which this engine speed keeps to an ordinary road speed, else the shortest; empty where no gear is known. */
    Optional<Choice> at(double rpm) {
        if (kmhPerRpm.length == 0) {
            return Optional.empty();
        }
        int gear = 0;
        while (gear + 1 < kmhPerRpm.length && kmhPerRpm[gear + 1] * rpm <= MOST_KMH) {
            gear++;
        }
        return Optional.of(new Choice(gear + 1, kmhPerRpm.length, kmhPerRpm[gear] * rpm));
    }
}
