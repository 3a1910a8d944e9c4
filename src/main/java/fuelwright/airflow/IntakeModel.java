package fuelwright.airflow;

import org.apache.commons.math3.analysis.solvers.BrentSolver;

/**
 * Quasi-steady intake: the pressure behind the plate settles where the plate and the idle bypass pass just what the cylinders swallow,
 *
 * <pre>n·Cd·(A + Ab)·p0/√(R·T0)·Ψ(Π) = c·η(N)·V·(N/120)·p0/(R·T0)·f(Π)</pre>
 *
 * with n bodies, plate area A ({@link PlateArea}), bypass area Ab, Ψ ({@link CompressibleFlow}), η and f ({@link CylinderFilling}). The
 * left side falls and the right side rises with Π, so there is one root; it is bracketed and found by Brent's method (choked flow has a
 * closed form). The ambient pressure cancels.
 *
 * <p>A body for each cylinder sees pulses rather than a steady flow: the runner refills between two intake strokes. The true behaviour
 * lies between c = 1 (steady, a large common volume) and c ≈ 720°/250° (flow only while the inlet is open, no volume behind the plate).
 * Steady flow is therefore an approximation there, and {@link BoreForecast} counts c among its unknowns.
 *
 * @param body the throttle body
 * @param bodies number of bodies that share the displacement
 * @param filling what the cylinders swallow
 * @param dischargeCoefficient share of the open area that flows; plates typically 0.7–0.9 (from memory)
 * @param bypassMm2 area of the idle bypass of one body, mm²
 * @param concentration c above, from 1
 */
public record IntakeModel(
        ThrottleBody body,
        int bodies,
        CylinderFilling filling,
        double dischargeCoefficient,
        double bypassMm2,
        double concentration) {

    static final double DISCHARGE_COEFFICIENT = 0.8;

    /** Air temperature ahead of the plate where nothing else is known, K: 20 °C. */
    static final double TEMPERATURE_K = 293.15;

    private static final double CRITICAL = CompressibleFlow.criticalRatio(CompressibleFlow.GAMMA_AIR);
    private static final double CHOKED = CompressibleFlow.flowFunction(0, CompressibleFlow.GAMMA_AIR);
    private static final double ROOT_ACCURACY = 1e-10;
    private static final int MOST_STEPS = 200;

    public IntakeModel {
        if (bodies < 1 || !(dischargeCoefficient > 0) || !(bypassMm2 >= 0) || !(concentration >= 1)) {
            throw new IllegalArgumentException("bodies " + bodies + ", dischargeCoefficient " + dischargeCoefficient
                    + ", bypassMm2 " + bypassMm2 + ", concentration " + concentration);
        }
    }

    /** Pressure behind the plate over the pressure ahead, 0 to 1; 1 where the engine stands. */
    public double pressureRatio(double speedRpm, double throttlePercent) {
        if (!(speedRpm > 0)) {
            return 1;
        }
        double demand = demand(speedRpm, PlateArea.atThrottle(body, throttlePercent) + bypassMm2);
        double choked = CylinderFilling.ratioOfShare(CHOKED / demand);
        if (choked <= CRITICAL) {
            return choked;
        }
        BrentSolver solver = new BrentSolver(ROOT_ACCURACY);
        return solver.solve(
                MOST_STEPS,
                ratio -> CompressibleFlow.flowFunction(ratio, CompressibleFlow.GAMMA_AIR)
                        - demand * CylinderFilling.share(ratio),
                CRITICAL,
                1);
    }

    /** What the cylinders ask over what the area can pass, both at the ambient pressure: dimensionless. */
    private double demand(double speedRpm, double areaMm2) {
        double areaM2 = bodies * dischargeCoefficient * areaMm2 * 1e-6;
        double speed = Math.sqrt(CompressibleFlow.GAS_CONSTANT_AIR * TEMPERATURE_K);
        return concentration * filling.fullVolumeM3PerS(speedRpm) / (areaM2 * speed);
    }

    /** Open area of plate and bypass of one body that gives a pressure ratio between the critical one and 1, mm². */
    double areaMm2For(double pressureRatio, double speedRpm) {
        double wanted = CompressibleFlow.flowFunction(pressureRatio, CompressibleFlow.GAMMA_AIR)
                / CylinderFilling.share(pressureRatio);
        return demand(speedRpm, 1) / wanted;
    }

    /** Filling relative to what the engine would swallow with no throttle at all, 0 to 1. */
    public double fillingShare(double speedRpm, double throttlePercent) {
        return CylinderFilling.share(pressureRatio(speedRpm, throttlePercent));
    }

    /**
     * Air that the whole engine draws, g/s.
     *
     * @param pressurePa ambient pressure, Pa
     */
    public double airGPerS(double speedRpm, double throttlePercent, double pressurePa) {
        double density = pressurePa / (CompressibleFlow.GAS_CONSTANT_AIR * TEMPERATURE_K);
        return 1000 * density * filling.fullVolumeM3PerS(speedRpm) * fillingShare(speedRpm, throttlePercent);
    }

    IntakeModel withBody(ThrottleBody other) {
        return new IntakeModel(other, bodies, filling, dischargeCoefficient, bypassMm2, concentration);
    }

    IntakeModel withFilling(CylinderFilling other) {
        return new IntakeModel(body, bodies, other, dischargeCoefficient, bypassMm2, concentration);
    }

    IntakeModel withDischargeCoefficient(double other) {
        return new IntakeModel(body, bodies, filling, other, bypassMm2, concentration);
    }

    IntakeModel withBypassMm2(double other) {
        return new IntakeModel(body, bodies, filling, dischargeCoefficient, other, concentration);
    }

    IntakeModel withConcentration(double other) {
        return new IntakeModel(body, bodies, filling, dischargeCoefficient, bypassMm2, other);
    }
}
