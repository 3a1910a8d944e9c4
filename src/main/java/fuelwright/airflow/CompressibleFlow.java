package fuelwright.airflow;

/**
 * One-dimensional isentropic flow of an ideal gas through a restriction:
 *
 * <pre>
 * ṁ = Cd·A·p0/√(R·T0)·Ψ(Π),   Π = max(p/p0, Πc),   Πc = (2/(γ + 1))^(γ/(γ − 1))
 * Ψ(Π) = √{ 2γ/(γ − 1)·[Π^(2/γ) − Π^((γ + 1)/γ)] }
 * </pre>
 *
 * Source: any gas-dynamics handbook (the orifice equation for compressible flow). Ψ falls to 0 at Π = 1 with an unbounded slope; callers
 * that solve for Π bracket it rather than step along a derivative.
 */
public final class CompressibleFlow {

    /** Ratio of specific heats of air. */
    public static final double GAMMA_AIR = 1.4;

    /** Specific gas constant of dry air, J/(kg·K) (ISO 2533:1975). */
    public static final double GAS_CONSTANT_AIR = 287.05287;

    private CompressibleFlow() {}

    /** Pressure ratio at and below which the flow is choked. */
    public static double criticalRatio(double gamma) {
        return Math.pow(2 / (gamma + 1), gamma / (gamma - 1));
    }

    /** Flow function Ψ, dimensionless; a pressure ratio above 1 (flow backwards) gives 0. */
    public static double flowFunction(double pressureRatio, double gamma) {
        double ratio = Math.max(pressureRatio, criticalRatio(gamma));
        if (ratio >= 1) {
            return 0;
        }
        double bracket = Math.pow(ratio, 2 / gamma) - Math.pow(ratio, (gamma + 1) / gamma);
        return Math.sqrt(2 * gamma / (gamma - 1) * Math.max(bracket, 0));
    }

    /**
     * Mass flow of air, g/s.
     *
     * @param dischargeCoefficient share of the area that flows, 0 to 1
     * @param areaMm2 open area, mm²
     * @param pressurePa absolute stagnation pressure ahead, Pa
     * @param temperatureK stagnation temperature ahead, K
     * @param pressureRatio pressure behind to pressure ahead
     */
    public static double airGPerS(
            double dischargeCoefficient, double areaMm2, double pressurePa, double temperatureK, double pressureRatio) {
        double areaM2 = areaMm2 * 1e-6;
        double kgPerS = dischargeCoefficient
                * areaM2
                * pressurePa
                / Math.sqrt(GAS_CONSTANT_AIR * temperatureK)
                * flowFunction(pressureRatio, GAMMA_AIR);
        return kgPerS * 1000;
    }
}
