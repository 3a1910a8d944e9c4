package fuelwright.speed;

import fuelwright.simulated.Grid;
import fuelwright.simulated.Machine;
import fuelwright.simulated.MachineTables;
import fuelwright.simulated.RideProfile;
import fuelwright.simulated.SimulatedMachines;
import fuelwright.simulated.Simulation;
import fuelwright.simulated.TableWriter;
import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * Long logs for measuring speed: half a dozen simulated rides of the demo machine, one after the other and again, with time that runs on
 * and two channels more, so that a row has twelve columns and some 54 bytes. The same bytes every time.
 */
public final class BigRide {

    /** Where the files go. */
    public static final Path FOLDER = Path.of("target", "speed");

    private static final long TABLE_SEED = 7;
    private static final int RIDES = 6;
    private static final double BREAK_S = 2;

    private BigRide() {}

    /** Writes logs of the numbers of rows given (1,000,000 where none is) and their tables, where they aren't there yet. */
    public static void main(String[] arguments) throws IOException {
        for (String rows : arguments.length == 0 ? new String[] {"1000000"} : arguments) {
            System.out.println(log(Integer.parseInt(rows.replace("_", ""))));
        }
    }

    /** The log with so many rows; the tables are beside it. */
    public static Path log(int rows) throws IOException {
        Path file = FOLDER.resolve("ride-" + rows + ".csv");
        if (!Files.exists(file)) {
            Files.createDirectories(FOLDER);
            Path unfinished = FOLDER.resolve("ride-" + rows + ".part");
            write(unfinished, rows);
            Files.move(unfinished, file);
        }
        return file;
    }

    /** The fuel table that was in the unit. */
    public static Path fuelTable() {
        return FOLDER.resolve("fuel-table.csv");
    }

    /** The target table. */
    public static Path targetTable() {
        return FOLDER.resolve("target-table.csv");
    }

    private static void write(Path file, int rows) throws IOException {
        Machine machine = SimulatedMachines.vTwin720();
        MachineTables tables = new MachineTables(machine);
        Grid old = tables.old(TABLE_SEED);
        Files.writeString(fuelTable(), TableWriter.fuel(machine, old));
        Files.writeString(targetTable(), TableWriter.target(machine, tables.target()));
        String[][] rides = new String[RIDES][];
        for (int i = 0; i < RIDES; i++) {
            RideProfile road = RideProfile.road(16);
            rides[i] = Simulation.ride(tables, old, i == 0 ? road.cold(20) : road.cold(85), 100 + i)
                    .csv()
                    .split("\n");
        }
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(file), 1 << 20)) {
            out.write((rides[0][0] + ",battery [V],exhaust gas [°C]\n").getBytes(StandardCharsets.UTF_8));
            double startS = 0;
            int written = 0;
            for (int lap = 0; written < rows; lap++) {
                List<String> lines = List.of(rides[lap % RIDES]);
                int take = Math.min(rows - written, lines.size() - 1);
                for (int i = 1; i <= take; i++) {
                    out.write(row(lines.get(i), startS, written + i).getBytes(StandardCharsets.UTF_8));
                }
                startS += timeS(lines.get(take)) + BREAK_S;
                written += take;
            }
        }
    }

    private static double timeS(String line) {
        return Double.parseDouble(line.substring(0, line.indexOf(',')));
    }

    private static String row(String line, double startS, int number) {
        long hundredths = Math.round(100 * (startS + timeS(line)));
        double volts = 13.8 + 0.1 * (number / 37 % 5);
        int gasC = 520 + number / 11 % 260;
        String time = hundredths / 100 + "." + hundredths / 10 % 10 + hundredths % 10;
        return time + line.substring(line.indexOf(',')) + "," + Math.round(volts * 10) / 10.0 + "," + gasC + "\n";
    }
}
