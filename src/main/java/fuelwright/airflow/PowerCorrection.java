package fuelwright.airflow;

/**
 * Factors that carry power measured in one air to a reference air, for spark ignition engines, and the vapour pressure that turns a
 * barometer into a dry pressure. Dyno pulls of different days are only comparable after it.
 */
public enum PowerCorrection {
    /** SAE J1349, issue of 1990: 1.180·(990/pd)·√(T/298) − 0.18; 25 °C, 990 hPa dry. */
    SAE_J1349_1990 {
        @Override
        public double factor(double dryPressureHpa, double temperatureC) {
            return 1.180 * (990 / dryPressureHpa) * Math.sqrt((temperatureC + 273) / 298) - 0.18;
        }
    },
    /** SAE J1349, issue of 2004: the same with a mechanical efficiency of 85 %. */
    SAE_J1349_2004 {
        @Override
        public double factor(double dryPressureHpa, double temperatureC) {
            double indicated = (990 / dryPressureHpa) * Math.sqrt((temperatureC + 273) / 298);
            return (indicated - (1 - MECHANICAL_EFFICIENCY)) / MECHANICAL_EFFICIENCY;
        }
    },
    /** ISO 1585: (99 kPa/pd)^1.2·(T/298)^0.6; 25 °C, 99 kPa dry. Meant for factors from 0.93 to 1.07. */
    ISO_1585 {
        @Override
        public double factor(double dryPressureHpa, double temperatureC) {
            return Math.pow(990 / dryPressureHpa, 1.2) * Math.pow((temperatureC + 273) / 298, 0.6);
        }
    },
    /** DIN 70020: (1013/p)·√(T/293); 20 °C, 1013 mbar; humidity ignored, so the whole pressure is given. */
    DIN_70020 {
        @Override
        public double factor(double pressureHpa, double temperatureC) {
            return 1013 / pressureHpa * Math.sqrt((temperatureC + 273) / 293);
        }
    },
    /** SAE J607: (29.92 inHg/p)·√((t°F + 460)/520); 60 °F, 29.92 inHg. */
    SAE_J607 {
        @Override
        public double factor(double dryPressureHpa, double temperatureC) {
            double inchesOfMercury = dryPressureHpa / HPA_PER_INHG;
            double fahrenheit = temperatureC * 1.8 + 32;
            return 29.92 / inchesOfMercury * Math.sqrt((fahrenheit + 460) / 520);
        }
    };

    private static final double MECHANICAL_EFFICIENCY = 0.85;
    static final double HPA_PER_INHG = 33.86389;

    private static final double CRITICAL_K = 647.096;
    private static final double CRITICAL_PA = 22.064e6;

    /**
     * The factor on measured power.
     *
     * @param dryPressureHpa barometer less the vapour's part, hPa (for {@link #DIN_70020} the barometer itself)
     * @param temperatureC air drawn in, °C
     */
    public abstract double factor(double dryPressureHpa, double temperatureC);

    /**
     * Vapour pressure of water over liquid, Pa: the saturation equation of Wagner and Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783,
     * which IAPWS recommends (coefficients from memory, held by a test).
     */
    public static double saturationPressurePa(double temperatureC) {
        double kelvin = temperatureC + 273.15;
        double t = 1 - kelvin / CRITICAL_K;
        double sum = -7.85951783 * t
                + 1.84408259 * Math.pow(t, 1.5)
                - 11.7866497 * Math.pow(t, 3)
                + 22.6807411 * Math.pow(t, 3.5)
                - 15.9618719 * Math.pow(t, 4)
                + 1.80122502 * Math.pow(t, 7.5);
        return CRITICAL_PA * Math.exp(CRITICAL_K / kelvin * sum);
    }

    /** Pressure of the dry air, hPa. */
    public static double dryPressureHpa(double pressureHpa, double temperatureC, double relativeHumidityPercent) {
        return pressureHpa - relativeHumidityPercent / 100 * saturationPressurePa(temperatureC) / 100;
    }
}
