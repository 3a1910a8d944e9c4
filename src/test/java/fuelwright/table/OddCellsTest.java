package fuelwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.simulated.Machine;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.SimulatedMachines;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OddCellsTest {

    private static Table sample(String name) {
        return TableReader.read(Path.of("sample-logs", name)).value().orElseThrow();
    }

    private static Table with(Table table, int cell, double value) {
        double[] cells = table.toArray();
        cells[cell] = value;
        return table.withValues(cells);
    }

    private static List<Integer> odd(Table table) {
        return OddCells.of(table).stream().map(OddCells.Odd::cell).toList();
    }

    @ParameterizedTest
    @ValueSource(strings = {"fuel-table.csv", "fuel-table-ride-2.csv", "target-table.csv"})
    void theSamplesSteepTablesGiveNoFalseWord(String name) {
        assertEquals(List.of(), odd(sample(name)));
    }

    /** Tables by throttle and by pressure, of every quantity, as they were and as they should be. */
    @Test
    void norDoThoseOfTheSimulatedMachines() {
        for (Machine machine : SimulatedMachines.all()) {
            MachineTables tables = new MachineTables(machine);
            for (String text : List.of(
                    fuelwright.simulated.TableWriter.fuel(machine, tables.old(1)),
                    fuelwright.simulated.TableWriter.fuel(machine, tables.truth()),
                    fuelwright.simulated.TableWriter.target(machine, tables.target()))) {
                Table table = TableReader.read(machine.name(), text).value().orElseThrow();
                assertEquals(List.of(), OddCells.of(table), machine.name() + ", " + table);
            }
        }
    }

    /** A tenth and ten times, in every cell of the sample's table, its edges and its steep corner too. */
    @Test
    void aTenfoldSlipIsFoundWhereverItStands() {
        Table fuel = sample("fuel-table.csv");
        for (int cell = 0; cell < fuel.cells(); cell++) {
            assertEquals(List.of(cell), odd(with(fuel, cell, fuel.at(cell) / 10)), "a tenth in cell " + cell);
            assertEquals(List.of(cell), odd(with(fuel, cell, fuel.at(cell) * 10)), "ten times in cell " + cell);
        }
    }

    /** From idle to the first opening the fuel may well grow fourfold: all along the edge, so nothing stands alone. */
    @Test
    void anEdgeThatIsSteepAllAlongIsNone() {
        Table steep = Table.of(
                Quantity.INJECTOR_PULSE,
                new Axis(Axis.Kind.ENGINE_SPEED, 1000, 3000, 5000, 7000),
                new Axis(Axis.Kind.THROTTLE, 0, 10, 50, 100),
                new double[] {1.5, 1.2, 0.9, 0.7, 6, 5, 4, 3, 9, 9, 8, 7, 10, 11, 12, 10});
        assertEquals(List.of(), odd(steep));
        assertEquals(List.of(2), odd(with(steep, 2, 0.09)));
    }

    @Test
    void aTrimIsJudgedByItsDistanceAndAMixtureMoreNarrowly() {
        Table fuel = sample("fuel-table.csv");
        double[] trims = new double[fuel.cells()];
        for (int c = 0; c < trims.length; c++) {
            trims[c] = (c % fuel.speed().size()) - 8;
        }
        Table trim = fuel.with(Quantity.FUEL_TRIM, trims);
        assertEquals(List.of(), odd(trim));
        assertEquals(List.of(20), odd(with(trim, 20, 32)));
        assertEquals(List.of(20), odd(with(trim, 20, -32)));
        Table target = sample("target-table.csv");
        assertEquals(List.of(100), odd(with(target, 100, 1.8)));
    }

    @Test
    void itIsSaidInReadingWithItsPlaceInTheFile() throws IOException {
        String text = Files.readString(Path.of("sample-logs", "fuel-table.csv")).replace("76.2,76.4", "76.2,7.64");
        Loaded<Table> loaded = TableReader.read("f.csv", text);
        assertTrue(loaded.value().isPresent());
        Issue issue = loaded.issues().stream()
                .filter(i -> i.severity() == Issue.Severity.WARNING)
                .findFirst()
                .orElseThrow();
        assertEquals(4, issue.line());
        assertEquals(10, issue.column());
        assertTrue(issue.what().contains("7.64 stands alone among cells of about 77 (1200 rpm, 35 %)"), issue.what());
    }
}
