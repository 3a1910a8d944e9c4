package fuelwright.ui.session;

import fuelwright.ui.theme.Parts;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Predicate;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyDoubleProperty;
import javafx.beans.property.ReadOnlyDoubleWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/** What is being done in the background, and how far it is. */
final class Errand {

    private final Runner runner;
    private final Consumer<Exception> problems;
    private final ReadOnlyBooleanWrapper working = new ReadOnlyBooleanWrapper();
    private final ReadOnlyDoubleWrapper progress = new ReadOnlyDoubleWrapper(-1);
    private final ReadOnlyStringWrapper doing = new ReadOnlyStringWrapper("");
    /** What is being done in each lane. */
    private final Map<String, String> going = new LinkedHashMap<>();

    /** @param problems who hears of work that failed */
    Errand(Runner runner, Consumer<Exception> problems) {
        this.runner = runner;
        this.problems = problems;
    }

    <T> void run(String lane, Duration delay, String what, Runner.Work<T> work, Consumer<T> done) {
        run(lane, delay, what, work, value -> false, done);
    }

    /**
     * The same for work that may go on in its lane.
     *
     * @param goesOn whether {@code done} starts more of it at once: then nobody sees a pause
     */
    <T> void run(String lane, Duration delay, String what, Runner.Work<T> work, Predicate<T> goesOn, Consumer<T> done) {
        going.put(lane, what);
        working.set(true);
        progress.set(-1);
        doing.set(what);
        runner.latest(lane, delay, work, new Runner.Listener<T>() {
            @Override
            public void at(double fraction, String words) {
                progress.set(fraction);
                doing.set(Parts.capital(words) + " …");
            }

            @Override
            public void done(T value) {
                if (!goesOn.test(value)) {
                    over(lane, "");
                }
                done.accept(value);
            }

            @Override
            public void failed(Exception problem) {
                over(lane, "");
                problems.accept(problem);
            }
        });
    }

    /** Stops what goes on in these lanes; nobody hears of it again. */
    void cancel(String words, String... lanes) {
        for (String lane : lanes) {
            runner.cancel(lane);
            over(lane, words);
        }
    }

    private void over(String lane, String words) {
        going.remove(lane);
        working.set(!going.isEmpty());
        doing.set(going.values().stream().findFirst().orElse(words));
    }

    ReadOnlyBooleanProperty workingProperty() {
        return working.getReadOnlyProperty();
    }

    ReadOnlyDoubleProperty progressProperty() {
        return progress.getReadOnlyProperty();
    }

    ReadOnlyStringProperty doingProperty() {
        return doing.getReadOnlyProperty();
    }
}
