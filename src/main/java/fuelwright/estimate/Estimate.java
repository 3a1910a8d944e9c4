package fuelwright.estimate;

import fuelwright.table.Table;
import java.util.List;

/**
 * What each cell of a table needs, by the evidence and the prior: the natural log of the factor on its delivered fuel, the standard
 * error of that log, and the independent readings behind it. Cell order is the table's. Immutable.
 */
public final class Estimate {

    private final Table table;
    private final double[] logFactors;
    private final double[] uncertainties;
    private final double[] disagreements;
    private final double[] independentReadings;
    private final double[] leftOver;
    private final double[] ownReadings;
    private final SensorFit sensor;
    private final TipIn tipIn;
    private final boolean forecastContradicted;
    private final List<String> remarks;

    /**
     * @param table the table that is to be corrected
     * @param logFactors ln of the factor for each cell
     * @param uncertainties standard error of the above for each cell
     * @param disagreements least standard error for each cell where parts of the rides disagree, 0 where they agree
     * @param independentReadings for each cell, 0 where nobody rode
     * @param leftOver what each cell's own readings surely ask for beyond the above, ln; 0 or more
     * @param ownReadings what each cell's own readings ask for by themselves, ln; NaN where there are none
     * @param sensor delay and lag used, and how sure they are
     * @param tipIn what the table alone leaves unexplained as the throttle opens
     * @param forecastContradicted whether the rides contradict the bore forecast, so that little or nothing of it was used
     * @param remarks what was decided on the way, one sentence each
     */
    Estimate(
            Table table,
            double[] logFactors,
            double[] uncertainties,
            double[] disagreements,
            double[] independentReadings,
            double[] leftOver,
            double[] ownReadings,
            SensorFit sensor,
            TipIn tipIn,
            boolean forecastContradicted,
            List<String> remarks) {
        this.table = table;
        this.logFactors = logFactors.clone();
        this.uncertainties = uncertainties.clone();
        this.disagreements = disagreements.clone();
        this.independentReadings = independentReadings.clone();
        this.leftOver = leftOver.clone();
        this.ownReadings = ownReadings.clone();
        this.sensor = sensor;
        this.tipIn = tipIn;
        this.forecastContradicted = forecastContradicted;
        this.remarks = List.copyOf(remarks);
    }

    /** The table that is to be corrected. */
    public Table table() {
        return table;
    }

    /**
     * How much more fuel the readings near a cell ask for than the fit gives it, less one standard error of theirs, ln; 0 where they ask for
     * none. What neighbours and forecast say may draw a cell away from its own readings. Where parts of the rides disagree, at least what the
     * one that asks for the most surely wants.
     */
    public double leftOver(int cell) {
        return leftOver[cell];
    }

    /**
     * What the readings near a cell ask for by themselves on average, ln of the factor, each taken at the moment and in the cells where it was burnt; NaN where there are none. The
     * fit goes beyond it by what the cells around were found to need and by what was expected of the change.
     */
    public double ownReadings(int cell) {
        return ownReadings[cell];
    }

    /** Natural log of the factor that the cell's fuel needs. */
    public double logFactor(int cell) {
        return logFactors[cell];
    }

    /** Standard error of {@link #logFactor}; more than the readings' number and noise alone say where parts of the rides disagree. */
    public double logUncertainty(int cell) {
        return Math.max(disagreements[cell], uncertainties[cell]);
    }

    /** Whether parts of the rides ask for different fuel here, by more than noise explains. */
    public boolean isDisputed(int cell) {
        return disagreements[cell] > uncertainties[cell];
    }

    /** What {@link #logUncertainty} would be if all parts of the rides asked for the same. */
    public double undisputedUncertainty(int cell) {
        return uncertainties[cell];
    }

    /** How much more fuel the cell needs, %: positive is lean. */
    public double shortfallPercent(int cell) {
        return 100 * Math.expm1(logFactors[cell]);
    }

    /** Standard error of {@link #shortfallPercent}, %. */
    public double uncertaintyPercent(int cell) {
        return 100 * Math.exp(logFactors[cell]) * logUncertainty(cell);
    }

    /** Independent readings behind the cell; 0 where nobody rode it. */
    public double independentReadings(int cell) {
        return independentReadings[cell];
    }

    public Standing standing(int cell) {
        return Standing.of(independentReadings[cell], uncertaintyPercent(cell));
    }

    public SensorFit sensor() {
        return sensor;
    }

    /** The lean or rich moments as the throttle opened; nothing where no ride has a measured mixture. */
    public TipIn tipIn() {
        return tipIn;
    }

    /** Whether the rides contradict the bore forecast, so that little or nothing of it was used. */
    public boolean forecastContradicted() {
        return forecastContradicted;
    }

    public List<String> remarks() {
        return remarks;
    }
}
