package fuelwright.ride;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.io.IOException;
import java.time.Duration;
import java.util.Arrays;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Seeded damage to good logs: bit flips, cuts, splices, repeats. No exception, no hang, and nothing taken in silently. */
class MutatedLogsTest {

    private static final int INPUTS = 20_000;
    private static final Pattern COUNTS = Pattern.compile("; (\\d+) rows, (\\d+) skipped");

    @Test
    void damaged_logs_are_read_or_refused_but_never_break_the_reader_or_slip_through() {
        Random random = new Random(7);
        byte[][] good = good(random);
        int[] readAndRefused = new int[2];
        assertTimeoutPreemptively(Duration.ofMinutes(5), () -> {
            for (int i = 0; i < INPUTS; i++) {
                byte[] content = damaged(good, random);
                int number = i;
                Loaded<Ride> loaded;
                try {
                    loaded = RideReader.read("ride.csv", content, RideOptions.defaults());
                    if (i % 40 == 0) {
                        BothWays.assertSame(
                                RideReader.read("ride.csv", content, RideOptions.defaults(), ReferenceRows::read),
                                loaded);
                        BothWays.assertSame(loaded, BothWays.inPieces(content, RideOptions.defaults(), 53, 2));
                    }
                    check(content, loaded, i % 8 == 0);
                } catch (RuntimeException | AssertionError | IOException e) {
                    throw new AssertionError(
                            "input " + number + ":\n"
                                    + new String(content, java.nio.charset.StandardCharsets.ISO_8859_1),
                            e);
                }
                readAndRefused[loaded.value().isPresent() ? 0 : 1]++;
            }
        });
        assertTrue(readAndRefused[0] > INPUTS / 4 && readAndRefused[1] > INPUTS / 100, Arrays.toString(readAndRefused));
    }

    private static byte[][] good(Random random) {
        byte[][] good = new byte[60][];
        for (int i = 0; i < good.length; i++) {
            char[][] signs = {{',', '.'}, {';', ','}, {'\t', '.'}};
            char[] sign = signs[i % signs.length];
            LogWriter.Encoding encoding =
                    LogWriter.Encoding.values()[random.nextInt(LogWriter.Encoding.values().length)];
            LogWriter.Trap trap = LogWriter.Trap.values()[random.nextInt(LogWriter.Trap.values().length)];
            LogWriter log =
                    new LogWriter(sign[0], sign[1], encoding, i % 10 == 0, i % 2 == 0 ? "\n" : "\r\n", trap, random);
            log.rows.subList(7, log.rows.size()).clear();
            good[i] = log.bytes();
        }
        return good;
    }

    private static byte[] damaged(byte[][] good, Random random) {
        byte[] content = good[random.nextInt(good.length)].clone();
        for (int times = 1 + random.nextInt(3); times > 0 && content.length > 2; times--) {
            int at = random.nextInt(content.length);
            switch (random.nextInt(7)) {
                case 0 -> content[at] ^= (byte) (1 << random.nextInt(8));
                case 1 -> content[at] = (byte) random.nextInt(256);
                case 2 -> content = Arrays.copyOf(content, at);
                case 3 -> content = Arrays.copyOfRange(content, at, content.length);
                case 4 -> content = spliced(content, at, good[random.nextInt(good.length)], random);
                case 5 -> content = spliced(content, at, content, random);
                default -> {
                    byte sign = (byte) "\",;\t\n\r-.eE# \0+:".charAt(random.nextInt(15));
                    content[at] = sign;
                }
            }
        }
        return content;
    }

    /** The first {@code at} bytes of one and the last bytes of another, from anywhere. */
    private static byte[] spliced(byte[] first, int at, byte[] second, Random random) {
        int from = random.nextInt(second.length + 1);
        byte[] all = Arrays.copyOf(first, at + second.length - from);
        System.arraycopy(second, from, all, at, second.length - from);
        return all;
    }

    private static void check(byte[] content, Loaded<Ride> loaded, boolean count) throws IOException {
        for (Issue issue : loaded.issues()) {
            assertTrue(!issue.what().isBlank() && issue.file().equals("ride.csv"), issue::toString);
            assertTrue(issue.severity() == Issue.Severity.NOTE || !issue.todo().isBlank(), issue::toString);
        }
        if (loaded.value().isEmpty()) {
            return;
        }
        Ride ride = loaded.value().get();
        assertTrue(ride.size() > 0);
        int segment = 0;
        for (int i = 0; i < ride.size(); i++) {
            double time = ride.timeS().at(i);
            assertTrue(Math.abs(time) < 1e12, "time " + time);
            boolean starts = segment < ride.segmentStarts().size()
                    && ride.segmentStarts().get(segment) == i;
            segment += starts ? 1 : 0;
            assertTrue(i == 0 || starts || time >= ride.timeS().at(i - 1), "time runs backward within a segment");
        }
        for (Channel channel : ride.channels()) {
            if (channel.confidence() != Channel.Confidence.LEFT_OUT) {
                for (double value : channel.values().toArray()) {
                    assertTrue(Double.isNaN(value) || possible(channel.role(), value), channel.role() + " " + value);
                }
            }
        }
        if (count) {
            assertEquals(lines(content), accounted(ride), () -> BothWays.remarks(ride));
        }
    }

    private static boolean possible(Role role, double value) {
        return switch (role) {
            case ENGINE_SPEED -> value >= 0 && value <= 30_000;
            case THROTTLE -> value >= -20 && value <= 120;
            case LAMBDA, AFR -> value >= 0.3 && value <= 50;
            case COOLANT -> value >= -60 && value <= 250;
            default -> Math.abs(value) < 1e300;
        };
    }

    /** Lines from the first row on: each must be a row or be counted as skipped. */
    private static int lines(byte[] content) throws IOException {
        Encoded encoded = Encoded.of("ride.csv", ByteSource.of(content), RideOptions.defaults())
                .value()
                .orElseThrow();
        Layout layout = RideReader.layout("ride.csv", encoded, RideOptions.defaults())
                .value()
                .orElseThrow();
        byte[] bytes = encoded.bytes().bytes(layout.dataStart(), Integer.MAX_VALUE - 16);
        int lines = 0;
        for (int i = 0; i < bytes.length; i++) {
            lines += bytes[i] == '\n' || i == bytes.length - 1 ? 1 : 0;
        }
        return lines;
    }

    private static int accounted(Ride ride) {
        Matcher counts = COUNTS.matcher(ride.remarks().get(0).what());
        assertTrue(counts.find(), ride.remarks().get(0).what());
        return Integer.parseInt(counts.group(1)) + Integer.parseInt(counts.group(2));
    }
}
