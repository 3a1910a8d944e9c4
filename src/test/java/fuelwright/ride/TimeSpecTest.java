package fuelwright.ride;

import static fuelwright.ride.BothWays.assertNotes;
import static fuelwright.ride.BothWays.assertWarns;
import static fuelwright.ride.BothWays.ride;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Each form of time, and each trap of clocks. */
class TimeSpecTest {

    private static Ride log(String heading, String... stamps) {
        StringBuilder text = new StringBuilder(heading + ";engine speed [rpm];throttle [%]\n");
        for (int i = 0; i < stamps.length; i++) {
            text.append(stamps[i])
                    .append(';')
                    .append(1200 + 10 * i)
                    .append(';')
                    .append(i % 2 == 0 ? 0 : 100)
                    .append('\n');
        }
        return ride(text.toString());
    }

    private static void assertTimes(Ride ride, double... expected) {
        assertArrayEquals(expected, ride.timeS().toArray(), BothWays.remarks(ride));
    }

    @Test
    @DisplayName("R-T-01 seconds")
    void seconds() {
        assertTimes(log("time [s]", "0.05", "0.10", "0.15"), 0.05, 0.10, 0.15);
    }

    @Test
    @DisplayName("R-T-02 milliseconds and microseconds as stated")
    void stated() {
        assertTimes(log("time [ms]", "50", "100", "150"), 50 * 1e-3, 100 * 1e-3, 150 * 1e-3);
        assertTimes(log("time (µs)", "50000", "100000", "150000"), 50000 * 1e-6, 100000 * 1e-6, 150000 * 1e-6);
    }

    @Test
    @DisplayName("R-T-03 no unit: by the step between rows, and said")
    void unstated() {
        Ride ms = log("time", "0", "20", "40");
        assertTimes(ms, 0, 20 * 1e-3, 40 * 1e-3);
        assertWarns(ms, "Time has no unit; rows are 20 apart, so it was read as ms");
        assertTimes(log("time", "0", "20000", "40000"), 0, 20000 * 1e-6, 40000 * 1e-6);
        assertTimes(log("time", "0", "0.02", "0.04"), 0, 0.02, 0.04);
    }

    @Test
    @DisplayName("R-T-04 clock time")
    void clock() {
        assertTimes(log("time", "0:00:01.250", "0:00:01.5", "1:02:03.125"), 1.25, 1.5, 3723.125);
        assertTimes(log("time", "12:30:01,250", "12:30:01,500", "12:30:02"), 45001.25, 45001.5, 45002);
        assertTimes(log("time", "59:58.5", "59:59.0", "60:01"), 3598.5, 3599, 3601);
        assertTimes(log("time", "9:30:01 AM", "12:30:01 PM", "1:30:01 pm"), 34201, 45001, 48601);
    }

    @Test
    @DisplayName("R-T-05 ISO 8601 with and without zone")
    void iso() {
        assertTimes(
                log("timestamp", "2026-05-01T12:30:01.250Z", "2026-05-01T12:30:01.500Z", "2026-05-01T12:30:02Z"),
                45001.25,
                45001.5,
                45002);
        assertTimes(
                log("timestamp", "2026-05-01 12:30:01.250", "2026-05-01 12:30:01.500", "2026-05-02 00:00:00"),
                45001.25,
                45001.5,
                86400);
        assertTimes(
                log("timestamp", "2026-05-01T12:30:01+02:00", "2026-05-01T12:30:02+02:00", "2026-05-01T10:30:03Z"),
                37801,
                37802,
                37803);
    }

    @Test
    @DisplayName("R-T-06 day and clock in other orders")
    void otherDates() {
        assertTimes(
                log("Date time", "31.12.2026 23:59:59.5", "01.01.2027 00:00:00.5", "01.01.2027 00:00:01"),
                86399.5,
                86400.5,
                86401);
        assertTimes(
                log("Date time", "12/31/2026 11:59:59 PM", "1/1/2027 12:00:01 AM", "1/1/2027 12:00:02 AM"),
                86399,
                86401,
                86402);
    }

    @Test
    @DisplayName("R-T-07 epoch seconds and milliseconds count from the first row's second")
    void epoch() {
        Ride seconds = log("timestamp", "1777638601.25", "1777638601.5", "1777638602");
        assertTimes(seconds, 0.25, 0.5, 1);
        assertNotes(seconds, "Time counts from a date");
        assertTimes(log("timestamp [ms]", "1777638601250", "1777638601500", "1777638602000"), 0.25, 0.5, 1);
    }

    @Test
    @DisplayName("R-T-08 whole seconds shared by several rows are spread, and said")
    void shared() {
        Ride ride = log("time [s]", "1", "1", "1", "1", "2", "2", "2", "2", "3", "3", "3", "3");
        assertTimes(ride, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 2.75, 3, 3.25, 3.5, 3.75);
        assertWarns(ride, "shared by about 4 rows each; the rows were spread evenly over each stamp's 1 s");
    }

    @Test
    @DisplayName("R-T-09 a first stamp with few rows began late, one with many began before the clock")
    void firstStamp() {
        assertTimes(
                log("time [s]", "1", "1", "2", "2", "2", "2", "3", "3", "3", "3", "4", "4", "4", "4"),
                1.5,
                1.75,
                2,
                2.25,
                2.5,
                2.75,
                3,
                3.25,
                3.5,
                3.75,
                4,
                4.25,
                4.5,
                4.75);
        assertTimes(
                log("time [s]", "0", "0", "0", "0", "1", "1", "2", "2", "3", "3"),
                -1,
                -0.5,
                0,
                0.5,
                1,
                1.5,
                2,
                2.5,
                3,
                3.5);
    }

    @Test
    @DisplayName("R-T-10 a few equal stamps stay as they are, and are counted")
    void fewEqual() {
        Ride ride = log("time [s]", "0", "0.1", "0.1", "0.2", "0.3", "0.4", "0.5");
        assertTimes(ride, 0, 0.1, 0.1, 0.2, 0.3, 0.4, 0.5);
        assertNotes(ride, "1 row has the time of the row before");
    }

    @Test
    @DisplayName("R-T-11 no time column: a rate is asked for, and used when given")
    void noTime() {
        String text = "engine speed [rpm],throttle [%]\n1200,0\n1300,10\n1400,100\n";
        assertEquals(
                "ride.csv:1:1: There is no time column; the headings are engine speed [rpm], throttle [%]. Say which column is the time (--role \"COLUMN=time\"), or how many rows a second the logger wrote (--rate HZ)",
                BothWays.refusal(text).sentence());
        Ride ride = BothWays.ride(
                text.getBytes(StandardCharsets.UTF_8), RideOptions.defaults().withSampleRate(20));
        assertTimes(ride, 0, 1 / 20.0, 2 / 20.0);
        assertNotes(ride, "20 rows a second, as you said");
    }

    @Test
    @DisplayName("R-T-12 a restarted clock starts a new segment; nothing is sorted")
    void restarted() {
        Ride ride = log("time [s]", "10", "10.1", "10.2", "0", "0.1", "0.2");
        assertTimes(ride, 10, 10.1, 10.2, 0, 0.1, 0.2);
        assertEquals(List.of(0, 3), ride.segmentStarts());
        assertWarns(ride, "Time runs backward at line 5; the log is taken as 2 stretches");
    }

    @Test
    @DisplayName("R-T-13 a heading in the middle starts a new segment")
    void repeatedHeading() {
        Ride ride = ride("time [s],rpm\n0,900\n0.1,910\ntime [s],rpm\n0.2,920\n0.3,930\n");
        assertEquals(List.of(0, 2), ride.segmentStarts());
        assertNotes(ride, "1 repeated heading (the logger was restarted)");
        assertNotes(ride, "2 stretches");
    }

    @Test
    @DisplayName("R-T-14 a gap is said")
    void gap() {
        assertWarns(log("time [s]", "0", "0.1", "0.2", "30.2", "30.3", "30.4"), "1 gap in time, the longest 30 s");
    }

    @Test
    @DisplayName("R-T-15 midnight")
    void midnight() {
        Ride ride = log("time", "23:59:59.5", "0:00:00", "0:00:00.5");
        assertTimes(ride, 86399.5, 86400, 86400.5);
        assertEquals(List.of(0), ride.segmentStarts());
        assertNotes(ride, "Line 3: the clock passed midnight");
    }

    @Test
    @DisplayName("R-T-16 milliseconds under a heading that says seconds")
    void wrongUnit() {
        Ride ride = log("time [s]", "0", "20", "40", "60");
        assertTimes(ride, 0, 20 * 1e-3, 40 * 1e-3, 60 * 1e-3);
        assertWarns(ride, "The heading says s, but then rows would be 20 s apart; it was read as ms");
        Ride other = log("time [ms]", "0", "0.02", "0.04");
        assertTimes(other, 0, 0.02, 0.04);
        assertWarns(other, "The heading says ms");
    }

    @Test
    @DisplayName("R-T-17 one wrong stamp is left out and listed")
    void wrongStamp() {
        Ride forward = log("time [s]", "0", "0.1", "99910.2", "0.3", "0.4");
        assertTimes(forward, 0, 0.1, 0.3, 0.4);
        assertWarns(forward, "Line whose time doesn't fit the lines around it skipped: line 4");
        assertTimes(log("time [s]", "5.0", "5.1", "0.2", "5.3", "5.4"), 5.0, 5.1, 5.3, 5.4);
    }

    @Test
    @DisplayName("R-T-18 a row without a stamp is left out and listed")
    void missingStamp() {
        Ride ride = log("time [s]", "0", "", "0.2", "0.3");
        assertTimes(ride, 0, 0.2, 0.3);
        assertArrayEquals(
                new double[] {1200, 1220, 1230},
                ride.column(Role.ENGINE_SPEED).orElseThrow().toArray());
        assertWarns(ride, "Line without a time skipped: line 3");
    }

    @Test
    @DisplayName("R-T-19 a misspelt time among its look-alikes")
    void misspelt() {
        Ride ride = ride(
                "time run with MIL on [s];time since codes cleared [s];engine run timee;engine speed;timing advance\n"
                        + "0;8260;0;900;5\n0;8260;1;910;6\n0;8261;2;920;7\n0;8261;3;930;8\n");
        assertNotes(ride, "Time is engine run timee");
        assertTimes(ride, 0, 1, 2, 3);
    }

    @Test
    @DisplayName("R-T-20 a date beside a clock, a lap time and an injection time aren't the time")
    void lookAlikes() {
        Ride ride = ride(
                "Date;Lap time [s];Injection time [ms];Time;rpm\n1.5.2026;1;2.5;12:00:00.0;900\n1.5.2026;2;2.6;12:00:00.1;910\n1.5.2026;3;2.7;12:00:00.2;920\n");
        assertNotes(ride, "Time is Time");
        assertEquals(2.6 * 1e-3, ride.column(Role.INJECTOR_PULSE).orElseThrow().at(1));
    }

    @Test
    @DisplayName("R-T-21 the time by hand")
    void byHand() {
        String text = "x;rpm\n0;900\n0.1;910\n0.2;920\n";
        Ride ride = BothWays.ride(
                text.getBytes(StandardCharsets.UTF_8), RideOptions.defaults().withRole("x", Role.TIME));
        assertTimes(ride, 0, 0.1, 0.2);
    }

    @Test
    @DisplayName("R-T-22 a stamp that no clock can show is left out and listed, also beside a restart")
    void impossibleStamp() {
        Ride ride = log("time [s]", "72.1", "72.2", "72.e82", "0.3", "0.4", "0.5");
        assertTimes(ride, 72.1, 72.2, 0.3, 0.4, 0.5);
        assertWarns(ride, "Line whose time doesn't fit the lines around it skipped: line 4");
    }
}
