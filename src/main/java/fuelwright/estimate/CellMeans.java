package fuelwright.estimate;

import java.util.Optional;

/**
 * What a plain look at the readings says about each cell, before any physics: readings spread over the four cells around them by
 * bilinear weight. A cell without readings is absent. Immutable.
 */
public final class CellMeans {

    /**
     * @param weight sum of bilinear weights: how many readings' worth the cell has
     * @param meanShortfallPercent weighted mean of how much more fuel was needed, %
     * @param spreadPercent weighted standard deviation of the readings around that mean, %
     * @param meanLambda weighted mean of the readings themselves, lambda
     * @param readings number of readings that touched the cell
     * @param commandRicherPercent weighted mean of how much richer than the target the control unit asked for, %; 0 where it asked for no more
     */
    public record Mean(
            double weight,
            double meanShortfallPercent,
            double spreadPercent,
            double meanLambda,
            int readings,
            double commandRicherPercent) {

        /** What the control unit asked for isn't known, or was the target. */
        public Mean(double weight, double meanShortfallPercent, double spreadPercent, double meanLambda, int readings) {
            this(weight, meanShortfallPercent, spreadPercent, meanLambda, readings, 0);
        }
    }

    private final Mean[] means;

    CellMeans(Mean[] means) {
        this.means = means.clone();
    }

    public Optional<Mean> at(int cell) {
        return Optional.ofNullable(means[cell]);
    }

    public int cells() {
        return means.length;
    }
}
