package fuelwright.airflow;

import java.util.OptionalDouble;

/**
 * How much the cylinders swallow, four-stroke. Air for each cycle is η(N)·V·ρ0·f(Π), with Π the intake pressure over the ambient one and
 *
 * <pre>f(Π) = Π − (1 − Π)/(γ·(r − 1))</pre>
 *
 * the ideal cycle's correction for burnt gas that is left in the cylinder and expands when the intake opens (compression ratio r;
 * derived for an exhaust at ambient pressure; handbooks of combustion engines give the same form, from memory). η(N) is a plausible
 * hump: 90 % at seven tenths of the redline, falling with the square of the distance (80–90 % is the usual peak: common practice, no
 * source). It is a guess with a stated range, see {@link BoreForecast}; a ratio of two bodies hardly depends on it.
 *
 * @param displacementCc swept volume of all cylinders, cm³
 * @param peakSpeedRpm engine speed of best filling, rpm
 * @param scale factor on the hump, 1 where nothing is known
 */
public record CylinderFilling(double displacementCc, double peakSpeedRpm, double scale) {

    static final double PEAK_EFFICIENCY = 0.90;
    static final double LEAST_EFFICIENCY = 0.60;
    static final double PEAK_SHARE_OF_REDLINE = 0.7;

    /** Highest engine speed where the machine doesn't say it, rpm. */
    static final double USUAL_REDLINE_RPM = 9000;

    private static final double FALL = 0.25;
    private static final double COMPRESSION_RATIO = 10;
    private static final double GAMMA_BURNT = 1.35;
    private static final double RESIDUAL = 1 / (GAMMA_BURNT * (COMPRESSION_RATIO - 1));

    public CylinderFilling {
        if (!(displacementCc > 0) || !(peakSpeedRpm > 0) || !(scale > 0)) {
            throw new IllegalArgumentException("displacementCc " + displacementCc + ", peakSpeedRpm " + peakSpeedRpm
                    + ", scale " + scale + " must be above 0");
        }
    }

    static CylinderFilling of(double displacementCc, OptionalDouble redlineRpm) {
        return new CylinderFilling(displacementCc, PEAK_SHARE_OF_REDLINE * redlineRpm.orElse(USUAL_REDLINE_RPM), 1);
    }

    CylinderFilling scaled(double factor) {
        return new CylinderFilling(displacementCc, peakSpeedRpm, scale * factor);
    }

    /** Volumetric efficiency at wide open throttle, share of 1. */
    public double efficiency(double speedRpm) {
        double away = speedRpm / peakSpeedRpm - 1;
        return scale * Math.max(LEAST_EFFICIENCY, PEAK_EFFICIENCY * (1 - FALL * away * away));
    }

    /** Share of the filling at ambient intake pressure; 0 at {@link #emptyRatio()} and below. */
    public static double share(double pressureRatio) {
        return Math.max(0, pressureRatio - (1 - pressureRatio) * RESIDUAL);
    }

    /** The pressure ratio for a share of filling: the inverse of {@link #share}. */
    static double ratioOfShare(double share) {
        return (share + RESIDUAL) / (1 + RESIDUAL);
    }

    /** The pressure ratio at which nothing is drawn in any more. */
    static double emptyRatio() {
        return ratioOfShare(0);
    }

    /** Volume that the cylinders would draw at ambient pressure, m³/s: η·V·N/120. */
    public double fullVolumeM3PerS(double speedRpm) {
        return efficiency(speedRpm) * displacementCc * 1e-6 * speedRpm / 120;
    }
}
