package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;

import fuelwright.issue.Loaded;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Every dialect with every trap: the figures come back to the last bit, and what isn't a row is counted. */
class DialectsTimesTrapsTest {

    private static final Role[] ROLES = {
        Role.TIME, Role.ENGINE_SPEED, Role.THROTTLE, Role.MANIFOLD_PRESSURE, Role.LAMBDA, Role.COOLANT
    };

    @Test
    void figures_are_the_source_figures_to_the_last_bit_in_every_dialect_with_every_trap() {
        Random random = new Random(20260501);
        int logs = 0;
        for (char[] signs :
                new char[][] {{',', '.'}, {';', ','}, {';', '.'}, {'\t', '.'}, {'\t', ','}, {'|', '.'}, {',', ','}}) {
            for (LogWriter.Encoding encoding : LogWriter.Encoding.values()) {
                for (String lineEnd : new String[] {"\n", "\r\n"}) {
                    for (LogWriter.Trap trap : LogWriter.Trap.values()) {
                        boolean quoted = signs[0] == signs[1] || random.nextInt(3) == 0;
                        LogWriter log = new LogWriter(signs[0], signs[1], encoding, quoted, lineEnd, trap, random);
                        check(log, log.bytes());
                        logs++;
                    }
                }
            }
        }
        assertEquals(7 * 6 * 2 * 15, logs);
    }

    private static void check(LogWriter log, byte[] content) {
        String what = "delimiter " + log.delimiter + " sign " + log.sign + ' ' + log.encoding + ' ' + log.trap
                + " quoted " + log.quoted;
        Loaded<Ride> loaded = RideReader.read("ride.csv", content, RideOptions.defaults(), ReferenceRows::read);
        Ride ride = loaded.value().orElseThrow(() -> new AssertionError(what + loaded.issues()));
        BothWays.assertSame(loaded, RideReader.read("ride.csv", content, RideOptions.defaults()));
        BothWays.assertSame(loaded, BothWays.inPieces(content, RideOptions.defaults(), 97, 2));
        assertEquals(log.rows.size(), ride.size(), () -> what + BothWays.remarks(ride));
        for (int c = 0; c < ROLES.length; c++) {
            Column column = c == 0
                    ? ride.timeS()
                    : ride.column(ROLES[c]).orElseThrow(() -> new AssertionError(what + BothWays.remarks(ride)));
            for (int i = 0; i < log.rows.size(); i++) {
                double expected = Double.parseDouble(log.rows.get(i)[c]);
                double actual = column.at(i);
                int row = i;
                assertEquals(
                        Double.doubleToLongBits(expected),
                        Double.doubleToLongBits(actual),
                        () -> what + " row " + row + ": " + expected + " and " + actual + BothWays.remarks(ride));
            }
        }
        long bad = ride.remarks().stream()
                .filter(r -> r.severity() == fuelwright.issue.Issue.Severity.WARNING
                        && r.what().contains(" skipped: line"))
                .count();
        assertEquals(log.bad, bad, () -> what + BothWays.remarks(ride));
    }
}
