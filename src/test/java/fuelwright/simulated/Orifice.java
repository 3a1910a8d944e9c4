package fuelwright.simulated;

/**
 * Compressible flow through an orifice: {@code m = Cd·A·p0/√(R·T0)·Ψ(p/p0)} with Ψ = √{2γ/(γ−1)·[Π^(2/γ) − Π^((γ+1)/γ)]}, constant
 * below the critical ratio Πc = (2/(γ+1))^(γ/(γ−1)). The usual form of the gas-dynamics and air-conditioning handbooks.
 */
final class Orifice {
    static final double GAS_CONSTANT = 287.05;
    private static final double GAMMA = 1.4;
    private static final double CRITICAL = criticalRatio(GAMMA);
    private static final double CHOKED = psi(0, GAMMA);
    /** Ψ² is smooth up to Π = 1, where Ψ isn't; powers are slow. */
    private static final double[] SQUARE_OF_PSI = new double[2001];

    static {
        for (int i = 0; i < SQUARE_OF_PSI.length; i++) {
            double psi = psi(CRITICAL + (1 - CRITICAL) * i / (SQUARE_OF_PSI.length - 1), GAMMA);
            SQUARE_OF_PSI[i] = psi * psi;
        }
        SQUARE_OF_PSI[SQUARE_OF_PSI.length - 1] = 0;
    }

    private Orifice() {}

    static double criticalRatio(double gamma) {
        return StrictMath.pow(2 / (gamma + 1), gamma / (gamma - 1));
    }

    /** Flow function; {@code ratio} is downstream over upstream pressure, 0…1. */
    static double psi(double ratio, double gamma) {
        double r = Math.min(1, Math.max(ratio, criticalRatio(gamma)));
        double bracket = StrictMath.pow(r, 2 / gamma) - StrictMath.pow(r, (gamma + 1) / gamma);
        return StrictMath.sqrt(Math.max(0, 2 * gamma / (gamma - 1) * bracket));
    }

    /** Mass flow of air, kg/s, from pressure {@code upstreamPa} at {@code temperatureK} to {@code downstreamPa}. */
    static double massFlowKgPerS(double areaM2, double upstreamPa, double temperatureK, double downstreamPa) {
        return areaM2 * upstreamPa / StrictMath.sqrt(GAS_CONSTANT * temperatureK) * psiOfAir(downstreamPa / upstreamPa);
    }

    private static double psiOfAir(double ratio) {
        if (ratio <= CRITICAL) {
            return CHOKED;
        }
        double at = Math.min(1, (ratio - CRITICAL) / (1 - CRITICAL)) * (SQUARE_OF_PSI.length - 1);
        int i = Math.min((int) at, SQUARE_OF_PSI.length - 2);
        return Math.sqrt(SQUARE_OF_PSI[i] + (at - i) * (SQUARE_OF_PSI[i + 1] - SQUARE_OF_PSI[i]));
    }
}
