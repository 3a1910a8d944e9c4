package fuelwright.ui;

import java.lang.reflect.InvocationHandler;
import java.lang.reflect.Proxy;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import javafx.application.Platform;
import javafx.stage.Window;

/**
 * The system, a terminal or a log-out ends the program. Left to itself the toolkit would then close its drawing thread while the window still
 * draws, and say so in the log; so the window is told to end first, as if it were closed, and the program follows.
 *
 * <p>The JDK has no other door to signals than {@code sun.misc.Signal}, which the compiler warns of: hence by reflection. Where it is missing,
 * or the machine was told to leave signals alone, everything is as if this class weren't there.
 */
final class EndFromOutside {

    private static final Map<String, Integer> NUMBERS = Map.of("HUP", 1, "INT", 2, "TERM", 15);
    /** What a shell says of a program that a signal ended. */
    private static final int SIGNALLED = 128;
    /** For a window whose thread is held up, such as by a file dialog of the system. */
    private static final Duration PATIENCE = Duration.ofMillis(1500);

    private static final AtomicInteger CODE = new AtomicInteger();

    private EndFromOutside() {}

    static void listen() {
        NUMBERS.forEach((name, number) -> listen(name, SIGNALLED + number));
    }

    private static void listen(String name, int code) {
        try {
            Class<?> signal = Class.forName("sun.misc.Signal");
            Class<?> handler = Class.forName("sun.misc.SignalHandler");
            InvocationHandler heard = (proxy, method, arguments) -> {
                if (method.getName().equals("handle")) {
                    end(code);
                }
                return null;
            };
            Object ours =
                    Proxy.newProxyInstance(EndFromOutside.class.getClassLoader(), new Class<?>[] {handler}, heard);
            signal.getMethod("handle", signal, handler)
                    .invoke(null, signal.getConstructor(String.class).newInstance(name), ours);
        } catch (ReflectiveOperationException | IllegalArgumentException e) {
            return; // not on this system
        }
    }

    /** On a thread of the signal's own. A second signal doesn't wait. */
    private static void end(int code) throws InterruptedException {
        if (CODE.compareAndSet(0, code)) {
            Platform.runLater(EndFromOutside::hideAll);
            Thread.sleep(PATIENCE.toMillis());
        }
        System.exit(code);
    }

    /** Dialogs and menus first. {@code Platform.exit} would leave the loop of an open dialog behind the dialog's back, and the toolkit crashes. */
    private static void hideAll() {
        List<Window> all = new ArrayList<>(Window.getWindows());
        Collections.reverse(all);
        all.forEach(Window::hide);
    }

    static boolean isAsked() {
        return CODE.get() != 0;
    }

    /** The exit code; 0 where the window was closed. */
    static int code() {
        return CODE.get();
    }
}
