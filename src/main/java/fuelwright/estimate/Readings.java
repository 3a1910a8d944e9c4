package fuelwright.estimate;

import fuelwright.ride.Column;
import fuelwright.ride.Role;
import fuelwright.screen.ScreenedRide;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.util.Arrays;
import java.util.List;

/**
 * One screened ride made ready for the fit: where the engine was, what it was told to burn, and what was read, row by row. Natural logs
 * throughout. What the table had to do with a row is worked out by {@link EvidencePass}.
 */
final class Readings {

    /** Coolant from which on no warm-up enrichment is left, °C, and the unit of what is left below it, K. */
    private static final double WARM_C = 90;

    private static final double WARM_UNIT_K = 20;
    /** A command richer than this is none. */
    private static final double LEAST_COMMAND = 0.5;

    final ScreenedRide screened;
    final RideTrack track;
    /** Delivered fuel in each cell of the table that the ride was made with. */
    final Table delivered;

    final double[] load;
    /** ln of the target lambda, less ln of both trims. */
    final double[] commanded;
    /** ln of the lambda that was read, NaN where none was; where the ride has trims only, ln of the target. */
    final double[] reading;
    /** Warm-up enrichment that may be left, in units of {@link Nuisance#WARM_UP}. */
    final double[] warmUp;
    /** How much richer than the target the control unit asked for, ln, 0 where it asked for no more; empty where that wasn't logged. */
    private final double[] commandRicher;
    /** Whether lambda was measured; otherwise the trims are the reading, with neither delay nor lag. */
    final boolean measured;
    /** Whether delivered fuel is to be multiplied by manifold pressure to give fuel per cycle. */
    final boolean timesPressure;

    /** Exhaust mass flow, g/s. */
    final double[] flowGPerS;

    private Readings(ScreenedRide screened, Table madeWith, Table targetLambda, FlowModel flow, double deadTimeMs) {
        this.screened = screened;
        this.track = RideTrack.of(screened.ride());
        this.load = track.load(madeWith.load().kind());
        this.flowGPerS = flow.gramsPerSecond(track.speedRpm, load);
        Quantity quantity = madeWith.quantity();
        this.delivered = madeWith.delivered(deadTimeMs);
        this.timesPressure =
                madeWith.load().kind() == Axis.Kind.MANIFOLD_PRESSURE && quantity != Quantity.INJECTOR_PULSE;
        this.measured = screened.ride().mixture().isPresent();
        int n = track.size();
        this.commanded = new double[n];
        double[] lnTrims = lnTrims(track);
        double[] targetLoad = track.load(targetLambda.load().kind());
        double[] target = new double[n];
        Arrays.parallelSetAll(target, i -> Math.log(targetLambda.value(track.speedRpm[i], targetLoad[i])));
        Arrays.parallelSetAll(commanded, i -> target[i] - lnTrims[i]);
        this.reading = screened.ride().mixture().map(Column::toArray).orElse(target);
        if (measured) {
            Arrays.parallelSetAll(reading, i -> reading[i] > 0 ? Math.log(reading[i]) : Double.NaN);
        }
        this.commandRicher = commandRicher(track, target);
        this.warmUp = new double[n];
        double[] coolantC = track.bridged(Role.COOLANT);
        for (int i = 0; i < n; i++) {
            warmUp[i] = Double.isNaN(coolantC[i]) ? 0 : Math.max(0, (WARM_C - coolantC[i]) / WARM_UNIT_K);
        }
    }

    private Readings(Readings like, ScreenedRide screened) {
        this.screened = screened;
        this.track = like.track;
        this.delivered = like.delivered;
        this.load = like.load;
        this.commanded = like.commanded;
        this.reading = like.reading;
        this.warmUp = like.warmUp;
        this.commandRicher = like.commandRicher;
        this.measured = like.measured;
        this.timesPressure = like.timesPressure;
        this.flowGPerS = like.flowGPerS;
    }

    /** The same ride with other readings kept out. */
    Readings rescreened(ScreenedRide other) {
        if (other.ride() != track.ride) {
            throw new IllegalArgumentException("other: " + other.ride().name() + " is another ride");
        }
        return new Readings(this, other);
    }

    /**
     * @param madeWith the fuel table that was in the control unit
     * @param targetLambda target, as lambda
     */
    static Readings of(ScreenedRide screened, Table madeWith, Table targetLambda, FlowModel flow, double deadTimeMs) {
        return new Readings(screened, madeWith, targetLambda, flow, deadTimeMs);
    }

    /** ln of both trims together in each row; 0 where none was logged. */
    static double[] lnTrims(RideTrack track) {
        double[] both = new double[track.size()];
        for (Role role : List.of(Role.SHORT_TRIM, Role.LONG_TRIM)) {
            if (track.ride.channel(role).isPresent()) {
                double[] percent = track.bridged(role);
                for (int i = 0; i < both.length; i++) {
                    both[i] += lnTrim(percent[i]);
                }
            }
        }
        return both;
    }

    private static double[] commandRicher(RideTrack track, double[] target) {
        if (track.ride.channel(Role.COMMANDED_LAMBDA).isEmpty()) {
            return new double[0];
        }
        double[] richer = track.bridged(Role.COMMANDED_LAMBDA).clone();
        Arrays.parallelSetAll(
                richer, i -> richer[i] > LEAST_COMMAND ? Math.max(0, target[i] - Math.log(richer[i])) : 0);
        return richer;
    }

    private static double lnTrim(double percent) {
        return Double.isNaN(percent) ? 0 : Math.log1p(percent / 100);
    }

    /** How much richer than the target the control unit asked for in a row, ln; 0 where it asked for no more or that wasn't logged. */
    double commandRicher(int row) {
        return commandRicher.length == 0 ? 0 : commandRicher[row];
    }

    int size() {
        return track.size();
    }
}
