package fuelwright.ride;

import static fuelwright.ride.BothWays.assertWarns;
import static fuelwright.ride.BothWays.channel;
import static fuelwright.ride.BothWays.ride;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ride.Channel.Confidence;
import fuelwright.unit.Unit;
import java.nio.charset.StandardCharsets;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Roles by name, unit and values; and what would hurt if it were taken for what its heading says. */
class RoleSpecTest {

    private static final int ROWS = 40;

    private static byte[] log(String heading, IntToDoubleFunction value) {
        StringBuilder text = new StringBuilder("time [s];rpm;" + heading + "\n");
        for (int i = 0; i < ROWS; i++) {
            text.append(i / 10.0)
                    .append(';')
                    .append(i < 5 ? 0 : 1500 + 20 * i)
                    .append(';')
                    .append(value.applyAsDouble(i))
                    .append('\n');
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static Ride read(String heading, IntToDoubleFunction value) {
        return BothWays.ride(log(heading, value), RideOptions.defaults());
    }

    private static Ride read(String heading, IntToDoubleFunction value, RideOptions options) {
        return BothWays.ride(log(heading, value), options);
    }

    /** The descriptions of SAE J1979 parameters (values from memory), and trade names. */
    @ParameterizedTest(name = "R-R-01 {0} is {1}")
    @CsvSource(delimiter = '|', textBlock = """
            Engine Coolant Temperature [°C]|COOLANT|85
            Short Term Fuel Trim - Bank 1 [%]|SHORT_TRIM|2
            Long Term Fuel Trim - Bank 1 [%]|LONG_TRIM|2
            Intake Manifold Absolute Pressure [kPa]|MANIFOLD_PRESSURE|60
            Vehicle Speed Sensor [km/h]|ROAD_SPEED|50
            Ignition Timing Advance for #1 Cylinder [°]|IGNITION|20
            Intake Air Temperature [°C]|INTAKE_AIR|25
            Absolute Throttle Position [%]|THROTTLE|30
            Barometric Pressure [kPa]|BAROMETER|99
            Control Module Voltage [V]|BATTERY|13.8
            Commanded Equivalence Ratio|COMMANDED_LAMBDA|0.95
            O2 Sensor 1 Equivalence Ratio|LAMBDA|0.95
            Bank 1 Sensor 1 Lambda|LAMBDA|0.95
            Calculated LOAD Value [%]|OTHER|30
            Commanded Throttle Actuator Control [%]|OTHER|30
            Accelerator Pedal Position D [%]|OTHER|30
            Commanded Evaporative Purge [%]|OTHER|30
            Time Since Diagnostic Trouble Codes Cleared [min]|OTHER|5
            Ambient Air Temperature [°C]|OTHER|20
            Catalyst Temperature Bank 1, Sensor 1 [°C]|OTHER|400
            Air Flow Rate from Mass Air Flow Sensor [g/s]|OTHER|9
            TPS (%)|THROTTLE|30
            MAP_kPa|MANIFOLD_PRESSURE|60
            CLT|COOLANT|85
            IAT|INTAKE_AIR|25
            AFR|AFR|13.5
            air/fuel ratio|AFR|13.5
            Lambda front|LAMBDA|0.9
            wideband|LAMBDA|0.9
            AFR target|COMMANDED_LAMBDA|13.5
            target lambda|COMMANDED_LAMBDA|0.9
            injector pulse width [ms]|INJECTOR_PULSE|4
            Fuel cut|FUEL_CUT|1
            gear|GEAR|3
            EGT 1 [°C]|EXHAUST_TEMPERATURE|700
            knock level|KNOCK|2
            wheel speed [km/h]|ROAD_SPEED|40
            lambda correction [%]|SHORT_TRIM|2
            lambda sensor heater duty [%]|OTHER|40
            Saugrohrdruck [mbar]|MANIFOLD_PRESSURE|600
            O2 voltage [V]|OTHER|0.4
            """)
    void names(String heading, Role role, double about) {
        Ride ride = read(heading, i -> about * (1 + 0.001 * i));
        assertEquals(role, channel(ride, heading).role(), BothWays.remarks(ride));
    }

    @Test
    @DisplayName("R-R-02 AFR in a lambda column")
    void afrAsLambda() {
        Ride ride = read("lambda", i -> 13 + 0.01 * i);
        assertEquals(13.1 / 14.7, channel(ride, "lambda").values().at(10));
        assertEquals(Confidence.LOOK, channel(ride, "lambda").confidence());
        assertWarns(ride, "the heading says lambda, but values about 13.2 are an air–fuel ratio; read as AFR");
    }

    @Test
    @DisplayName("R-R-03 lambda in an AFR column")
    void lambdaAsAfr() {
        Ride ride = read("AFR", i -> 0.9 + 0.001 * i);
        assertEquals(0.91, channel(ride, "AFR").values().at(10));
        assertWarns(ride, "the heading says AFR, but values about 0.92 are lambda; read as lambda");
    }

    @Test
    @DisplayName("R-R-04 fuel–air equivalence ratio is turned over, the J1979 items aren't")
    void equivalence() {
        assertEquals(
                1 / 1.1,
                channel(read("phi", i -> i == 10 ? 1.1 : 1 + 0.001 * i), "phi")
                        .values()
                        .at(10));
        assertEquals(
                1.1,
                channel(read("O2S11 equivalence ratio", i -> i == 10 ? 1.1 : 1 + 0.001 * i), "O2S11 equivalence ratio")
                        .values()
                        .at(10));
        assertEquals(
                1.1,
                channel(
                                read("Fuel/air commanded equivalence ratio ()", i -> i == 10 ? 1.1 : 1),
                                "Fuel/air commanded equivalence ratio ()")
                        .values()
                        .at(10));
    }

    @Test
    @DisplayName("R-R-05 wideband volts need their scale")
    void volts() {
        Ride without = read("wideband [V]", i -> 1 + 0.08 * i);
        assertTrue(without.mixtures().isEmpty());
        assertWarns(without, "wideband volts without a scale can't be used");
        RideOptions scale = RideOptions.defaults().withWidebandScale(new WidebandScale(0, 0.5, 5, 1.5));
        Ride with = read("wideband [V]", i -> 1 + 0.08 * i, scale);
        assertEquals(0.5 + 1.8 * 1.0 / 5, with.mixtures().get(0).values().at(10), 1e-15);
    }

    @Test
    @DisplayName("R-R-06 narrow-band volts are never taken for wideband")
    void narrow() {
        IntToDoubleFunction swing = i -> i % 4 < 2 ? 0.1 + 0.01 * (i % 3) : 0.85 + 0.01 * (i % 3);
        Ride volts = read(
                "wideband [V]", swing, RideOptions.defaults().withWidebandScale(new WidebandScale(0, 0.5, 5, 1.5)));
        assertTrue(volts.mixtures().isEmpty());
        assertWarns(volts, "narrow-band");
        Ride lambda = read("lambda", swing);
        assertTrue(lambda.mixtures().isEmpty());
        assertWarns(lambda, "are a narrow-band sensor's volts, not lambda");
    }

    @Test
    @DisplayName("R-R-21 a display's 0 where it sees nothing makes no narrow-band sensor, and no reading")
    void blind() {
        Ride ride = read("lambda", i -> i % 4 == 0 ? 0 : 0.9 + 0.01 * (i % 3));
        assertEquals(1, ride.mixtures().size());
        assertTrue(!ride.mixtures().get(0).values().has(8));
    }

    private static Ride temperatures(String coolant, int coolantAt, String intake, int intakeAt) {
        StringBuilder text = new StringBuilder("time [s],rpm," + coolant + "," + intake + "\n");
        for (int i = 0; i < 20; i++) {
            text.append(String.format(
                    java.util.Locale.ROOT, "%.1f,%d,%d,%d%n", i / 10.0, 2000 + i, coolantAt + i % 3, intakeAt + i % 2));
        }
        return BothWays.ride(text.toString());
    }

    @Test
    @DisplayName("R-R-23 a temperature without a unit is in that of the file's others, and is worth a look")
    void temperaturesAlike() {
        for (String coolant : new String[] {"coolant [°F]", "coolant"}) {
            Channel intake = channel(temperatures(coolant, 185, "IAT", 71), "IAT");
            assertEquals(Unit.FAHRENHEIT, intake.unit(), coolant);
            assertEquals(Channel.Confidence.LOOK, intake.confidence());
            assertEquals(21.7, intake.values().at(0), 0.1);
        }
        Channel cool = channel(temperatures("coolant [°C]", 85, "IAT", 24), "IAT");
        assertEquals(Unit.CELSIUS, cool.unit());
        assertEquals(Channel.Confidence.SURE, cool.confidence());
    }

    @Test
    @DisplayName("R-R-24 hot intake air without a unit is worth a look")
    void hotIntakeAir() {
        Channel hot = channel(temperatures("coolant [°C]", 85, "IAT", 71), "IAT");
        assertEquals(Unit.CELSIUS, hot.unit());
        assertEquals(Channel.Confidence.LOOK, hot.confidence());
        assertTrue(hot.remark().contains("could it be °F?"), hot.remark());
    }

    @Test
    @DisplayName("R-R-25 a heading that names no unit isn't said to name one")
    void headingWithoutUnit() {
        Ride ride = read("Wideband", i -> 13 + 0.1 * (i % 3));
        assertWarns(ride, "the heading names no unit; values about 13.1 are an air–fuel ratio; read as AFR");
        assertEquals(0, ride.overruledUnits().size());
    }

    @Test
    @DisplayName("R-R-22 lambda in percent, and every heading whose unit was overruled is known as such")
    void percent() {
        Ride ride = read("lambda", i -> 90 + i % 3);
        assertEquals(0.91, ride.mixtures().get(0).values().at(10), 1e-9);
        assertEquals(1, ride.overruledUnits().size());
        assertEquals(1, read("lambda", i -> 13 + 0.1 * (i % 3)).overruledUnits().size());
        assertEquals(0, read("AFR", i -> 13 + 0.1 * (i % 3)).overruledUnits().size());
    }

    @Test
    @DisplayName("R-R-07 a mixture that never moves is no reading, nor is a command of 0")
    void constant() {
        Ride ride = read("lambda", i -> 1);
        assertTrue(ride.mixtures().isEmpty());
        assertWarns(ride, "lambda: 1 throughout; it isn't used as lambda");
        assertTrue(
                read("commanded lambda", i -> 0).channel(Role.COMMANDED_LAMBDA).isEmpty());
        assertTrue(
                read("commanded lambda", i -> 1).channel(Role.COMMANDED_LAMBDA).isPresent());
        assertTrue(read("Short term fuel trim [%]", i -> 99.21875)
                .channel(Role.SHORT_TRIM)
                .isEmpty());
        assertTrue(read("Short term fuel trim [%]", i -> 0)
                .channel(Role.SHORT_TRIM)
                .isPresent());
    }

    @Test
    @DisplayName("R-R-08 pressures in other units, stated or not")
    void pressures() {
        assertEquals(
                60,
                channel(read("MAP [mbar]", i -> 600 + i - 10), "MAP [mbar]")
                        .values()
                        .at(10),
                1e-12);
        assertEquals(60, channel(read("MAP", i -> 600 + i - 10), "MAP").values().at(10), 1e-12);
        assertEquals(
                60,
                channel(read("MAP [bar]", i -> 0.6 + 0.01 * (i - 10)), "MAP [bar]")
                        .values()
                        .at(10),
                1e-12);
        assertEquals(
                Unit.PSI.toCanonical(9),
                channel(read("MAP [psi]", i -> 9 + 0.1 * (i - 10)), "MAP [psi]")
                        .values()
                        .at(10));
        assertEquals(
                Unit.INCH_OF_MERCURY.toCanonical(20),
                channel(read("MAP [inHg]", i -> 20 + 0.1 * (i - 10)), "MAP [inHg]")
                        .values()
                        .at(10));
        assertEquals(
                Unit.INCH_OF_MERCURY.toCanonical(29.9),
                channel(read("baro", i -> 29.9), "baro").values().at(10));
        assertEquals(
                Unit.PSI.toCanonical(14.5),
                channel(read("baro", i -> 14.5), "baro").values().at(10));
    }

    @Test
    @DisplayName("R-R-09 a unit that can't be is doubted")
    void wrongUnit() {
        Ride ride = read("MAP [kPa]", i -> 600 + i);
        assertEquals(60, channel(ride, "MAP [kPa]").values().at(0), 1e-12);
        assertWarns(ride, "kPa can't be manifold pressure; read as mbar");
        assertWarns(read("coolant [°C]", i -> 180 + i), "can't be coolant; read as °F");
    }

    @Test
    @DisplayName("R-R-10 gauge pressure: by negative values, by the key-on reading, by its heading")
    void gauge() {
        Ride negative = read("MAP [kPa]", i -> -60 + i);
        assertEquals(101.325 - 60, channel(negative, "MAP [kPa]").values().at(0), 1e-12);
        assertWarns(negative, "gauge pressure (values below 0): 101.3 kPa added, the standard atmosphere");
        assertWarns(read("MAP [kPa]", i -> i < 5 ? 0.2 : 20 + i), "gauge pressure (about 0 with the engine stopped)");
        assertWarns(read("boost [kPa]", i -> 20 + i), "gauge pressure (by its heading)");
        Ride baro = ride("time [s];rpm;MAP [kPa];baro [kPa]\n0;900;-60;97\n1;910;-50;97\n2;920;-40;97\n");
        assertEquals(97.0 - 60, channel(baro, "MAP [kPa]").values().at(0));
        Ride absolute = read("MAP [kPa]", i -> i < 5 ? 100 : 20 + i);
        assertEquals(100, channel(absolute, "MAP [kPa]").values().at(0));
        BothWays.assertNoWarning(absolute);
    }

    @Test
    @DisplayName("R-R-11 throttle from 0 to 1")
    void fraction() {
        Ride ride = read("throttle [%]", i -> i / 39.0);
        assertEquals(100, channel(ride, "throttle [%]").values().at(39));
        assertWarns(ride, "values only between 0 and 1: read as a fraction, not as %");
    }

    @Test
    @DisplayName("R-R-12 throttle that never closes or never opens fully is said")
    void throttleSpan() {
        assertWarns(read("TPS [%]", i -> 15.7 + 2 * i), "never closes: its lowest value is 15.7 %");
        assertWarns(read("TPS [%]", i -> i), "never opens fully: its highest value is 39 %");
        BothWays.assertNoWarning(read("TPS [%]", i -> i * 100 / 39.0));
    }

    @Test
    @DisplayName("R-R-13 throttle in volts, closed and open from the ride")
    void throttleVolts() {
        Ride ride = read("TPS [V]", i -> 0.5 + 4.0 * Math.max(0, i - 9) / 30);
        assertEquals(0, channel(ride, "TPS [V]").values().at(0));
        assertEquals(100, channel(ride, "TPS [V]").values().at(39), 1e-12);
        assertWarns(ride, "0.5 V taken as closed and 4.5 V as open");
        assertTrue(read("TPS [V]", i -> 0.5 + 0.01 * i).channel(Role.THROTTLE).isEmpty());
    }

    @Test
    @DisplayName("R-R-14 temperatures and speeds in other units")
    void others() {
        assertEquals(
                Unit.FAHRENHEIT.toCanonical(180),
                channel(read("coolant", i -> 180 + 0.1 * i), "coolant").values().at(0));
        assertEquals(
                100 * 1.609344,
                channel(read("GPS speed [mph]", i -> 100 + i), "GPS speed [mph]")
                        .values()
                        .at(0));
        assertEquals(
                Confidence.LOOK,
                channel(read("vehicle speed", i -> 100 + i), "vehicle speed").confidence());
        assertEquals(
                5 * 1e-3,
                channel(read("injector pulse", i -> 5 + 0.1 * i), "injector pulse")
                        .values()
                        .at(0));
        assertEquals(
                5000 * 1e-6,
                channel(read("injector pulse", i -> 5000 + i), "injector pulse")
                        .values()
                        .at(0));
    }

    @Test
    @DisplayName("R-R-15 where two columns fit, one is used and the other is named")
    void twoFit() {
        Ride ride = ride(
                "time [s];rpm;engine speed;TPS [%];throttle B [%]\n0;900;901;0;16\n1;910;911;100;80\n2;920;921;0;30\n");
        assertEquals("rpm", ride.channel(Role.ENGINE_SPEED).orElseThrow().heading());
        assertWarns(ride, "rpm: engine speed fits engine speed as well; this one is used");
        assertEquals("TPS [%]", ride.channel(Role.THROTTLE).orElseThrow().heading());
        assertEquals(Role.OTHER, channel(ride, "throttle B [%]").role());
    }

    @Test
    @DisplayName("R-R-16 several sensors of mixture are all kept")
    void severalMixtures() {
        Ride ride = ride(
                "time [s];rpm;lambda 1;lambda 2;AFR 3\n0;900;0.9;0.91;13\n1;910;0.92;0.93;13.1\n2;920;0.9;0.91;13\n");
        assertEquals(3, ride.mixtures().size());
    }

    @Test
    @DisplayName("R-R-17 words and flags")
    void words() {
        Ride ride = ride("time [s];rpm;fuel cut;note\n0;900;off;start\n1;910;on;\n2;920;off;stop\n");
        assertEquals(1, ride.column(Role.FUEL_CUT).orElseThrow().at(1));
        assertEquals("words, not figures", channel(ride, "note").remark().replaceFirst(".*; ", ""));
    }

    @Test
    @DisplayName("R-R-18 role and unit by hand")
    void byHand() {
        RideOptions options = RideOptions.defaults()
                .withRole("x", Role.AFR)
                .withUnit("throttle", Unit.PERCENT)
                .withAfrScale(14.1);
        Ride ride = read("x", i -> 12 + 0.1 * i, options);
        assertEquals(12 / 14.1, ride.mixtures().get(0).values().at(0));
        Ride percent = read("throttle", i -> i / 50.0, options);
        assertEquals(39 / 50.0, percent.column(Role.THROTTLE).orElseThrow().at(39));
    }

    @Test
    @DisplayName("R-R-19 a trim written as a factor")
    void trimFactor() {
        Ride ride = read("short term fuel trim", i -> 0.96 + 0.002 * i);
        assertEquals(-4, channel(ride, "short term fuel trim").values().at(0), 1e-12);
        assertWarns(ride, "stays about 1: read as a factor");
        assertWarns(read("short term fuel trim [%]", i -> 0.96 + 0.002 * i), "a factor rather than %?");
    }

    @Test
    @DisplayName("R-R-20 volts said to be lambda are still volts")
    void voltsSaidToBeLambda() {
        Ride ride = read("O2 [V]", i -> 1 + 0.08 * i, RideOptions.defaults().withRole("O2 [V]", Role.LAMBDA));
        assertTrue(ride.mixtures().isEmpty());
        assertWarns(ride, "wideband volts without a scale can't be used");
    }
}
