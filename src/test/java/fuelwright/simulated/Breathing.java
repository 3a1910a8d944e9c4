package fuelwright.simulated;

import java.util.List;

/**
 * How well an engine fills: a broad curve over engine speed, resonance humps that grow with manifold pressure, and the room that
 * burnt gas takes at low pressure, (r − (p_ex/p)^(1/1.3))/(r − 1).
 *
 * @param base efficiency at the best speed without humps, 0…1.1
 * @param bestSpeedRpm where the broad curve peaks
 * @param droop loss of the broad curve one redline away from its peak
 */
public record Breathing(double base, double bestSpeedRpm, double droop, double compression, List<Hump> humps) {

    /** A bell over ln(rpm): its middle, its width (standard deviation of ln rpm) and its height, negative for a dip. */
    public record Hump(double speedRpm, double width, double height) {}

    public Breathing {
        humps = List.copyOf(humps);
    }

    /** Volumetric efficiency related to the manifold's own density, 0…1.2. */
    double efficiency(double speedRpm, double redlineRpm, double pressurePa, double ambientPa) {
        double away = (speedRpm - bestSpeedRpm) / redlineRpm;
        double pressureRatio = pressurePa / ambientPa;
        double full = base - droop * away * away;
        for (Hump hump : humps) {
            double x = StrictMath.log(speedRpm / hump.speedRpm()) / hump.width();
            full += hump.height() * (0.35 + 0.65 * pressureRatio) * StrictMath.exp(-0.5 * x * x);
        }
        double exhaustPa = exhaustPressurePa(speedRpm, redlineRpm, ambientPa);
        double residual = StrictMath.pow(exhaustPa / pressurePa, 1 / 1.3);
        return Math.max(0.15, full) * Math.max(0.1, (compression - residual) / (compression - 1));
    }

    static double exhaustPressurePa(double speedRpm, double redlineRpm, double ambientPa) {
        double share = speedRpm / redlineRpm;
        return ambientPa * (1 + 0.12 * share * share);
    }
}
