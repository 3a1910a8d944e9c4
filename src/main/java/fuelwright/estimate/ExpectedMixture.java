package fuelwright.estimate;

import fuelwright.airflow.HighLoad;
import fuelwright.table.Table;
import java.util.Arrays;

/**
 * A ride's mixture as it would have been with another table and without trims, in the sensor's time: ln λ(t) = ln λ_read(t) −
 * L[ln new − ln old − ln trims](t), where L delays and lags as the sensor does. So it can be laid over the logged trace; everything that
 * isn't the table's doing (wall film, noise) stays in it, and no noise is amplified as it would be by undoing the lag. O(rows). Immutable.
 */
public final class ExpectedMixture {

    /** Rows further apart than this don't belong together, s. */
    private static final double GAP_S = 1.0;

    private final double[] lambda;
    private final double[] targetLambda;
    private final Summary summary;

    /**
     * The readings that count, before and after.
     *
     * @param readings how many
     * @param errorBeforePercent root-mean-square of ln(lambda/target) with the table as ridden and without trims, %
     * @param errorAfterPercent the same with the other table, %
     * @param highLoadReadings how many of them were burnt at high load
     * @param leanestPercent how much leaner than its target the leanest of those would have been, %; NaN where there are none
     * @param leanestRow its row; −1 where there are none
     */
    public record Summary(
            int readings,
            double errorBeforePercent,
            double errorAfterPercent,
            int highLoadReadings,
            double leanestPercent,
            int leanestRow) {}

    private ExpectedMixture(double[] lambda, double[] targetLambda, Summary summary) {
        this.lambda = lambda;
        this.targetLambda = targetLambda;
        this.summary = summary;
    }

    /**
     * @param source the ride and the table that it was made with
     * @param other the table to be judged, of the same quantity
     * @param targetLambda target, as lambda
     * @param deadTimeMs injector dead time contained in a pulse table, ms
     */
    public static ExpectedMixture of(
            Estimator.Source source,
            Table other,
            Table targetLambda,
            FlowModel flow,
            SensorModel sensor,
            HighLoad highLoad,
            double deadTimeMs) {
        Readings ride = Readings.of(source.screened(), source.madeWith(), targetLambda, flow, deadTimeMs);
        RideTrack track = ride.track;
        SensorModel model = ride.measured ? sensor : SensorModel.none();
        TableRatio change = new TableRatio(other.delivered(deadTimeMs), ride.delivered);
        double[] targetLoad = track.load(targetLambda.load().kind());
        int n = ride.size();
        double[] lnTrims = Readings.lnTrims(track);
        double[] lambda = new double[n];
        double[] target = new double[n];
        Arrays.fill(lambda, Double.NaN);
        Arrays.fill(target, Double.NaN);
        LagFilter lag = new LagFilter(0);
        int count = 0;
        int high = 0;
        double before = 0;
        double after = 0;
        double leanest = Double.NaN;
        int leanestRow = -1;
        for (int s = 0; s + 1 < track.segmentStarts.length; s++) {
            Moment moment =
                    new Moment(track, ride.flowGPerS, model, track.segmentStarts[s], track.segmentStarts[s + 1]);
            boolean going = false;
            double lastS = 0;
            double lastShift = 0;
            double lastTarget = 0;
            double lastTrims = 0;
            double shift = 0;
            double wanted = 0;
            double trims = 0;
            for (int row = track.segmentStarts[s]; row < track.segmentStarts[s + 1]; row++) {
                if (!moment.goTo(row)) {
                    going = false;
                    continue;
                }
                double rpm = moment.interpolate(track.speedRpm);
                double load = moment.interpolate(ride.load);
                double nowTarget = Math.log(targetLambda.value(rpm, moment.interpolate(targetLoad)));
                double nowTrims = moment.interpolate(lnTrims);
                double nowShift = change.ln(rpm, load);
                if (Double.isNaN(nowTarget) || Double.isNaN(nowTrims) || Double.isNaN(nowShift)) {
                    going = false;
                    continue;
                }
                double dtS = track.timeS[row] - lastS;
                if (going && dtS >= 0 && dtS <= GAP_S) {
                    lag.prepare(dtS, model.lagS());
                    shift = lag.next(shift, lastShift, nowShift);
                    wanted = lag.next(wanted, lastTarget, nowTarget);
                    trims = lag.next(trims, lastTrims, nowTrims);
                } else {
                    shift = nowShift;
                    wanted = nowTarget;
                    trims = nowTrims;
                }
                going = true;
                lastS = track.timeS[row];
                lastShift = nowShift;
                lastTarget = nowTarget;
                lastTrims = nowTrims;
                target[row] = Math.exp(wanted);
                if (Double.isNaN(ride.reading[row])) {
                    continue;
                }
                double own = ride.reading[row] + trims;
                lambda[row] = Math.exp(own - shift);
                if (source.screened().counts(row)) {
                    double off = own - shift - wanted;
                    count++;
                    before += (own - wanted) * (own - wanted);
                    after += off * off;
                    if (highLoad.at(
                            rpm,
                            moment.interpolate(track.throttlePercent),
                            moment.interpolate(track.pressureKpa),
                            moment.interpolate(track.barometerKpa))) {
                        high++;
                        if (!(100 * Math.expm1(off) <= leanest)) {
                            leanest = 100 * Math.expm1(off);
                            leanestRow = row;
                        }
                    }
                }
            }
        }
        return new ExpectedMixture(
                lambda,
                target,
                new Summary(
                        count,
                        100 * Math.sqrt(before / count),
                        100 * Math.sqrt(after / count),
                        high,
                        leanest,
                        leanestRow));
    }

    /** Lambda that the sensor would have shown in a row; NaN where that can't be told. */
    public double lambda(int row) {
        return lambda[row];
    }

    /** The target as a sensor as late and slow would show it; NaN where it can't be told. */
    public double targetLambda(int row) {
        return targetLambda[row];
    }

    public Summary summary() {
        return summary;
    }
}
