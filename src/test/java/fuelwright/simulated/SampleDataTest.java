package fuelwright.simulated;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SampleDataTest {
    private static final SampleData SAMPLE = new SampleData();
    private static final SimulatedRide FIRST = SAMPLE.firstRide();

    @Test
    void theCommittedFilesAreWhatTheGeneratorMakes() throws IOException {
        for (Map.Entry<String, String> file : SAMPLE.files().entrySet()) {
            byte[] committed = Files.readAllBytes(SampleData.FOLDER.resolve(file.getKey()));
            assertArrayEquals(
                    file.getValue().getBytes(StandardCharsets.UTF_8),
                    committed,
                    file.getKey() + " has drifted: run fuelwright.simulated.SampleData");
        }
    }

    @Test
    void theFolderHoldsTheGeneratedFilesAndAReadmeThatNamesEachOfThem() throws IOException {
        TreeSet<String> expected = new TreeSet<>(SAMPLE.files().keySet());
        String readme = Files.readString(SampleData.FOLDER.resolve("README.md"));
        for (String name : expected) {
            assertTrue(readme.contains(name), name);
        }
        expected.add("README.md");
        long bytes = 0;
        TreeSet<String> found = new TreeSet<>();
        try (Stream<Path> files = Files.list(SampleData.FOLDER)) {
            for (Path file : files.collect(Collectors.toList())) {
                found.add(file.getFileName().toString());
                bytes += Files.size(file);
            }
        }
        assertEquals(expected, found);
        assertTrue(bytes < 5_000_000, bytes + " bytes");
    }

    @Test
    void theOldTableIsReallyLeanAtFullThrottleForLongerThanHalfASecond() {
        assertTrue(longestDangerS(FIRST.moments()) > 0.5);
        assertTrue(longestDangerS(SAMPLE.dynoPull().moments()) > 0.5);
        assertEquals(0, longestDangerS(SAMPLE.secondRide().moments()), 0.0);
    }

    private static double longestDangerS(List<Moment> moments) {
        double longest = 0;
        double since = Double.NaN;
        for (Moment m : moments) {
            boolean upperMiddle = m.speedRpm() >= 5500 && m.speedRpm() <= 7000;
            if (m.throttlePct() >= 85 && upperMiddle && m.fuelOn() && m.lambda() > 0.95) {
                since = Double.isNaN(since) ? m.timeS() : since;
                longest = Math.max(longest, m.timeS() - since);
            } else {
                since = Double.NaN;
            }
        }
        return longest;
    }

    @Test
    void theTrueCorrectionLiesWithinTheUsualCaps() {
        MachineTables tables = SAMPLE.tables();
        Grid factor = tables.factor(SAMPLE.table(), tables.truth());
        for (int c = 0; c < factor.cells(); c++) {
            assertTrue(factor.at(c) > 0.95 && factor.at(c) < 1.40, factor.speedAt(c) + " rpm, " + factor.loadAt(c));
        }
    }

    @Test
    void theErrorFallsToLessThanATenthFromTheFirstTableToTheSecond() {
        SimulatedRide second = SAMPLE.secondRide();
        double before = Scores.mixtureError(SAMPLE.table(), second);
        assertEquals(0.14, before, 0.02);
        assertTrue(Scores.mixtureError(SAMPLE.secondTable(), second) < before / 10);
    }
}
