package fuelwright.ui.proposal;

import fuelwright.estimate.ProposalSettings;
import fuelwright.job.Job;
import fuelwright.ui.session.UndoInField;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.value.ChangeListener;
import javafx.beans.value.WeakChangeListener;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** How much may be added and taken in one pass. */
final class CapsPane extends VBox {

    private final ProposalModel model;
    private final TextField add = field("proposal.add");
    private final TextField cut = field("proposal.cut");
    private final Label problem = Parts.text("", "field-message");
    private final ChangeListener<Job> refill = (p, old, now) -> fill();

    CapsPane(ProposalModel model) {
        super(10);
        this.model = model;
        getStyleClass().add("over");
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        add.setId("proposal-most");
        problem.setId("proposal-problem");
        problem.setMaxWidth(320);
        problem.managedProperty().bind(problem.textProperty().isNotEmpty());
        Label about = Parts.text(Words.of("proposal.limits.words"), "muted", "small");
        about.setMaxWidth(320);
        getChildren()
                .addAll(
                        Parts.label(Words.of("proposal.limits"), "section"),
                        labelled("proposal.add", add),
                        labelled("proposal.cut", cut),
                        problem,
                        about);
        fill();
        UndoInField.on(add, () -> Figures.shortest(model.settings().maxAddPercent()), model.session());
        UndoInField.on(cut, () -> Figures.shortest(model.settings().maxCutPercent()), model.session());
        model.session().jobProperty().addListener(new WeakChangeListener<>(refill));
    }

    /** What gets the keyboard first. */
    TextField first() {
        return add;
    }

    /** What the button that opens it shows. */
    static String words(ProposalSettings s) {
        return Words.of(
                "proposal.limits.button", Figures.shortest(s.maxAddPercent()), Figures.shortest(s.maxCutPercent()));
    }

    private TextField field(String key) {
        TextField field = new TextField();
        field.setPrefColumnCount(4);
        field.getStyleClass().add("compact");
        field.setAccessibleText(Words.of(key));
        field.setOnAction(e -> commit());
        field.focusedProperty().addListener((p, old, now) -> {
            if (!now) {
                commit();
            }
        });
        return field;
    }

    private static HBox labelled(String key, TextField field) {
        Label words = Parts.label(Words.of(key), "muted");
        words.setMinWidth(110);
        return Parts.row(8, words, field, Parts.label("%", "muted"));
    }

    private void fill() {
        mark(add, "");
        mark(cut, "");
        problem.setText("");
        add.setText(Figures.shortest(model.settings().maxAddPercent()));
        cut.setText(Figures.shortest(model.settings().maxCutPercent()));
    }

    /** Takes what is typed; what can't be is said and stays to be mended. */
    private void commit() {
        Cap most = Cap.most(add.getText());
        Cap least = Cap.least(cut.getText());
        if (most.value().isPresent() && least.value().isPresent()) {
            model.rules(
                    most.value().getAsDouble(),
                    least.value().getAsDouble(),
                    model.settings().step());
            fill();
        } else {
            mark(add, most.problem());
            mark(cut, least.problem());
            problem.setText(Stream.of(most, least)
                    .map(Cap::problem)
                    .filter(p -> !p.isEmpty())
                    .collect(Collectors.joining(" ")));
        }
    }

    private static void mark(TextField field, String problem) {
        field.getStyleClass().remove("bad-field");
        if (!problem.isEmpty()) {
            field.getStyleClass().add("bad-field");
        }
    }
}
