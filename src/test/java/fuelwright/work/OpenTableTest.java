package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.table.Table;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OpenTableTest {

    @TempDir
    Path folder;

    private List<Issue> opened(String rows) throws IOException {
        Path file = Files.writeString(
                folder.resolve("table.csv"),
                "# quantity: volumetric efficiency [%]\nengine speed [rpm] \\ throttle [%],0,50,100\n" + rows);
        Loaded<Table> table = OpenTable.fuel(file);
        assertTrue(table.value().isPresent(), "asked about, never refused");
        return table.issues();
    }

    @Test
    void anAfrTableOpenedAsEfficiencyIsAskedAboutAtOnce() throws IOException {
        List<Issue> issues = opened("2000,14.4,13.4,12.9\n6000,14.2,13.2,12.8\n");
        assertEquals(1, issues.size(), issues.toString());
        assertEquals(Issue.Severity.WARNING, issues.get(0).severity());
        assertTrue(
                issues.get(0).what().contains("from 12.8 to 14.4"),
                issues.get(0).what());
        assertTrue(
                issues.get(0).what().contains("looks like AFR"), issues.get(0).what());
    }

    @Test
    void anEfficiencyIsOpenedWithoutAWord() throws IOException {
        assertEquals(List.of(), opened("2000,44.4,73.4,82.9\n6000,34.2,73.2,92.8\n"));
    }
}
