package fuelwright.ui.shell;

import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;

/**
 * A button of a stage's page, to be pressed by name from anywhere.
 *
 * @param key of the words on the button
 */
record PageAction(Stage stage, String key) {

    private static final List<PageAction> ALL = all();

    /** Every one that has a name of its own, in the order of the stages. */
    static List<PageAction> list() {
        return ALL;
    }

    private static List<PageAction> all() {
        List<PageAction> all = new ArrayList<>();
        add(all, Stage.TABLES, "tables.", "fuel", "target", "first", "form.map", "form.curves", "form.surface");
        add(all, Stage.TABLES, "tables.edit.", "corners", "edges", "soften");
        add(all, Stage.RIDES, "rides.", "view.time", "view.table", "adjust", "second.add");
        add(all, Stage.EVIDENCE, "evidence.shown.", "shortfall", "readings", "uncertainty", "mean", "unseen");
        add(all, Stage.PROPOSAL, "proposal.shown.", "change", "before", "after", "uncertainty", "difference");
        add(all, Stage.PROPOSAL, "proposal.look.", "map", "speed", "load");
        add(all, Stage.PROPOSAL, "proposal.", "byrule", "hold", "release", "set", "soften", "fitted");
        add(all, Stage.CAUTIONS, "cautions.page.", "found", "limits");
        add(all, Stage.HANDOVER, "handover.", "step.hardware", "step.write", "step.check", "richer", "copy", "export");
        return List.copyOf(all);
    }

    private static void add(List<PageAction> all, Stage stage, String prefix, String... keys) {
        for (String key : keys) {
            all.add(new PageAction(stage, prefix + key));
        }
    }

    String name() {
        return stage.words() + ": " + Words.of(key);
    }

    /** Presses it, where it is there and can be pressed: some need a selection. */
    void press(StagePane pane) {
        Optional<ButtonBase> work = find(pane.work());
        work.or(() -> find(pane.explanation())).ifPresent(button -> {
            if (!(button instanceof ToggleButton toggle && toggle.isSelected())) {
                button.fire();
            }
        });
    }

    private Optional<ButtonBase> find(Node node) {
        if (!node.isVisible()) {
            return Optional.empty();
        }
        if (node instanceof ButtonBase button) {
            return button.getText() != null && button.getText().endsWith(Words.of(key)) && !button.isDisabled()
                    ? Optional.of(button)
                    : Optional.empty();
        }
        // Before it is laid out, what a scroll pane holds isn't among its children.
        List<Node> children = node instanceof ScrollPane scroll
                ? List.of(scroll.getContent())
                : node instanceof Parent parent ? parent.getChildrenUnmodifiable() : List.of();
        for (Node child : children) {
            Optional<ButtonBase> found = find(child);
            if (found.isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }
}
