package fuelwright.power;

import fuelwright.airflow.CompressibleFlow;
import fuelwright.airflow.PowerCorrection;
import fuelwright.unit.Measured;
import fuelwright.unit.Sentence;
import fuelwright.unit.Unit;

/**
 * The air a pull was done in.
 *
 * @param temperatureC air drawn in, °C
 * @param pressureKPa barometer, kPa
 * @param humidityPercent relative humidity, %
 */
public record AirOfTheDay(double temperatureC, double pressureKPa, double humidityPercent) {

    private static final double LEAST_FACTOR = 0.93;
    private static final double MOST_FACTOR = 1.07;

    public AirOfTheDay {
        if (!(temperatureC >= -40 && temperatureC <= 60)
                || !(pressureKPa >= 45 && pressureKPa <= 115)
                || !(humidityPercent >= 0 && humidityPercent <= 100)) {
            throw new IllegalArgumentException("temperature " + temperatureC + " °C must be from -40 to 60, pressure "
                    + pressureKPa + " kPa from 45 to 115, humidity " + humidityPercent + " % from 0 to 100");
        }
    }

    /** The factor of a standard. */
    public double factor(PowerCorrection standard) {
        double hPa = 10 * pressureKPa;
        return standard.factor(
                standard == PowerCorrection.DIN_70020
                        ? hPa
                        : PowerCorrection.dryPressureHpa(hPa, temperatureC, humidityPercent),
                temperatureC);
    }

    /** Density, kg/m³, by p/(R·T), vapour ignored. */
    public double densityKgPerM3() {
        return 1000 * pressureKPa / (CompressibleFlow.GAS_CONSTANT_AIR * (temperatureC + 273.15));
    }

    /** A curve corrected to a standard's air. */
    public PowerCurve corrected(PowerCurve curve, PowerCorrection standard) {
        double factor = factor(standard);
        boolean far = factor < LEAST_FACTOR || factor > MOST_FACTOR;
        return curve.times(
                factor,
                Sentence.of(
                        "corrected to %s: × %.4f from %s, %s, %.0f %% humidity%s",
                        name(standard),
                        factor,
                        Measured.of(temperatureC, Unit.CELSIUS, 0),
                        Measured.of(pressureKPa, Unit.KILOPASCAL, 1),
                        humidityPercent,
                        far ? "; further from 1 than such factors are meant for (0.93 to 1.07)" : ""));
    }

    /** The standard's name as it is written. */
    public static String name(PowerCorrection standard) {
        return switch (standard) {
            case SAE_J1349_1990 -> "SAE J1349 (1990)";
            case SAE_J1349_2004 -> "SAE J1349";
            case ISO_1585 -> "ISO 1585";
            case DIN_70020 -> "DIN 70020";
            case SAE_J607 -> "SAE J607";
        };
    }
}
