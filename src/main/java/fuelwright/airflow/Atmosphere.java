package fuelwright.airflow;

/**
 * The standard atmosphere ISO 2533:1975 up to 11 km: T = T0 − 6.5 K/km·H, p = p0·(T/T0)^(g/(R·L)), ρ = p/(R·T), with H the geopotential
 * altitude.
 */
public final class Atmosphere {

    public static final double SEA_LEVEL_PRESSURE_PA = 101325;
    public static final double SEA_LEVEL_TEMPERATURE_K = 288.15;

    private static final double LAPSE_K_PER_M = 6.5e-3;
    private static final double GRAVITY = 9.80665;
    private static final double EXPONENT = GRAVITY / (CompressibleFlow.GAS_CONSTANT_AIR * LAPSE_K_PER_M);
    private static final double EARTH_RADIUS_M = 6356766;
    private static final double TROPOPAUSE_M = 11000;

    private Atmosphere() {}

    /** Temperature, K. */
    public static double temperatureK(double altitudeM) {
        if (!(altitudeM >= -2000 && altitudeM <= TROPOPAUSE_M)) {
            throw new IllegalArgumentException("altitudeM " + altitudeM + " must be from -2000 to " + TROPOPAUSE_M);
        }
        return SEA_LEVEL_TEMPERATURE_K - LAPSE_K_PER_M * altitudeM;
    }

    /** Pressure, Pa. */
    public static double pressurePa(double altitudeM) {
        return SEA_LEVEL_PRESSURE_PA * Math.pow(temperatureK(altitudeM) / SEA_LEVEL_TEMPERATURE_K, EXPONENT);
    }

    /** Density of dry air, kg/m³. */
    public static double densityKgPerM3(double altitudeM) {
        return pressurePa(altitudeM) / (CompressibleFlow.GAS_CONSTANT_AIR * temperatureK(altitudeM));
    }

    /** Geopotential altitude of a height above sea level, m: r·z/(r + z). */
    public static double geopotentialM(double heightM) {
        return EARTH_RADIUS_M * heightM / (EARTH_RADIUS_M + heightM);
    }
}
