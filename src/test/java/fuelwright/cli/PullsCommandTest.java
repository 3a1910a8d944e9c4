package fuelwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import fuelwright.simulated.SampleData;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class PullsCommandTest {

    private static final Path DYNO = Path.of("sample-logs/dyno-pull.csv");

    @TempDir
    Path home;

    @Test
    void figuresThatCantBeAreNamedWithTheirBounds() {
        refused(List.of("--mass", "0"), "--mass 0.0 must be from 50 to 5000 kg");
        refused(List.of("--mass", "300", "--rolling", "-1"), "--rolling", "from 0 to 0.1");
        refused(List.of("--mass", "300", "--drag-area", "NaN"), "--drag-area", "from 0 to 5");
        refused(List.of("--drag-area", "0.5"), "--mass");
        refused(List.of("--standard", "SAE-J1349"), "--temperature", "--pressure");
        refused(List.of("--standard", "best", "--temperature", "20", "--pressure", "100"), "ISO-1585", "DIN-70020");
        refused(List.of("--temperature", "20"), "--pressure");
        refused(List.of("--temperature", "20", "--pressure", "1013"), "--pressure 1013.0", "from 45 to 115 kPa");
        refused(List.of("--temperature", "20", "--pressure", "100", "--humidity", "120"), "--humidity");
        refused(List.of("--out", ""), "--out is empty");
        Ran.of("pulls").refused(Exit.USAGE, "--ride");
    }

    private void refused(List<String> more, String... words) {
        Object[] args = new Object[3 + more.size()];
        args[0] = "pulls";
        args[1] = "--ride";
        args[2] = DYNO;
        System.arraycopy(more.toArray(), 0, args, 3, more.size());
        Ran.of(args).refused(Exit.USAGE, words);
    }

    @Test
    void aBrakedSweepAndARideWithoutPullAreRefusedInWords() throws IOException {
        Path bare = home.resolve("bare.csv");
        Files.writeString(bare, SampleData.withoutTorque(Files.readString(DYNO)));
        Ran sweep = Ran.of("pulls", "--ride", bare, "--mass", "300", "--out", home.resolve("x"));
        assertEquals(Exit.INPUT, sweep.code());
        sweep.has("bare.csv", "braked dyno's sweep", "Log the dyno's power or torque");
        Ran.of("pulls", "--ride", bare).has("neither power nor torque is logged");
        Ran.of("pulls", "--ride", home.resolve("none.csv")).has("none.csv");
        assertFalse(Files.exists(home.resolve("x")));
    }

    @Test
    void powerWithoutUnitIsRefusedUntilTheUnitIsSaid() throws IOException {
        Path ride = pull("a.csv", "power", 60);
        Ran refused = Ran.of("pulls", "--ride", ride);
        assertEquals(Exit.INPUT, refused.code());
        Ran said = Ran.of("pulls", "--ride", ride, "--unit", "power=hp");
        assertEquals(Exit.DONE, said.code(), said.err());
        assertTrue(said.out().contains("44.7 kW"), said.out());
        assertTrue(said.out().contains("(60.0 hp)"), said.out());
    }

    @Test
    void twoRidesAreComparedAndWrittenAndNothingIsOverwritten() throws IOException {
        Path before = pull("before.csv", "power [kW]", 40);
        Path after = pull("=after.csv", "power [kW]", 44);
        Path folder = home.resolve("out");
        Ran ran = Ran.of("pulls", "--ride", before, "--ride", after, "--out", folder);
        assertEquals(Exit.DONE, ran.code(), ran.err());
        assertTrue(ran.out().contains("peak power +4.0 kW"), ran.out());
        assertTrue(ran.out().contains("pays from 2500 to 8000 rpm: +10.0 %"), ran.out());
        List<String> lines = Files.readAllLines(folder.resolve("power-compared.csv"));
        assertTrue(lines.get(1).startsWith("\"before.csv\",\"'=after.csv\","), lines.get(1));
        assertTrue(Files.readString(folder.resolve("power.csv")).contains("torque uncertainty [N·m]"));
        Ran.of("pulls", "--ride", before, "--out", folder).refused(Exit.USAGE, "already holds", "--replace");
    }

    @Test
    void theSummaryAsJsonHoldsTheCorrection() throws IOException {
        Path ride = pull("a.csv", "power [kW]", 40);
        Ran ran = Ran.of(
                "pulls", "--ride", ride, "--json", "--standard", "iso-1585", "--temperature", "25", "--pressure", "95");
        JsonNode json = new ObjectMapper().readTree(ran.out());
        // ISO 1585 at 25 °C: (99/95)^1.2
        double factor = Math.pow(99.0 / 95, 1.2);
        assertEquals(factor, json.at("/pulls/0/factor").asDouble(), 1e-9);
        assertEquals(40 * factor, json.at("/pulls/0/peakPowerKw").asDouble(), 0.1);
    }

    /** Power that rises to its most at the end. */
    private Path pull(String name, String heading, double most) throws IOException {
        StringBuilder text = new StringBuilder("time [s],engine speed [rpm],throttle [%],lambda [1]," + heading + "\n");
        for (int i = 0; i < 300; i++) {
            double rpm = i < 20 ? 2500 : i < 243 ? 2500 + 25 * (i - 20) : 2500;
            text.append(String.format(
                    Locale.ROOT,
                    "%.2f,%.0f,%d,%.2f,%.3f%n",
                    0.05 * i,
                    rpm,
                    i >= 20 && i < 243 ? 100 : 5,
                    0.86 + 0.01 * (i % 3),
                    most * rpm / 8000));
        }
        return Files.writeString(home.resolve(name), text);
    }
}
