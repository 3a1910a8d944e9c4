package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the cases in {@code table-cases.txt} can't show: bytes, files, sizes, and what the user tells. */
class TableReaderTest {

    private static final String TEXT = "# quantity: injector pulse [ms]\n"
            + "# workshop: Größe µ\n"
            + "engine speed [rpm] \\ throttle [%],0,50\n"
            + "1000,2,3\n"
            + "2000,2.5,4\n";

    private static final Table TABLE = TableReader.read("t", TEXT).value().orElseThrow();

    @Test
    void utf8WithAndWithoutByteOrderMark() {
        assertReads(TEXT.getBytes(StandardCharsets.UTF_8), 0);
        assertReads(("\uFEFF" + TEXT).getBytes(StandardCharsets.UTF_8), 0);
        assertEquals(TABLE, TableReader.read("t", "\uFEFF" + TEXT).value().orElseThrow());
    }

    @Test
    void utf16WithAndWithoutByteOrderMark() {
        assertReads(("\uFEFF" + TEXT).getBytes(StandardCharsets.UTF_16LE), 0);
        assertReads(("\uFEFF" + TEXT).getBytes(StandardCharsets.UTF_16BE), 0);
        assertReads(TEXT.getBytes(StandardCharsets.UTF_16LE), 1);
        assertReads(TEXT.getBytes(StandardCharsets.UTF_16BE), 1);
    }

    @Test
    void windows1252IsReadAndSaid() {
        assertReads(TEXT.getBytes(Charset.forName("windows-1252")), 1);
    }

    private static void assertReads(byte[] bytes, int notes) {
        Loaded<Table> loaded = TableReader.read("t", bytes);
        assertEquals(TABLE, loaded.value().orElseThrow());
        assertEquals(notes, loaded.issues().size(), loaded.issues().toString());
    }

    @Test
    void aFileIsReadAndNamedInItsIssues(@TempDir Path dir) throws IOException {
        Path file = Files.writeString(dir.resolve("mine.csv"), TEXT);
        assertEquals(TABLE, TableReader.read(file).value().orElseThrow());
        Files.writeString(file, TEXT.replace("2.5", "two"));
        assertEquals("mine.csv:5:2", TableReader.read(file).issues().get(0).place());
    }

    @Test
    void aMissingFileIsRefusedAsAnIssue(@TempDir Path dir) {
        Loaded<Table> loaded = TableReader.read(dir.resolve("none.csv"));
        assertTrue(loaded.value().isEmpty());
        assertTrue(loaded.issues().get(0).sentence().startsWith("none.csv: There is no such file"));
    }

    @Test
    void errorsBeyondTheTwentiethAreOnlyCounted() {
        String row = IntStream.range(0, 10).mapToObj(i -> "x").collect(Collectors.joining(","));
        String text = "# quantity: multiplier [1]\n"
                + "engine speed [rpm] \\ throttle [%],0,1,2,3,4,5,6,7,8,9\n"
                + "1000," + row + "\n2000," + row + "\n3000," + row + "\n";
        List<Issue> issues = TableReader.read("t", text).issues();
        assertEquals(21, issues.size());
        assertTrue(issues.stream().anyMatch(i -> i.what().equals("10 more errors")));
    }

    @Test
    void sixtyFourBreakpointsAreReadAndSixtyFiveRefused() {
        assertTrue(TableReader.read("t", square(64)).value().isPresent());
        Loaded<Table> tooMany = TableReader.read("t", square(65));
        assertFalse(tooMany.value().isPresent());
        assertEquals("The grid has 65 × 65 cells", tooMany.issues().get(0).what());
    }

    private static String square(int size) {
        StringBuilder text = new StringBuilder("# quantity: multiplier [1]\nengine speed [rpm] \\ throttle [%]");
        for (int j = 0; j < size; j++) {
            text.append(',').append(j);
        }
        for (int i = 0; i < size; i++) {
            text.append('\n').append(500 + 100 * i).append(",1".repeat(size));
        }
        return text.toString();
    }

    @Test
    void whatTheFileDoesNotSayCanBeTold() {
        String bare = ",20,60,100\n900,1,1,1\n1200,1,1,1\n";
        TableOptions told =
                TableOptions.none().withLoadKind(Axis.Kind.MANIFOLD_PRESSURE).withQuantity(Quantity.MULTIPLIER);
        Table table = TableReader.read("t", bare, told).value().orElseThrow();
        assertEquals(Axis.Kind.MANIFOLD_PRESSURE, table.load().kind());
        assertEquals(Quantity.MULTIPLIER, table.quantity());
        assertTrue(TableReader.read("t", bare).value().isEmpty());
    }

    @Test
    void whatTheFileSaysWinsOverWhatIsTold() {
        TableOptions told =
                TableOptions.none().withLoadKind(Axis.Kind.MANIFOLD_PRESSURE).withQuantity(Quantity.MULTIPLIER);
        assertEquals(TABLE, TableReader.read("t", TEXT, told).value().orElseThrow());
    }

    @Test
    void anyGarbageIsRefusedOrReadButNeverThrows() {
        java.util.Random random = new java.util.Random(5);
        String alphabet = "0123456789,;\t\n\r\"#.:-[]\\ %eNaN rpm";
        for (int round = 0; round < 3000; round++) {
            StringBuilder text = new StringBuilder(round % 2 == 0 ? "# quantity: multiplier [1]\n" : "");
            for (int i = random.nextInt(120); i > 0; i--) {
                text.append(alphabet.charAt(random.nextInt(alphabet.length())));
            }
            TableReader.read("t", text.toString());
            byte[] bytes = new byte[random.nextInt(60)];
            random.nextBytes(bytes);
            TableReader.read("t", bytes);
        }
    }

    @Test
    void aTableWithHolesIsNotWritten() {
        double[] values = TABLE.toArray();
        values[1] = Double.NaN;
        Table holes = TABLE.withValues(values);
        assertThrows(IllegalArgumentException.class, () -> TableWriter.write(holes));
    }
}
