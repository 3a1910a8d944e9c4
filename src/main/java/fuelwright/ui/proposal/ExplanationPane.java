package fuelwright.ui.proposal;

import fuelwright.estimate.Decision;
import fuelwright.safety.Caution;
import fuelwright.ui.plot.ReadingStrip;
import fuelwright.ui.session.CellReadings;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The selected cell, from its figure down to its readings, and what the user can decide about it. */
final class ExplanationPane {

    private static final double STRIP_WIDTH = 280;

    private final ProposalModel model;
    private final VBox box = new VBox(12);
    private final Node pane = Parts.scroll(box);

    ExplanationPane(ProposalModel model) {
        this.model = model;
        box.getStyleClass().add("explanation-inner");
        model.explanationProperty().addListener((p, old, now) -> fill());
        model.nearProperty().addListener((p, old, now) -> fill());
        model.mapProperty().addListener((p, old, now) -> fill());
        model.blockProperty().addListener((p, old, now) -> fill());
        model.session().themeProperty().addListener((p, old, now) -> fill());
        fill();
    }

    Node node() {
        return pane;
    }

    private void fill() {
        CellExplanation e = model.explanationProperty().get();
        box.getChildren().clear();
        if (model.blockProperty().get() != null) {
            block(model.blockProperty().get());
            return;
        }
        if (e == null) {
            box.getChildren()
                    .addAll(
                            Parts.label(Words.of("explain.none.title"), "section"),
                            Parts.text(Words.of("explain.none"), "muted"),
                            Parts.text(Words.of("explain.none.block"), "muted"),
                            Parts.text(Words.of("explain.none.signs"), "muted"));
            model.rideToRide()
                    .ifPresent(words -> box.getChildren()
                            .addAll(Parts.label(Words.of("explain.ridetoride"), "section"), Parts.text(words)));
            List<String> next = model.nextRide();
            if (!next.isEmpty()) {
                box.getChildren().add(Parts.label(Words.of("explain.nextride"), "section"));
                next.forEach(words -> box.getChildren().add(Parts.text(words, "muted")));
            }
            return;
        }
        Label change = Parts.label(e.change(), "big-figure");
        Label plusMinus = Parts.label("% " + e.uncertainty(), "unit-word");
        HBox figure = new HBox(8, change, plusMinus);
        figure.setAlignment(javafx.geometry.Pos.BASELINE_LEFT);
        VBox head = new VBox(
                4,
                Parts.text(e.place(), "section"),
                Parts.text(e.standing(), "muted"),
                figure,
                Parts.text(e.beforeAfter(), "strong"));
        box.getChildren().add(head);
        e.decision()
                .ifPresent(d -> box.getChildren()
                        .add(Parts.label(Words.of(d == Decision.Kind.HELD ? "explain.held" : "explain.set"), "tag")));
        e.cautions().stream()
                .filter(Caution::isStop)
                .forEach(c -> box.getChildren().add(callout(c)));
        VBox steps = new VBox(Parts.label(Words.of("explain.steps"), "section"));
        e.steps().forEach(s -> steps.getChildren().add(Parts.fact(Parts.capital(s.words()), s.change())));
        box.getChildren()
                .addAll(steps, strip(), readings(e), decisions(e.decision().isPresent()));
        e.cautions().stream()
                .filter(c -> !c.isStop())
                .forEach(c -> box.getChildren().add(callout(c)));
    }

    private void block(BlockExplanation b) {
        box.getChildren()
                .add(new VBox(
                        4,
                        Parts.text(b.title(), "section"),
                        Parts.text(b.place(), "muted"),
                        Parts.text(b.changes(), "strong"),
                        Parts.text(b.standings(), "muted")));
        if (!b.decisions().isEmpty()) {
            box.getChildren().add(Parts.label(b.decisions(), "tag"));
        }
        box.getChildren().add(decisions(!b.decisions().isEmpty()));
        b.cautions().forEach(c -> box.getChildren().add(callout(c)));
    }

    private VBox strip() {
        VBox part = new VBox(4);
        CellReadings r = model.nearProperty().get();
        if (r != null) {
            ReadingStrip strip = new ReadingStrip(STRIP_WIDTH);
            strip.show(
                    model.session().themeProperty().get(),
                    r.shortfallsPercent(),
                    r.fittedPercent(),
                    r.uncertaintyPercent());
            part.getChildren().addAll(Parts.label(Words.of("strip.title"), "section"), strip);
            part.getChildren().add(Parts.text(model.outWords(r), "muted", "small"));
        }
        Parts.show(part, !part.getChildren().isEmpty());
        return part;
    }

    private VBox readings(CellExplanation e) {
        VBox part = new VBox(4);
        if (!e.readings().isEmpty()) {
            part.getChildren().add(Parts.text(e.readings(), "muted"));
        }
        if (!e.left().isEmpty()) {
            part.getChildren().add(Parts.text(e.left(), "strong"));
        }
        part.getChildren().add(Parts.text(e.next(), "muted"));
        return part;
    }

    static VBox callout(Caution caution) {
        return Parts.callout(
                caution.level().name().toLowerCase(Locale.ROOT),
                caution.level().words() + " · " + caution.title(),
                Parts.sentence(caution.what()),
                Parts.sentence(caution.todo()));
    }

    private VBox decisions(boolean decided) {
        TextField field = new TextField();
        field.setPromptText(Words.of("proposal.set.prompt"));
        field.setAccessibleText(Words.of("proposal.set.prompt"));
        field.setPrefColumnCount(6);
        field.setOnAction(a -> model.set(field.getText()));
        HBox.setHgrow(field, Priority.ALWAYS);
        Button hold = Parts.button("proposal.hold", model::hold);
        hold.setId("decide-hold");
        FlowPane buttons = new FlowPane(
                8,
                8,
                hold,
                Parts.button("proposal.soften", model::soften),
                Parts.button("proposal.fitted", model::takeFitted));
        if (decided) {
            buttons.getChildren().add(Parts.button("proposal.release", model::release));
        }
        Label message = Parts.text("", "field-message");
        message.textProperty().bind(model.messageProperty());
        message.managedProperty().bind(message.textProperty().isNotEmpty());
        return new VBox(
                8,
                Parts.label(Words.of("explain.decide"), "section"),
                buttons,
                Parts.row(8, field, Parts.button("proposal.set", () -> model.set(field.getText()))),
                Parts.text(Words.of("proposal.set.hint"), "muted", "small"),
                message);
    }
}
