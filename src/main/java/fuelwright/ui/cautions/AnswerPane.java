package fuelwright.ui.cautions;

import fuelwright.job.Answer;
import fuelwright.safety.Caution;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The user's answer to the selected caution: one of three, and a note. It stays in the job; the caution stays where it is. */
final class AnswerPane {

    private final CautionsModel model;
    private final Map<Answer.Kind, ToggleButton> kinds = new EnumMap<>(Answer.Kind.class);
    private final TextField note = new TextField();
    private final Label before = Parts.text("", "small");
    private final Button back;
    private final VBox box;
    private boolean filling;

    AnswerPane(CautionsModel model) {
        this.model = model;
        ToggleGroup group = new ToggleGroup();
        for (Answer.Kind kind : Answer.Kind.values()) {
            ToggleButton button =
                    new ToggleButton(Words.of("cautions.answer." + kind.name().toLowerCase(Locale.ROOT)));
            button.setId("answer-" + kind.name().toLowerCase(Locale.ROOT));
            button.setToggleGroup(group);
            button.setTooltip(new Tooltip(button.getText()));
            button.getStyleClass().add("small");
            button.setOnAction(e -> model.answer(kind, note.getText()));
            kinds.put(kind, button);
        }
        HBox choice = new HBox(kinds.values().toArray(new Node[0]));
        choice.getStyleClass().add("choice");
        kinds.get(Answer.Kind.SEEN).getStyleClass().add("left-pill");
        kinds.get(Answer.Kind.CAUSE_FOUND).getStyleClass().add("center-pill");
        kinds.get(Answer.Kind.RIDE_AGAIN).getStyleClass().add("right-pill");
        note.setPromptText(Words.of("cautions.note"));
        note.setAccessibleText(Words.of("cautions.note"));
        note.setId("answer-note");
        note.setOnAction(e -> keepNote());
        note.focusedProperty().addListener((p, old, now) -> {
            if (!now) {
                keepNote();
            }
        });
        back = Parts.button("cautions.answer.back", model::takeBack, "compact", "small");
        Label stays = Parts.text(Words.of("cautions.answer.stays"), "muted", "small");
        HBox.setHgrow(stays, Priority.ALWAYS);
        stays.setMaxWidth(Double.MAX_VALUE);
        box = new VBox(
                8,
                Parts.label(Words.of("cautions.answer"), "section"),
                before,
                choice,
                note,
                Parts.row(8, stays, back));
        model.selectedProperty().addListener((p, old, now) -> fill());
        model.session().jobProperty().addListener((p, old, now) -> fill());
        fill();
    }

    /** A note without an answer means that it was seen. */
    private void keepNote() {
        Caution caution = model.selectedProperty().get();
        if (filling || caution == null) {
            return;
        }
        Optional<Answer> answer = model.answer(caution);
        String text = note.getText().strip();
        if (!text.equals(answer.map(Answer::note).orElse(""))) {
            model.answer(answer.map(Answer::kind).orElse(Answer.Kind.SEEN), text);
        }
    }

    private void fill() {
        filling = true;
        Caution caution = model.selectedProperty().get();
        Optional<Answer> answer = caution == null ? Optional.empty() : model.answer(caution);
        Optional<Answer> holding = answer.filter(a -> a.holds(caution));
        kinds.forEach((kind, button) ->
                button.setSelected(holding.filter(a -> a.kind() == kind).isPresent()));
        before.setText(answer.map(a -> CautionsModel.words(a, caution)).orElse(""));
        Parts.show(before, answer.isPresent() && holding.isEmpty());
        note.setText(answer.map(Answer::note).orElse(""));
        Parts.show(back, answer.isPresent());
        filling = false;
    }

    Node node() {
        return box;
    }
}
