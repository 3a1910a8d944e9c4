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

    /** Cancelled by the report of that number among those of a stage, or among all. */
    private static List<Report> cancelledBy(int number, String stage) {
        List<Report> reports = Collections.synchronizedList(new ArrayList<>());
        assertThrows(
                Cancellation.CancelledException.class,
                () -> Analyse.run(
                        sample,
                        (share, what) -> reports.add(new Report(share, what)),
                        () -> reports.stream()
                                        .filter(r -> r.what.contains(stage))
                                        .count()
                                >= number));
        return reports;
    }

    @BeforeAll
    static void analyseOnce() {
        sample = SampleJob.load().value().orElseThrow();
        whole = Collections.synchronizedList(new ArrayList<>());
        Analyse.run(sample, (share, what) -> whole.add(new Report(share, what)), Cancellation.NEVER);
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
        assertTrue(times.get("judging") >= 5, () -> "" + times);
    }

    @Test
    void whicheverReportItIsCancelledByNoneFollows() {
        // How many there are depends on which thread gets which part of the work; half of them there are always.
        for (int n = 1; n < whole.size() / 2; n += Math.max(1, whole.size() / 12)) {
            assertEquals(n, cancelledBy(n, "").size());
        }
    }

    @Test
    void judgingEndsAtTheReportThatCancelsItToo() {
        for (int n = 1; n <= 4; n++) {
            List<Report> reports = cancelledBy(n, "judging");
            assertEquals(
                    n, reports.stream().filter(r -> r.what.equals("judging")).count());
            assertEquals("judging", reports.get(reports.size() - 1).what);
        }
    }
}
