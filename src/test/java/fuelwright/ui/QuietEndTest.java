package fuelwright.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.RejectedExecutionException;
import org.junit.jupiter.api.Test;

class QuietEndTest {

    private static <T extends Throwable> T thrownIn(T problem, String... classes) {
        StackTraceElement[] frames = new StackTraceElement[classes.length];
        for (int i = 0; i < classes.length; i++) {
            frames[i] = new StackTraceElement(classes[i], "run", "Some.java", 1);
        }
        problem.setStackTrace(frames);
        return problem;
    }

    @Test
    void theToolkitsLastFrameIsPassedOverAndNothingElseIs() {
        Throwable frame = thrownIn(
                new RejectedExecutionException(),
                "java.util.concurrent.ThreadPoolExecutor",
                "com.sun.javafx.tk.quantum.ViewScene");
        Throwable own = thrownIn(
                new RejectedExecutionException(), "com.sun.javafx.tk.quantum.ViewScene", "fuelwright.ui.shell.Shell");
        Throwable other = thrownIn(new RejectedExecutionException(), "java.util.concurrent.ThreadPoolExecutor");
        List<Throwable> told = new ArrayList<>();
        QuietEnd end = new QuietEnd((thread, problem) -> told.add(problem));
        for (Throwable problem : List.of(frame, own, other)) {
            end.uncaughtException(Thread.currentThread(), problem);
        }
        assertEquals(List.of(own, other), told);
    }

    @Test
    void onceTheProgramEndsOnlyWhatIsOurOwnIsTold() {
        assertTrue(
                QuietEnd.isOfTheEnd(thrownIn(new NullPointerException(), "com.sun.glass.ui.gtk.GtkApplication"), true));
        assertFalse(QuietEnd.isOfTheEnd(
                thrownIn(new NullPointerException(), "com.sun.glass.ui.gtk.GtkApplication"), false));
        assertFalse(QuietEnd.isOfTheEnd(thrownIn(new NullPointerException(), "fuelwright.ui.Main"), true));
    }
}
