package fuelwright.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.job.Job;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class CancelledAnalysisTest {

    private record Report(double share, String what) {}

    private static Job sample;
    private static List<Report> whole;

    /** Cancelled by the report of that number. */
    private static List<Report> reports(int cancelledBy) {
        List<Report> reports = Collections.synchronizedList(new ArrayList<>());
        Progress progress = (share, what) -> reports.add(new Report(share, what));
        if (cancelledBy == Integer.MAX_VALUE) {
            Analyse.run(sample, progress, Cancellation.NEVER);
        } else {
            assertThrows(
                    Cancellation.CancelledException.class,
                    () -> Analyse.run(sample, progress, () -> reports.size() >= cancelledBy));
        }
        return reports;
    }

    @BeforeAll
    static void analyseOnce() {
        sample = SampleJob.load().value().orElseThrow();
        whole = reports(Integer.MAX_VALUE);
    }

    @Test
    void whatIsReportedNeverGoesBackAndEndsAtOne() {
        for (int i = 1; i < whole.size(); i++) {
            assertTrue(
                    whole.get(i).share >= whole.get(i - 1).share, "report " + i + ": " + whole.subList(i - 1, i + 1));
        }
        assertEquals(1, whole.get(whole.size() - 1).share);
    }

    @Test
    void longStagesReportManyTimes() {
        Map<String, Long> times = whole.stream().collect(Collectors.groupingBy(Report::what, Collectors.counting()));
        assertTrue(times.get("fitting") >= 40, () -> "" + times);
        assertTrue(times.get("judging") >= 8, () -> "" + times);
    }

    @Test
    void whicheverReportItIsCancelledByNoneFollows() {
        for (int n = 1; n < whole.size() - 1; n += Math.max(1, whole.size() / 8)) {
            assertEquals(n, reports(n).size());
        }
    }

    @Test
    void judgingEndsAtTheFirstCancelledReportToo() {
        int judging = whole.stream().map(Report::what).toList().indexOf("judging");
        for (int n = judging + 1; n < whole.size() - 1; n += 10) {
            assertEquals(n, reports(n).size());
        }
    }
}
