package fuelwright.ui.shell;

import fuelwright.ui.session.JobDesk;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.StateFolder;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.scene.layout.VBox;

/** Says that work was left unsaved when the program last ended, and offers to go on with it: one piece of work at a time, the newest first. */
final class RecoveryBar extends VBox {

    private final Deque<StateFolder.Left> left;
    private final BiConsumer<StateFolder.Left, Runnable> take;
    private final Consumer<StateFolder.Left> drop;

    RecoveryBar(JobDesk desk) {
        this(new ArrayDeque<>(desk.left()), desk::take, desk::drop);
    }

    /**
     * @param left is emptied one by one
     * @param take goes on with it, now, later or never; told what to run once it does
     */
    RecoveryBar(
            Deque<StateFolder.Left> left,
            BiConsumer<StateFolder.Left, Runnable> take,
            Consumer<StateFolder.Left> drop) {
        this.left = left;
        this.take = take;
        this.drop = drop;
        setId("recovery");
        showNext();
    }

    private void showNext() {
        getChildren().clear();
        if (left.isEmpty()) {
            return;
        }
        StateFolder.Left work = left.peek();
        String words = left.size() == 1
                ? Words.of("job.recovered", work.name())
                : Words.of("job.recovered", work.name()) + " " + Words.of("job.recovered.more", left.size() - 1);
        VBox bar = Parts.callout("check", words);
        bar.getChildren()
                .add(Parts.row(
                        8,
                        Parts.button(
                                "job.recovered.take",
                                () -> take.accept(work, () -> settled(work)),
                                "primary",
                                "compact"),
                        Parts.button("job.recovered.drop", () -> drop(work), "compact")));
        getChildren().add(bar);
    }

    private void drop(StateFolder.Left work) {
        settled(work);
        drop.accept(work);
    }

    private void settled(StateFolder.Left work) {
        left.remove(work);
        showNext();
    }
}
