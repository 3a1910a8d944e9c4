package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import java.util.List;
import org.junit.jupiter.api.Test;

class PastedTest {

    private static final Table TABLE = Table.of(
            Quantity.VOLUMETRIC_EFFICIENCY,
            new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000, 3000),
            new Axis(Axis.Kind.THROTTLE, 0, 50),
            new double[] {1, 2, 3, 4, 5, 6});

    private static Pasted read(String text) {
        return Pasted.read(text).value().orElseThrow();
    }

    private static List<Issue> refused(String text) {
        var loaded = Pasted.read(text);
        assertTrue(loaded.value().isEmpty());
        return loaded.issues();
    }

    @Test
    void tabsAndLineEndsOfEveryKindAreRead() {
        for (String end : List.of("\n", "\r\n", "\r")) {
            Pasted pasted = read("1.5\t2" + end + "3\t4" + end);
            assertEquals(2, pasted.rowCount());
            assertEquals(2, pasted.columnCount());
            assertEquals(1.5, pasted.at(0, 0));
            assertEquals(4, pasted.at(1, 1));
            assertFalse(pasted.isHeaded());
        }
    }

    @Test
    void decimalCommasAreUnderstood() {
        assertEquals(12.5, read("12,5\t13").at(0, 0));
        assertEquals(0.93, read("0,93").at(0, 0));
        assertEquals(-2.5, read("\u22122,5;3").at(0, 0));
    }

    @Test
    void thousandsAreNotGuessed() {
        assertTrue(refused("1,234.5\t2.5").get(0).what().contains("'1,234.5' is no number"));
    }

    @Test
    void everyBadCellIsSaidWithItsPlace() {
        List<Issue> issues = refused("1\t\t3\nx\t5\t6");
        assertEquals(2, issues.size());
        assertEquals("Row 1, column 2: the cell is empty", issues.get(0).what());
        assertEquals(2, issues.get(1).line());
        assertEquals(1, issues.get(1).column());
        assertTrue(refused("").get(0).what().contains("no figures"));
        assertTrue(refused("1\t2\n3").get(0).what().startsWith("Row 2 has 1 cells"));
    }

    @Test
    void breakpointsNameTheCellsWhicheverAxisLiesAcrossAndInWhateverOrder() {
        Table across = read("\t2000\t1000\n50\t52\t51\n0\t22\t21").into(TABLE);
        assertEquals(List.of(21.0, 22.0, 3.0, 51.0, 52.0, 6.0), boxed(across));
        Table down = read("engine speed\t0\t50\n1000\t21\t51\n2000\t22\t52").into(TABLE);
        assertEquals(boxed(across), boxed(down));
    }

    @Test
    void breakpointsOfAnotherTableAreRefused() {
        Pasted other = read("\t2000\t1000\n60\t1\t2\n0\t3\t4");
        assertTrue(other.isHeaded());
        assertTrue(assertThrows(IllegalArgumentException.class, () -> other.into(TABLE))
                .getMessage()
                .contains("aren't this table's"));
    }

    private static List<Double> boxed(Table table) {
        return java.util.Arrays.stream(table.toArray()).boxed().toList();
    }
}
