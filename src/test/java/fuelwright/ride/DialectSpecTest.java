package fuelwright.ride;

import static fuelwright.ride.BothWays.assertNotes;
import static fuelwright.ride.BothWays.assertWarns;
import static fuelwright.ride.BothWays.ride;
import static fuelwright.ride.BothWays.values;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Each way of writing a log, one case each. The figures are the same in all of them. */
class DialectSpecTest {

    private static final double[] TIME = {0, 0.5, 1.25};
    private static final double[] SPEED = {1200, 3120.5, 4800};
    private static final double[] THROTTLE = {0, 18.4, 100};
    private static final String POINT =
            "time [s],engine speed [rpm],throttle [%]\n0,1200,0\n0.5,3120.5,18.4\n1.25,4800,100\n";

    private final List<DynamicTest> cases = new ArrayList<>();

    private void spec(String id, byte[] content, Consumer<Ride> more) {
        spec(id, content, RideOptions.defaults(), more);
    }

    private void spec(String id, byte[] content, RideOptions options, Consumer<Ride> more) {
        cases.add(DynamicTest.dynamicTest(id, () -> {
            Ride ride = BothWays.ride(content, options);
            assertArrayEquals(TIME, ride.timeS().toArray(), BothWays.remarks(ride));
            assertArrayEquals(
                    SPEED, ride.column(Role.ENGINE_SPEED).orElseThrow().toArray(), BothWays.remarks(ride));
            assertArrayEquals(THROTTLE, ride.column(Role.THROTTLE).orElseThrow().toArray(), BothWays.remarks(ride));
            more.accept(ride);
        }));
    }

    private void spec(String id, String content) {
        spec(id, content, r -> {});
    }

    private void spec(String id, String content, Consumer<Ride> more) {
        spec(id, content.getBytes(StandardCharsets.UTF_8), more);
    }

    private static byte[] with(int[] mark, byte[] content) {
        byte[] all = new byte[mark.length + content.length];
        for (int i = 0; i < mark.length; i++) {
            all[i] = (byte) mark[i];
        }
        System.arraycopy(content, 0, all, mark.length, content.length);
        return all;
    }

    @TestFactory
    List<DynamicTest> dialects() {
        String comma = POINT.replace(',', ';').replace('.', ',');
        spec(
                "R-D-01 comma, decimal point",
                POINT,
                r -> assertNotes(r, "Comma, decimal point, UTF-8; 3 rows, 0 skipped"));
        spec("R-D-02 semicolon, decimal comma", comma, r -> assertNotes(r, "Semicolon, decimal comma, UTF-8"));
        spec("R-D-03 semicolon, decimal point", POINT.replace(',', ';'));
        spec("R-D-04 tab, decimal point", POINT.replace(',', '\t'), r -> assertNotes(r, "Tab, decimal point"));
        spec("R-D-05 tab, decimal comma", comma.replace(';', '\t'), r -> assertNotes(r, "Tab, decimal comma"));
        spec("R-D-06 vertical bar", POINT.replace(',', '|'));
        spec("R-D-07 CR LF", POINT.replace("\n", "\r\n"));
        spec("R-D-08 lone CR", POINT.replace('\n', '\r'), r -> assertNotes(r, "lines ending in CR"));
        spec("R-D-09 no line end after the last row", POINT.strip());
        spec("R-D-10 UTF-8 with byte order mark", "\uFEFF" + POINT, r -> assertNotes(r, "UTF-8 with byte order mark"));
        spec(
                "R-D-11 UTF-16 LE with mark",
                with(new int[] {0xff, 0xfe}, POINT.getBytes(StandardCharsets.UTF_16LE)),
                r -> assertNotes(r, "UTF-16LE"));
        spec(
                "R-D-12 UTF-16 BE with mark",
                with(new int[] {0xfe, 0xff}, POINT.getBytes(StandardCharsets.UTF_16BE)),
                r -> assertNotes(r, "UTF-16BE"));
        spec("R-D-13 UTF-16 LE without mark", POINT.getBytes(StandardCharsets.UTF_16LE), r -> {});
        spec("R-D-14 UTF-16 BE without mark", POINT.getBytes(StandardCharsets.UTF_16BE), r -> {});
        spec(
                "R-D-15 Windows-1252 units",
                (comma.replace("\n", ";85\n").replaceFirst("85", "Kühlmittel [°C]")).getBytes(Dialect.WINDOWS_1252),
                r -> {
                    assertNotes(r, "Windows-1252");
                    assertEquals(85, r.column(Role.COOLANT).orElseThrow().at(0));
                });
        spec("R-D-16 all fields quoted", POINT.replaceAll("([^,\n]+)", "\"$1\""));
        spec(
                "R-D-17 quoted decimal commas between commas",
                "time [s],engine speed [rpm],throttle [%]\n0,1200,0\n\"0,5\",\"3120,5\",\"18,4\"\n\"1,25\",4800,100\n");
        spec(
                "R-D-18 quoted heading with a comma and a line break",
                POINT.replace("engine speed [rpm]", "\"engine speed,\nsmoothed [rpm]\""));
        spec(
                "R-D-19 preamble lines",
                "A logger's name\nOwner: nobody; at 12:30\n\n" + POINT,
                r -> assertNotes(r, "3 lines above the headings skipped"));
        spec(
                "R-D-20 comment lines above and between",
                "# made by hand\n" + POINT.replace("\n0.5,", "\n# a note, here\n0.5,"),
                r -> assertNotes(r, "1 comment line"));
        spec("R-D-21 heading in a comment", "# " + POINT);
        spec(
                "R-D-22 units in a second row",
                POINT.replace("time [s],engine speed [rpm],throttle [%]", "time,engine speed,throttle\ns,rpm,%"));
        spec(
                "R-D-23 units in a second row, in brackets",
                POINT.replace("time [s],engine speed [rpm],throttle [%]", "time,engine speed,throttle\n[s],[rpm],[%]"));
        spec("R-D-24 units in round brackets", POINT.replace('[', '(').replace(']', ')'));
        spec(
                "R-D-25 units glued to the values",
                "time;engine speed;throttle\n0s;1200rpm;0%\n0,5s;3120,5rpm;18,4%\n1,25s;4800rpm;100%\n");
        spec(
                "R-D-26 units after a space",
                "time,engine speed,throttle\n0 s,1200 rpm,0 %\n0.5 s,3120.5 rpm,18.4 %\n1.25 s,4800 rpm,100 %\n");
        spec(
                "R-D-27 empty brackets",
                "time (),engine speed (),throttle ()\n0,1200,0\n0.5,3120.5,18.4\n1.25,4800,100\n");
        spec(
                "R-D-28 delimiter at the end of rows, not of the headings",
                POINT.replace("\n", ",\n").replaceFirst(",\n", "\n"));
        spec("R-D-29 delimiter at the end of every line", POINT.replace("\n", ",\n"));
        spec("R-D-30 spaces around figures", POINT.replace(",", " ,  "));
        spec("R-D-31 more headings than fields", POINT.replace("[%]", "[%],gear,knock"));
        spec("R-D-32 more fields than headings", POINT.replace("\n", ",7\n").replaceFirst(",7", ""), r -> {
            assertWarns(r, "Column 4 has figures but no heading");
            assertArrayEquals(new double[] {7, 7, 7}, values(r, "column 4"));
        });
        spec(
                "R-D-33 signs and exponents",
                "time [s],engine speed [rpm],throttle [%]\n+0,1.2e+3,+0\n5E-01,3.1205E3,1.84e1\n1.25,4.8e3,1e+02\n",
                r -> {});
        spec(
                "R-D-34 leading and trailing decimal signs",
                "time [s],engine speed [rpm],throttle [%]\n.0,1200.,00.\n.5,03120.50,18.400\n1.25,4800.,100.\n");
        spec("R-D-35 a delimiter line for spreadsheets", "sep=;\n" + comma);
        spec("R-D-36 blank lines between rows", POINT.replace("\n", "\n\n"), r -> assertNotes(r, "blank line"));
        spec(
                "R-D-37 headings in capitals and underscores",
                POINT.replace("time [s],engine speed [rpm],throttle [%]", "TIME_S,ENGINE_SPEED_RPM,THROTTLE_PCT"));
        spec(
                "R-D-38 headings in camel case",
                POINT.replace("time [s],engine speed [rpm],throttle [%]", "Time,EngineSpeed,ThrottlePosition"));
        spec(
                "R-D-39 everything said by hand",
                comma.getBytes(StandardCharsets.UTF_16BE),
                RideOptions.defaults().withDelimiter(';').withDecimalSign(',').withCharset(StandardCharsets.UTF_16BE),
                r -> {});
        spec(
                "R-D-40 another encoding by hand",
                POINT.replace("time", "zeit").getBytes(Charset.forName("UTF-32BE")),
                RideOptions.defaults().withCharset(Charset.forName("UTF-32BE")),
                r -> {});
        spec(
                "R-D-41 German headings",
                "Zeit [s];Motordrehzahl [U/min];Drosselklappenstellung [%]\n0;1200;0\n0,5;3120,5;18,4\n1,25;4800;100\n");
        spec(
                "R-D-42 a last line of NUL bytes",
                POINT + "\0\0\0\0",
                r -> assertWarns(r, "Line with NUL bytes skipped: line 5"));
        return cases;
    }

    @TestFactory
    List<DynamicTest> missing() {
        for (String empty : List.of("", "NaN", "nan", "-", "--", "---", "null", "N/A", "#N/A", "\"\"")) {
            cases.add(DynamicTest.dynamicTest("R-D-50 missing written as '" + empty + "'", () -> {
                Ride ride = ride(POINT.replace("18.4", empty));
                double[] throttle = ride.column(Role.THROTTLE).orElseThrow().toArray();
                assertTrue(Double.isNaN(throttle[1]) && throttle[0] == 0 && throttle[2] == 100);
                assertEquals(3, ride.size());
                assertTrue(
                        !BothWays.says(ride, fuelwright.issue.Issue.Severity.WARNING, "fields"),
                        BothWays.remarks(ride));
            }));
        }
        return cases;
    }
}
