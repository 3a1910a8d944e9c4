package fuelwright.airflow;

/**
 * The idle bypass. The idle runs on it and not on the plates (common practice, no source), so its area follows from the engine: what
 * passes {@value #IDLE_RPM} rpm at an intake pressure of {@value #IDLE_PRESSURE_RATIO} of the ambient one with closed plates. After new
 * bodies are fitted the idle is set again, so the area is the same before and after. How far that may be out is among the unknowns of
 * {@link BoreForecast}.
 */
final class BypassAir {

    static final double IDLE_RPM = 1000;
    static final double IDLE_PRESSURE_RATIO = 0.4;

    private BypassAir() {}

    /** Area for one body, mm². */
    static double areaMm2(CylinderFilling filling, int bodies) {
        double kgPerS = filling.fullVolumeM3PerS(IDLE_RPM)
                * Atmosphere.SEA_LEVEL_PRESSURE_PA
                / (CompressibleFlow.GAS_CONSTANT_AIR * IntakeModel.TEMPERATURE_K)
                * CylinderFilling.share(IDLE_PRESSURE_RATIO);
        double perMm2 = CompressibleFlow.airGPerS(
                IntakeModel.DISCHARGE_COEFFICIENT,
                1,
                Atmosphere.SEA_LEVEL_PRESSURE_PA,
                IntakeModel.TEMPERATURE_K,
                IDLE_PRESSURE_RATIO);
        return kgPerS * 1000 / perMm2 / bodies;
    }

    /**
     * The nominal intake of a machine with one of its bodies; its displacement must be known. Where nobody has said how many bodies there
     * are it is that of one.
     */
    static IntakeModel intake(Machine machine, ThrottleBody body) {
        int bodies = machine.bodies().orElse(1);
        CylinderFilling filling = CylinderFilling.of(machine.displacementCc().orElseThrow(), machine.redlineRpm());
        return new IntakeModel(body, bodies, filling, IntakeModel.DISCHARGE_COEFFICIENT, areaMm2(filling, bodies), 1);
    }
}
