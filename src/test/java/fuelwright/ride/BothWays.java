package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.IntStream;

/** Reads a log by Commons CSV and by the fast way, in pieces of several sizes, and holds them to the same result to the last bit. */
final class BothWays {

    private BothWays() {}

    static Loaded<Ride> read(byte[] content, RideOptions options) {
        Loaded<Ride> reference = RideReader.read("ride.csv", content, options, ReferenceRows::read);
        assertSame(reference, RideReader.read("ride.csv", content, options));
        for (int piece : new int[] {1, 37, 1000}) {
            if (content.length / piece < 20_000) {
                assertSame(reference, inPieces(content, options, piece, piece == 37 ? 2 : 1));
            }
        }
        return reference;
    }

    static Loaded<Ride> inPieces(byte[] content, RideOptions options, int piece, int threads) {
        return RideReader.read("ride.csv", content, options, (e, l, p, c) -> FastRows.read(e, l, p, c, piece, threads));
    }

    static Ride ride(byte[] content, RideOptions options) {
        Loaded<Ride> loaded = read(content, options);
        return loaded.value()
                .orElseThrow(() -> new AssertionError(loaded.issues().toString()));
    }

    static Ride ride(String content) {
        return ride(content.getBytes(StandardCharsets.UTF_8), RideOptions.defaults());
    }

    /** The only error of a log that is refused. */
    static Issue refusal(byte[] content, RideOptions options) {
        List<Issue> issues = read(content, options).issues();
        List<Issue> errors = issues.stream()
                .filter(i -> i.severity() == Issue.Severity.ERROR)
                .toList();
        assertEquals(1, errors.size(), issues.toString());
        assertTrue(!errors.get(0).todo().isEmpty(), errors.toString());
        return errors.get(0);
    }

    static Issue refusal(String content) {
        return refusal(content.getBytes(StandardCharsets.UTF_8), RideOptions.defaults());
    }

    static boolean says(Ride ride, Issue.Severity severity, String part) {
        return ride.remarks().stream()
                .anyMatch(i -> i.severity() == severity && i.sentence().contains(part));
    }

    static void assertWarns(Ride ride, String part) {
        assertTrue(
                says(ride, Issue.Severity.WARNING, part), () -> "no warning with '" + part + "' in " + remarks(ride));
    }

    static void assertNotes(Ride ride, String part) {
        assertTrue(says(ride, Issue.Severity.NOTE, part), () -> "no note with '" + part + "' in " + remarks(ride));
    }

    static void assertNoWarning(Ride ride) {
        assertTrue(ride.remarks().stream().noneMatch(i -> i.severity() == Issue.Severity.WARNING), () -> remarks(ride));
    }

    static String remarks(Ride ride) {
        StringBuilder all = new StringBuilder();
        ride.remarks()
                .forEach(i -> all.append('\n').append(i.severity()).append(' ').append(i.sentence()));
        ride.channels()
                .forEach(c -> all.append('\n')
                        .append(c.heading())
                        .append(" = ")
                        .append(c.role())
                        .append(' ')
                        .append(c.confidence())
                        .append(' ')
                        .append(c.remark()));
        return all.toString();
    }

    static double[] values(Ride ride, String heading) {
        return ride.channels().stream()
                .filter(c -> c.heading().equals(heading))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + heading + remarks(ride)))
                .values()
                .toArray();
    }

    static Channel channel(Ride ride, String heading) {
        return ride.channels().stream()
                .filter(c -> c.heading().equals(heading))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + heading + remarks(ride)));
    }

    static void assertSame(Loaded<Ride> expected, Loaded<Ride> actual) {
        assertEquals(expected.issues(), actual.issues());
        assertEquals(expected.value().isPresent(), actual.value().isPresent());
        if (expected.value().isEmpty()) {
            return;
        }
        Ride a = expected.value().get();
        Ride b = actual.value().get();
        assertBits(a.timeS(), b.timeS());
        assertEquals(a.segmentStarts(), b.segmentStarts());
        assertEquals(a.channels().size(), b.channels().size());
        for (int i = 0; i < a.channels().size(); i++) {
            Channel x = a.channels().get(i);
            Channel y = b.channels().get(i);
            assertEquals(
                    x.heading() + x.role() + x.unit() + x.confidence() + x.remark(),
                    y.heading() + y.role() + y.unit() + y.confidence() + y.remark());
            assertBits(x.values(), y.values());
        }
    }

    private static void assertBits(Column a, Column b) {
        assertEquals(a.size(), b.size());
        int differs = IntStream.range(0, a.size())
                .filter(i -> Double.doubleToLongBits(a.at(i)) != Double.doubleToLongBits(b.at(i)))
                .findFirst()
                .orElse(-1);
        assertEquals(-1, differs, () -> "row " + differs + ": " + a.at(differs) + " and " + b.at(differs));
    }
}
