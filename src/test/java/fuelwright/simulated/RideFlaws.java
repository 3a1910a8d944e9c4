package fuelwright.simulated;

import java.util.List;

/**
 * What goes wrong on a ride besides the table.
 *
 * @param frozen stretches in which the sensor's display stands still
 * @param gaps stretches in which the logger wrote nothing
 * @param misfiresPerMinute bursts of misfire, 0.2…0.5 s each; unused oxygen makes them read lean
 * @param starvation pump or filter that can't keep up; {@link Starvation#NONE} for none
 */
public record RideFlaws(List<Stretch> frozen, List<Stretch> gaps, double misfiresPerMinute, Starvation starvation) {

    public static final RideFlaws NONE = new RideFlaws(List.of(), List.of(), 0, Starvation.NONE);

    /** From one second of the ride to another. */
    public record Stretch(double fromS, double toS) {
        boolean holds(double timeS) {
            return timeS >= fromS && timeS < toS;
        }
    }

    /**
     * Fuel goes missing while the air flow is above a limit, more from second to second, and comes back below it.
     *
     * @param aboveGPerS air flow of the engine where it begins
     * @param sharePerS share of the fuel lost each second
     * @param reserveS for so long nothing is lost yet, s
     * @param backPerS share of the fuel that comes back each second
     */
    public record Starvation(double aboveGPerS, double sharePerS, double reserveS, double backPerS) {
        public static final Starvation NONE = new Starvation(Double.POSITIVE_INFINITY, 0);
        private static final double MOST = 0.25;

        /** Without a reserve, and soon back. */
        public Starvation(double aboveGPerS, double sharePerS) {
            this(aboveGPerS, sharePerS, 0, 0.4);
        }

        /** The share missing after another step; below nothing while the reserve isn't used up. */
        double next(double missing, double flowGPerS, double dtS) {
            double change = flowGPerS > aboveGPerS ? sharePerS : -backPerS;
            return Math.min(MOST, Math.max(-reserveS * sharePerS, missing + change * dtS));
        }
    }

    public RideFlaws {
        frozen = List.copyOf(frozen);
        gaps = List.copyOf(gaps);
    }

    public RideFlaws withMisfires(double perMinute) {
        return new RideFlaws(frozen, gaps, perMinute, starvation);
    }

    public RideFlaws withStarvation(Starvation other) {
        return new RideFlaws(frozen, gaps, misfiresPerMinute, other);
    }

    public RideFlaws withFrozen(double fromS, double toS) {
        return new RideFlaws(List.of(new Stretch(fromS, toS)), gaps, misfiresPerMinute, starvation);
    }

    public RideFlaws withGap(double fromS, double toS) {
        return new RideFlaws(frozen, List.of(new Stretch(fromS, toS)), misfiresPerMinute, starvation);
    }

    static boolean within(List<Stretch> stretches, double timeS) {
        return stretches.stream().anyMatch(s -> s.holds(timeS));
    }
}
