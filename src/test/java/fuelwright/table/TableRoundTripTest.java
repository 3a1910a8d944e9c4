package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Loaded;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TableRoundTripTest {

    private static final String SPEED_DOWN = "# quantity: volumetric efficiency [%]\n"
            + "# caution: lean at 4000 rpm, 60 %: not measured\n"
            + "# made by: somebody, with a comma,\n"
            + "# a remark\n"
            + "engine speed [rpm] \\ throttle [%],0,2,4.5\n"
            + "900,11.2,16,20.125\n"
            + "1200,12,17,21\n";

    @Test
    void whatIsWrittenReadsBackToTheSameBytes() {
        Loaded<Table> loaded = TableReader.read("a.csv", SPEED_DOWN);
        assertEquals(List.of(), loaded.issues());
        assertEquals(SPEED_DOWN, TableWriter.write(loaded.value().orElseThrow()));
    }

    @Test
    void unknownNotesAndCautionsSurvive() {
        Table table = TableReader.read("a.csv", SPEED_DOWN).value().orElseThrow();
        assertEquals(
                List.of(
                        new Table.Note("caution", "lean at 4000 rpm, 60 %: not measured"),
                        new Table.Note("made by", "somebody, with a comma,"),
                        new Table.Note("", "a remark")),
                table.notes());
    }

    @Test
    void theCylinderThatATableFeedsIsANoteOfIt() {
        String text = SPEED_DOWN.replace("# a remark\n", "# Cylinder: 2\n");
        Table table = TableReader.read("a.csv", text).value().orElseThrow();
        assertEquals(OptionalInt.of(2), table.cylinder());
        assertEquals(text, TableWriter.write(table));
        assertEquals(OptionalInt.empty(), table.ofCylinder(OptionalInt.empty()).cylinder());
        Table first = table.ofCylinder(OptionalInt.of(1));
        assertEquals(
                first,
                TableReader.read("b.csv", TableWriter.write(first)).value().orElseThrow());
        Loaded<Table> refused = TableReader.read("a.csv", text.replace("Cylinder: 2", "Cylinder: rear"));
        assertTrue(refused.value().isEmpty());
        assertEquals(4, refused.issues().get(0).line());
        assertTrue(
                refused.issues().get(0).what().contains("'rear'"),
                refused.issues().toString());
    }

    @Test
    void theOtherOrientationIsKept() {
        Table table = TableReader.read("a.csv", SPEED_DOWN)
                .value()
                .orElseThrow()
                .withOrientation(Table.Orientation.SPEED_ACROSS);
        String text = TableWriter.write(table);
        assertTrue(text.contains("throttle [%] \\ engine speed [rpm],900,1200\n0,11.2,12\n"), text);
        assertEquals(table, TableReader.read("b.csv", text).value().orElseThrow());
    }

    @Test
    void everyQuantityAndLoadKindComesBackEqualFromRandomFigures() {
        Random random = new Random(11);
        for (Quantity quantity : Quantity.values()) {
            for (Axis.Kind kind : List.of(Axis.Kind.THROTTLE, Axis.Kind.MANIFOLD_PRESSURE)) {
                double[] values = new double[6];
                for (int i = 0; i < values.length; i++) {
                    values[i] = 3.5 + random.nextDouble();
                }
                if (quantity == Quantity.FUEL_TRIM) {
                    values[0] = -12.5;
                }
                Axis speed = new Axis(Axis.Kind.ENGINE_SPEED, 900.5, 1000 / 3.0 * 4, 9000);
                Table table = Table.of(quantity, speed, new Axis(kind, 20, 100), values);
                byte[] bytes = TableWriter.write(table).getBytes(StandardCharsets.UTF_8);
                Loaded<Table> back = TableReader.read("t.csv", bytes);
                assertEquals(List.of(), back.issues());
                assertEquals(table, back.value().orElseThrow());
            }
        }
    }

    @Test
    void aCellWithoutEvidenceOfAReadingsTableIsWrittenAsZero() {
        Table readings = Table.of(
                Quantity.READINGS,
                new Axis(Axis.Kind.ENGINE_SPEED, 1000, 2000),
                new Axis(Axis.Kind.THROTTLE, 0, 100),
                new double[] {Double.NaN, 12, 3.5, 0});
        assertTrue(TableWriter.write(readings).endsWith("1000,0,3.5\n2000,12,0\n"));
    }
}
