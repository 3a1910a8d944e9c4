package fuelwright.simulated;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/** Writes the tables and rides of {@code sample-logs/} (its README is written by hand). Run again it writes the same bytes. */
public final class SampleData {
    static final Path FOLDER = Path.of("sample-logs");
    private static final long TABLE_SEED = 7;
    private static final long ROAD_SEED = 20;
    private static final long SECOND_ROAD_SEED = 33;

    private final MachineTables tables = new MachineTables(SimulatedMachines.vTwin720());

    /** Optionally the folder to write to. */
    public static void main(String[] arguments) throws IOException {
        Path folder = arguments.length > 0 ? Path.of(arguments[0]) : FOLDER;
        Files.createDirectories(folder);
        for (Map.Entry<String, String> file : new SampleData().files().entrySet()) {
            Files.write(folder.resolve(file.getKey()), file.getValue().getBytes(StandardCharsets.UTF_8));
        }
    }

    public MachineTables tables() {
        return tables;
    }

    /** The table that was in the unit on the first ride and on the dyno. */
    public Grid table() {
        return tables.old(TABLE_SEED);
    }

    /** The table that was in the unit on the second ride: right but for errors of up to about 2 %. */
    public Grid secondTable() {
        return tables.spoilt(tables.truth(), TableFlaw.wobble(0.009), TABLE_SEED + 1);
    }

    /** A cold start and a quarter of an hour on the road, with honest flaws. */
    public SimulatedRide firstRide() {
        RideFlaws flaws = RideFlaws.NONE.withMisfires(0.25).withFrozen(680, 689).withGap(748, 754.5);
        return Simulation.ride(tables, table(), RideProfile.road(17).cold(14).with(flaws), ROAD_SEED);
    }

    /** A shorter, warm ride over other roads, with the corrected table. */
    public SimulatedRide secondRide() {
        return Simulation.ride(tables, secondTable(), RideProfile.road(11).cold(76), SECOND_ROAD_SEED);
    }

    /** Six pulls with the first table, torque logged. */
    public SimulatedRide dynoPull() {
        return Simulation.ride(
                tables,
                table(),
                RideProfile.dyno(100.0, 100.0, 70.0, 50.0, 35.0, 25.0).braked(),
                ROAD_SEED + 1);
    }

    /** The dyno's log as a dyno leaves it that logs no torque. */
    public static String withoutTorque(String dynoCsv) {
        return dynoCsv.replaceAll("(?m),[^,\n]*$", "");
    }

    /** File name to content. */
    public Map<String, String> files() {
        Machine machine = tables.machine();
        Map<String, String> files = new LinkedHashMap<>();
        files.put("fuel-table.csv", TableWriter.fuel(machine, table()));
        files.put("target-table.csv", TableWriter.target(machine, tables.target()));
        files.put("ride-1-cold-start.csv", firstRide().csv());
        files.put("dyno-pull.csv", dynoPull().csv());
        files.put("fuel-table-ride-2.csv", TableWriter.fuel(machine, secondTable()));
        files.put("ride-2-corrected.csv", secondRide().csv());
        return files;
    }
}
