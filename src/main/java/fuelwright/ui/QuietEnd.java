package fuelwright.ui;

import java.util.Arrays;
import java.util.concurrent.RejectedExecutionException;

/**
 * What goes wrong inside the toolkit alone while it ends, and means nothing: it closes its drawing thread before it asks for its last frame,
 * and frees its loop before that has come to its end. Everything else is told as before.
 */
final class QuietEnd implements Thread.UncaughtExceptionHandler {

    private static final String DRAWING = "com.sun.javafx.tk.quantum.";
    private static final String OWN = "fuelwright.";

    private final Thread.UncaughtExceptionHandler others;

    QuietEnd(Thread.UncaughtExceptionHandler others) {
        this.others = others;
    }

    /** For the thread that it is called on. */
    static void apply() {
        Thread window = Thread.currentThread();
        window.setUncaughtExceptionHandler(new QuietEnd(window.getUncaughtExceptionHandler()));
    }

    @Override
    public void uncaughtException(Thread thread, Throwable problem) {
        if (!isOfTheEnd(problem, isEnding())) {
            others.uncaughtException(thread, problem);
        }
    }

    /** @param ending whether the program is being ended */
    static boolean isOfTheEnd(Throwable problem, boolean ending) {
        if (holds(problem, OWN)) {
            return false;
        }
        return ending || problem instanceof RejectedExecutionException && holds(problem, DRAWING);
    }

    private static boolean holds(Throwable problem, String packages) {
        return Arrays.stream(problem.getStackTrace())
                .anyMatch(frame -> frame.getClassName().startsWith(packages));
    }

    /** Nothing can be added to what is done at the end once that has begun. */
    private static boolean isEnding() {
        Thread nothing = new Thread(() -> {});
        try {
            Runtime.getRuntime().addShutdownHook(nothing);
            Runtime.getRuntime().removeShutdownHook(nothing);
            return false;
        } catch (IllegalStateException e) {
            return true;
        }
    }
}
