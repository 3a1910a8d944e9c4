package fuelwright.ui;

/**
 * The toolkit's thread, waited for at the end. {@code Application.launch} may come back while the toolkit still takes itself down on that
 * thread; a program that exits at that moment has it draw without a drawing thread, or ask a loop that is freed already.
 */
final class WindowThread {

    private static final long PATIENCE_MS = 1000;

    private static volatile Thread thread;

    private WindowThread() {}

    /** Told on that thread, when the window starts. */
    static void isThis() {
        thread = Thread.currentThread();
    }

    /** At most a second: on some systems that thread belongs to the system and stays. */
    static void awaitEnd() {
        Thread window = thread;
        if (window == null) {
            return;
        }
        try {
            window.join(PATIENCE_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
