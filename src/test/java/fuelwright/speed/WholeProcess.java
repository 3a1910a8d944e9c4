package fuelwright.speed;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Wall time, processor time and greatest resident memory of the program's {@code propose}, each run a new process, measured by GNU time.
 * Needs the jar ({@code mvn -DskipTests package}) and {@code /usr/bin/time}. Prints a table in Markdown, runs sorted by wall time.
 */
public final class WholeProcess {

    private static final Path JAR = Path.of("target", "fuelwright.jar");
    private static final Path TIME = Path.of("/usr/bin/time");

    private record Run(double wallS, double cpuS, double memoryMb) {}

    private WholeProcess() {}

    /** How many runs of each (5 where none is given), then numbers of rows (1,000,000 and 10,000,000). */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 5;
        String[] rows = arguments.length > 1
                ? Arrays.copyOfRange(arguments, 1, arguments.length)
                : new String[] {"1000000", "10000000"};
        System.out.println("| rows | run | wall, s | processor, s | greatest resident memory, MB |");
        System.out.println("| --- | --- | --- | --- | --- |");
        for (String number : rows) {
            Path log = BigRide.log(Integer.parseInt(number));
            Run[] all = new Run[runs];
            for (int i = 0; i < runs; i++) {
                all[i] = run(log);
            }
            Arrays.sort(all, (a, b) -> Double.compare(a.wallS, b.wallS));
            for (int i = 0; i < runs; i++) {
                System.out.printf(
                        Locale.ROOT,
                        "| %s | %d | %.2f | %.2f | %.0f |%n",
                        number,
                        i + 1,
                        all[i].wallS,
                        all[i].cpuS,
                        all[i].memoryMb);
            }
        }
    }

    private static Run run(Path log) throws IOException, InterruptedException {
        Path measured = BigRide.FOLDER.resolve("time.txt");
        List<String> command = List.of(
                TIME.toString(),
                "-f",
                "%e %U %S %M",
                "-o",
                measured.toString(),
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-jar",
                JAR.toString(),
                "propose",
                "--table",
                BigRide.fuelTable().toString(),
                "--target",
                BigRide.targetTable().toString(),
                "--ride",
                log.toString(),
                "--out",
                BigRide.FOLDER.resolve("out").toString(),
                "--replace");
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(BigRide.FOLDER.resolve("propose.txt").toFile())
                .start();
        process.waitFor();
        String last = "";
        for (String line : Files.readAllLines(measured, StandardCharsets.UTF_8)) {
            last = line;
        }
        String[] figures = last.split(" ");
        return new Run(
                Double.parseDouble(figures[0]),
                Double.parseDouble(figures[1]) + Double.parseDouble(figures[2]),
                Double.parseDouble(figures[3]) / 1000);
    }
}
