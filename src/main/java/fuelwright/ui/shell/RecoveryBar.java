package fuelwright.ui.shell;

import fuelwright.ui.session.JobDesk;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.work.StateFolder;
import javafx.scene.layout.VBox;

/** Says that work was left unsaved when the program last ended, and offers to go on with it. */
final class RecoveryBar extends VBox {

    RecoveryBar(JobDesk desk) {
        super(8);
        setId("recovery");
        for (StateFolder.Left work : desk.left()) {
            VBox bar = Parts.callout("check", Words.of("job.recovered", work.name()));
            bar.getChildren()
                    .add(Parts.row(
                            8,
                            Parts.button(
                                    "job.recovered.take",
                                    () -> {
                                        getChildren().remove(bar);
                                        desk.take(work);
                                    },
                                    "primary",
                                    "compact"),
                            Parts.button(
                                    "job.recovered.drop",
                                    () -> {
                                        getChildren().remove(bar);
                                        desk.drop(work);
                                    },
                                    "compact")));
            getChildren().add(bar);
        }
    }
}
