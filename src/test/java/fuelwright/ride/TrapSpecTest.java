package fuelwright.ride;

import static fuelwright.ride.BothWays.assertWarns;
import static fuelwright.ride.BothWays.refusal;
import static fuelwright.ride.BothWays.ride;
import static fuelwright.ride.BothWays.values;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Broken rows never stop a load, are counted and listed; what is no log is refused in words. */
class TrapSpecTest {

    private static String log(String... odd) {
        StringBuilder text = new StringBuilder("time [s],rpm,throttle [%],lambda\n");
        for (int i = 0; i < 6; i++) {
            text.append("0.")
                    .append(i)
                    .append(',')
                    .append(1000 + i)
                    .append(".5,")
                    .append(i * 20)
                    .append(",0.9")
                    .append(i)
                    .append('\n');
            text.append(i < odd.length ? odd[i] + "\n" : "");
        }
        return text.toString();
    }

    private static void assertSkipped(String odd, String words) {
        Ride ride = ride(log(odd));
        assertEquals(6, ride.size(), BothWays.remarks(ride));
        assertArrayEquals(new double[] {1000.5, 1001.5, 1002.5, 1003.5, 1004.5, 1005.5}, values(ride, "rpm"));
        assertWarns(ride, words);
    }

    @Test
    @DisplayName("R-X-01 raw frames among rows")
    void rawFrames() {
        assertSkipped("7E8 04 41 0C 1A F8 00 00", "Line that isn't figures skipped: line 3");
        assertSkipped("7E8,04 41,0C 1A,F8", "Line that isn't figures skipped: line 3");
    }

    @Test
    @DisplayName("R-X-01b a row that begins with a hash is no comment where it has the fields of a row")
    void hashRow() {
        assertSkipped("#REF,abc,--,x", "Line that isn't figures skipped: line 3");
        Ride noted = ride(log("# a note, in words"));
        assertEquals(6, noted.size());
        assertTrue(BothWays.remarks(noted).contains("1 comment line"), BothWays.remarks(noted));
    }

    @Test
    @DisplayName("R-X-02 a row cut short")
    void cut() {
        assertSkipped("0.05,1000", "Line cut short skipped: line 3");
        Ride last = ride(log() + "0.6,1006.5,12");
        assertEquals(6, last.size());
        assertWarns(last, "Line cut short skipped: line 8");
    }

    @Test
    @DisplayName("R-X-03 two rows run together")
    void runTogether() {
        assertSkipped("0.05,1000.5,1,0.90.06,1000.5,1,0.9", "Line with more fields than columns skipped: line 3");
    }

    @Test
    @DisplayName("R-X-04 NUL bytes")
    void nul() {
        assertSkipped("0.05,10\0\0.5,1,0.9", "Line with NUL bytes skipped: line 3");
        assertSkipped("\0".repeat(70_000), "Line longer than 65,536 characters skipped: line 3");
    }

    @Test
    @DisplayName("R-X-05 an open quote takes its own line only")
    void quote() {
        assertSkipped("0.05,\"1000.5,1,0.9", "Line with a quote that isn't closed skipped: line 3");
    }

    @Test
    @DisplayName("R-X-06 text in a column of figures is missing, counted and shown")
    void text() {
        Ride ride = ride(log().replace("0.90\n", "HEATING\n").replace("0.91\n", "HEATING\n"));
        double[] lambda = ride.mixtures().get(0).values().toArray();
        assertEquals(2, Arrays.stream(lambda).filter(Double::isNaN).count());
        assertEquals(6, ride.size());
        assertWarns(ride, "lambda: 2 fields aren't figures and taken as missing (HEATING; lines 2 and 3)");
    }

    @Test
    @DisplayName("R-X-07 a bus address isn't seven hundred million")
    void exponent() {
        Ride ride = ride(log().replace("1002.5", "7E8"));
        assertTrue(Double.isNaN(values(ride, "rpm")[2]));
        assertWarns(ride, "rpm: 1 field isn't a figure and taken as missing (7E8; line 4)");
    }

    @Test
    @DisplayName("R-X-08 Java's and C's other spellings aren't figures")
    void spellings() {
        for (String odd :
                new String[] {"0x1A", "1.5f", "1.5d", "Infinity", "1e999", "1_000", "1.234,5", "--5", "1..5", "∞"}) {
            Ride ride = ride(log().replace("1002.5", '"' + odd + '"'));
            assertTrue(Double.isNaN(values(ride, "rpm")[2]), odd);
            assertWarns(ride, "rpm: 1 field isn't a figure");
        }
    }

    @Test
    @DisplayName("R-X-09 a value that its role can't have is missing, counted and shown")
    void impossible() {
        Ride ride = ride(log().replace("1002.5", "655350"));
        assertTrue(Double.isNaN(values(ride, "rpm")[2]));
        assertWarns(ride, "rpm: 1 value that engine speed can't have (such as 655400)");
    }

    @Test
    @DisplayName("R-X-10 rows without their last columns throughout")
    void shortThroughout() {
        Ride ride = ride("time [s],rpm,throttle [%],gear,knock\n0,900,1\n0.1,910,50\n0.2,920,100\n");
        assertEquals(3, ride.size());
        assertTrue(Arrays.stream(values(ride, "knock")).allMatch(Double::isNaN));
    }

    @Test
    @DisplayName("R-X-11 rows of different channels at different times keep their own samples")
    void interleaved() {
        Ride ride = ride("time [s],rpm,throttle [%]\n0,900,\n0.05,,10\n0.1,910,\n0.15,,20\n");
        assertEquals(4, ride.size());
        assertArrayEquals(new double[] {900, Double.NaN, 910, Double.NaN}, values(ride, "rpm"));
    }

    @Test
    @DisplayName("R-X-12 two columns of the same name are told apart")
    void sameName() {
        Ride ride = ride(log().replace("throttle [%]", "lambda"));
        assertWarns(ride, "heading lambda is there 2 times; this one is called lambda #2");
    }

    @Test
    @DisplayName("R-X-13 unquoted decimal commas between commas are refused, not misread")
    void decimalCommas() {
        assertEquals(
                "ride.csv:1: Rows have 6 fields under 3 headings: the figures look written with decimal commas between commas."
                        + " Export the log again with semicolons or tabs between fields, or with decimal points",
                refusal("time [s],rpm,throttle [%]\n0,0,900,5,10,5\n0,1,910,5,20,5\n0,2,920,5,30,5\n")
                        .sentence());
    }

    @Test
    @DisplayName("R-X-14 no headings")
    void noHeadings() {
        Issue issue = refusal("0,900,10\n0.1,910,20\n0.2,920,30\n");
        assertEquals("There is no heading row above the first row of figures", issue.what());
        assertEquals(1, issue.line());
    }

    @Test
    @DisplayName("R-X-15 no engine speed, or one that stands still at 0")
    void noEngineSpeed() {
        assertTrue(refusal("time [s],throttle [%]\n0,1\n1,2\n")
                .what()
                .startsWith("There is no engine speed; the headings are"));
        assertEquals(
                "The engine speed in rpm is 0 throughout",
                refusal("time [s],rpm\n0,0\n1,0\n").what());
        assertEquals(
                "The engine speed in rpm is missing throughout",
                BothWays.refusal(
                                "time [s],rpm,x\n0,,1\n1,,2\n".getBytes(StandardCharsets.UTF_8),
                                RideOptions.defaults().withRole("rpm", Role.ENGINE_SPEED))
                        .what());
    }

    @Test
    @DisplayName("R-X-16 a file that is no log is refused in words")
    void noLog() {
        assertEquals("The file is empty", refusal("").what());
        assertEquals(
                "This is a JPEG picture, not a log",
                refused(0xff, 0xd8, 0xff, 0xe0, 0, 16).what());
        assertTrue(refused('P', 'K', 3, 4, 20, 0).what().contains("save it as CSV"));
        assertEquals(
                "The file holds nothing but NUL bytes", refused(new int[4096]).what());
        assertTrue(refusal("just some words\nand more of them\n").what().startsWith("No table of figures was found"));
        assertTrue(refusal("time [s],rpm\n").what().startsWith("No table of figures was found"));
        assertTrue(refusal("{\"rpm\": [900, 910]}").severity() == Issue.Severity.ERROR);
        byte[] noise = new byte[10_000];
        new java.util.Random(1).nextBytes(noise);
        assertEquals(
                "This is not text, so it is not a log",
                BothWays.refusal(noise, RideOptions.defaults()).what());
    }

    @Test
    @DisplayName("R-X-17 one endless line is refused without reading it all")
    void endlessLine() {
        byte[] line = new byte[3_000_000];
        Arrays.fill(line, (byte) '1');
        assertTrue(RideReader.read("x", line, RideOptions.defaults())
                .issues()
                .get(0)
                .what()
                .contains("longer than a million"));
    }

    @Test
    @DisplayName("R-X-18 the count of rows and skipped lines is complete")
    void accounting() {
        Ride ride = ride(log("", "# note", "7E8 04 41", "0.35,1", "0.45,1,2,3,4,5"));
        assertTrue(
                ride.remarks()
                        .get(0)
                        .what()
                        .equals("Comma, decimal point, UTF-8; 6 rows, 5 skipped: 1 blank line, 1 comment line, "
                                + "1 line with more fields than columns, 1 line cut short, 1 line that isn't figures"),
                BothWays.remarks(ride));
    }

    private static Issue refused(int... bytes) {
        byte[] content = new byte[bytes.length];
        for (int i = 0; i < bytes.length; i++) {
            content[i] = (byte) bytes[i];
        }
        return BothWays.refusal(content, RideOptions.defaults());
    }

    @Test
    @DisplayName("R-X-19 pictures, renamed spreadsheets, empty files and two gigabytes of one line are refused at once")
    void hopelessFiles(@TempDir Path folder) throws IOException {
        byte[] picture = new byte[300_000];
        new java.util.Random(2).nextBytes(picture);
        System.arraycopy(new byte[] {(byte) 0xff, (byte) 0xd8, (byte) 0xff, (byte) 0xe0}, 0, picture, 0, 4);
        byte[] sheet = picture.clone();
        System.arraycopy(new byte[] {'P', 'K', 3, 4}, 0, sheet, 0, 4);
        assertEquals("This is a JPEG picture, not a log", refusedFile(folder, "ride.csv", picture));
        assertTrue(refusedFile(folder, "table.csv", sheet).contains("not a log"));
        assertEquals("The file is empty", refusedFile(folder, "nothing.csv", new byte[0]));
        Path endless = folder.resolve("endless.csv");
        byte[] start = new byte[2_000_000];
        Arrays.fill(start, (byte) '1');
        Files.write(endless, start);
        try (RandomAccessFile file = new RandomAccessFile(endless.toFile(), "rw")) {
            // The rest is a hole: it takes no room on the disk.
            file.setLength(2L << 30);
        }
        assertTrue(refusedFile(endless).contains("longer than a million"));
    }

    private static String refusedFile(Path folder, String name, byte[] content) throws IOException {
        return refusedFile(Files.write(folder.resolve(name), content));
    }

    /** The only sentence about a file that isn't read; the limit of time is there to find a reader that reads it all. */
    private static String refusedFile(Path file) {
        return assertTimeoutPreemptively(Duration.ofSeconds(10), () -> {
            Loaded<Ride> loaded = RideReader.read(file, RideOptions.defaults(), p -> {}, () -> false);
            assertTrue(loaded.value().isEmpty());
            assertEquals(1, loaded.issues().size());
            return loaded.issues().get(0).what();
        });
    }
}
