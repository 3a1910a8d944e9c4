package fuelwright.estimate;

import java.util.List;

/**
 * How much worse the rides would be explained by other delays: the picture that shows why the delay is what it is. Where the rides can
 * tell, the curve has a clear trough. Immutable.
 *
 * @param tried from no delay to more than twice the one that was used, evenly spaced
 * @param used the one that was used
 */
public record DelayProfile(List<Tried> tried, Tried used) {

    /**
     * One delay.
     *
     * @param delayS dead time at {@value #SPEED_RPM} rpm and {@value #FLOW_G_PER_S} g/s, s
     * @param standardErrors how far it is from the best one tried: √(deviance − least deviance), in standard errors (a likelihood ratio;
     *     Wilks, Ann. Math. Stat. 9 (1938) 60, from memory)
     */
    public record Tried(double delayS, double standardErrors) {}

    /** Where delays are told: the engine speed. */
    public static final double SPEED_RPM = 4000;
    /** Where delays are told: the exhaust mass flow. */
    public static final double FLOW_G_PER_S = 15;

    public DelayProfile {
        tried = List.copyOf(tried);
    }
}
