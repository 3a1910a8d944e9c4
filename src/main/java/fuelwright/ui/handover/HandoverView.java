package fuelwright.ui.handover;

import fuelwright.ui.session.Missing;
import fuelwright.ui.theme.AskFiles;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.StagePane;
import fuelwright.ui.theme.Words;
import java.util.EnumMap;
import java.util.Map;
import javafx.beans.binding.Bindings;
import javafx.beans.binding.BooleanBinding;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The stage Handover in three steps: what the hardware takes, writing and printing, checking what was typed. */
public final class HandoverView implements StagePane {

    private final HandoverModel model;
    private final StackPane root = new StackPane();
    private final Node explanation;

    public HandoverView(HandoverModel model) {
        this(model, AskFiles::folder);
    }

    /** @param question how the user is asked for the folder */
    public HandoverView(HandoverModel model, AskFiles.FolderQuestion question) {
        this.model = model;
        Map<HandoverModel.Step, Node> pages = new EnumMap<>(HandoverModel.Step.class);
        pages.put(
                HandoverModel.Step.HARDWARE,
                new HardwarePane(model.hardware(), () -> model.stepProperty().set(HandoverModel.Step.WRITE)).node());
        WritePane write = new WritePane(model, question);
        pages.put(HandoverModel.Step.WRITE, write.node());
        EntryCheckPane check = new EntryCheckPane(model.check());
        pages.put(HandoverModel.Step.CHECK, check.node());
        Map<HandoverModel.Step, Node> words = new EnumMap<>(HandoverModel.Step.class);
        words.put(HandoverModel.Step.HARDWARE, aboutHardware());
        words.put(HandoverModel.Step.WRITE, aboutWriting());
        words.put(HandoverModel.Step.CHECK, new VBox(16, check.found(), aboutChecking()));
        StackPane page = new StackPane(pages.values().toArray(Node[]::new));
        ScrollPane seen = Parts.work(page);
        VBox.setVgrow(seen, Priority.ALWAYS);
        TypingGrid.standIn(write.grid(), seen);
        TypingGrid.standIn(check.grid(), seen);
        Label below = Parts.text("", "muted");
        Label name = Parts.label(Words.of("handover.title"), "stage-title");
        name.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        VBox head = new VBox(8, new VBox(4, name, below), steps());
        Runnable show = () -> {
            HandoverModel.Step step = model.stepProperty().get();
            pages.forEach((s, node) -> Parts.show(node, s == step));
            words.forEach((s, node) -> Parts.show(node, s == step));
            boolean own = step == HandoverModel.Step.WRITE && !model.hardware().isPlain();
            below.setText(
                    own
                            ? model.hardware().costProperty().get() + " " + Words.of("handover.own.below")
                            : Words.of(step.key() + ".below"));
        };
        model.hardware().costProperty().addListener((p, old, now) -> show.run());
        model.stepProperty().addListener((p, old, now) -> show.run());
        show.run();
        VBox content = new VBox(12, head, seen);
        // What the hardware takes can always be mended: it may be why there is no proposal.
        BooleanBinding there = Bindings.createBooleanBinding(
                () -> model.mapProperty().get() != null
                        || model.stepProperty().get() == HandoverModel.Step.HARDWARE
                                && model.session().job().fuelTable().isPresent()
                                && !model.session().refusalProperty().get().isEmpty(),
                model.mapProperty(),
                model.stepProperty(),
                model.session().jobProperty(),
                model.session().refusalProperty());
        content.visibleProperty().bind(there);
        Node empty = Missing.instead(model.session(), "handover.empty", there);
        model.session().refusalProperty().addListener((p, old, now) -> {
            if (!now.isEmpty() && model.session().job().isHardwareTold()) {
                model.stepProperty().set(HandoverModel.Step.HARDWARE);
            }
        });
        root.getChildren().addAll(content, empty);
        root.getStyleClass().add("work");
        VBox right = new VBox(words.values().toArray(Node[]::new));
        right.getStyleClass().add("explanation-inner");
        explanation = Missing.beside(Parts.scroll(right), "handover.empty", there);
    }

    private HBox steps() {
        Map<HandoverModel.Step, ToggleButton> toggles = new EnumMap<>(HandoverModel.Step.class);
        for (HandoverModel.Step step : HandoverModel.Step.values()) {
            ToggleButton toggle = new ToggleButton((step.ordinal() + 1) + "  " + Words.of(step.key()));
            toggle.setId("step-" + (step.ordinal() + 1));
            toggle.setOnAction(e -> model.stepProperty().set(step));
            toggles.put(step, toggle);
        }
        HBox choice = Parts.choice(new ToggleGroup(), toggles.values().toArray(ToggleButton[]::new));
        choice.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        Runnable show = () -> {
            toggles.get(model.stepProperty().get()).setSelected(true);
            toggles.forEach((step, toggle) -> {
                boolean done = model.isDone(step);
                String name = Words.of(step.key());
                toggle.setText((step.ordinal() + 1) + "  " + name + (done ? "  ✓" : ""));
                toggle.setAccessibleText(done ? Words.of("handover.step.done", name) : name);
            });
        };
        model.stepProperty().addListener((p, old, now) -> show.run());
        model.session().jobProperty().addListener((p, old, now) -> show.run());
        model.hardware().nowProperty().addListener((p, old, now) -> show.run());
        model.session().outputs().handedOverProperty().addListener((p, old, now) -> show.run());
        model.session().outputs().checkedProperty().addListener((p, old, now) -> show.run());
        show.run();
        return choice;
    }

    private Node aboutHardware() {
        return new VBox(12, told("handover.about.hardware", "holds", "step", "range", "breakpoints", "grid"));
    }

    private Node aboutWriting() {
        VBox selected = new VBox(4);
        model.selectedProperty().addListener((p, old, now) -> selected(selected));
        selected(selected);
        return new VBox(
                12,
                selected,
                told("handover.after", "trims", "type", "ride"),
                new VBox(
                        4,
                        Parts.label(Words.of("handover.files.title"), "section"),
                        Parts.text(Words.of("handover.files"), "muted")));
    }

    private Node aboutChecking() {
        return new VBox(12, told("handover.about.check", "read", "order", "again"));
    }

    private static VBox told(String key, String... parts) {
        VBox box = new VBox(4, Parts.label(Words.of(key + ".title"), "section"));
        for (String part : parts) {
            box.getChildren().add(Parts.text(Words.of(key + "." + part)));
        }
        return box;
    }

    private void selected(VBox box) {
        box.getChildren().clear();
        model.selectedProperty()
                .get()
                .ifPresent(cell -> box.getChildren()
                        .addAll(
                                Parts.text(cell.place(), "section"),
                                Parts.row(
                                        8,
                                        Parts.label(cell.after(), "big-figure"),
                                        Parts.label(cell.unit(), "unit-word")),
                                Parts.text(Words.of("handover.cell.before", cell.before()), "muted")));
        Parts.show(box, !box.getChildren().isEmpty());
    }

    @Override
    public Node work() {
        return root;
    }

    @Override
    public Node explanation() {
        return explanation;
    }
}
