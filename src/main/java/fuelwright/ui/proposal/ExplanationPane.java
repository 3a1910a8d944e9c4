package fuelwright.ui.proposal;

import fuelwright.estimate.Decision;
import fuelwright.safety.Caution;
import fuelwright.ui.plot.ReadingStrip;
import fuelwright.ui.session.CellReadings;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The selected cell, from its figure down to its readings, and what the user can decide about it. */
final class ExplanationPane {

    private static final double STRIP_WIDTH = 280;
    /** What stands beside it: padding and a scroll bar. */
    private static final double STRIP_BESIDE = 48;

    private final ProposalModel model;
    private final Runnable back;
    private final TextField typed = new TextField();
    private final Button release = button("proposal.release", ProposalModel::release);
    private final VBox above = new VBox(12);
    private final VBox below = new VBox(12);
    private final VBox decisions;
    private final ScrollPane pane;

    /** @param back gives the keyboard back to the map */
    ExplanationPane(ProposalModel model, Runnable back) {
        this.model = model;
        this.back = back;
        // Stays while what is around it is filled anew: else a figure would be lost while it is typed.
        decisions = decisions();
        VBox box = new VBox(12, above, decisions, below);
        box.getStyleClass().add("explanation-inner");
        pane = Parts.scroll(box);
        model.explanationProperty().addListener((p, old, now) -> fill());
        model.nearProperty().addListener((p, old, now) -> fill());
        model.mapProperty().addListener((p, old, now) -> fill());
        model.blockProperty().addListener((p, old, now) -> fill());
        model.session().themeProperty().addListener((p, old, now) -> fill());
        model.session().whenShownOtherwise(this::fill);
        model.session().cellProperty().addListener((p, old, now) -> typed.clear());
        fill();
    }

    Node node() {
        return pane;
    }

    /** Begins to type the figure of what is selected. */
    void type(String text) {
        typed.setText(text);
        typed.requestFocus();
        typed.end();
    }

    private void fill() {
        above.getChildren().clear();
        below.getChildren().clear();
        CellExplanation e = model.explanationProperty().get();
        BlockExplanation b = model.blockProperty().get();
        Parts.show(decisions, b != null || e != null);
        // It keeps its place, so that nothing moves under the hand.
        release.setDisable(
                b != null ? b.decisions().isEmpty() : e == null || e.decision().isEmpty());
        if (b != null) {
            block(b);
        } else if (e == null) {
            nothing();
        } else {
            cell(e);
        }
    }

    private void nothing() {
        above.getChildren()
                .addAll(
                        Parts.label(Words.of("explain.none.title"), "section"),
                        Parts.text(Words.of("explain.none"), "muted"),
                        Parts.text(Words.of("explain.none.block"), "muted"),
                        Parts.text(Words.of("explain.none.signs"), "muted"));
        model.rideToRide()
                .ifPresent(words -> above.getChildren()
                        .addAll(Parts.label(Words.of("explain.ridetoride"), "section"), Parts.text(words)));
        List<List<String>> next = model.nextRide();
        if (!next.isEmpty()) {
            above.getChildren()
                    .addAll(
                            Parts.label(Words.of("explain.nextride"), "section"),
                            Parts.columns(1, model.nextRideHeadings(), next));
            if (next.stream().anyMatch(row -> !row.get(row.size() - 1).isEmpty())) {
                above.getChildren().add(Parts.text(Words.of("nextride.dyno.words"), "muted", "small"));
            }
        }
    }

    private void cell(CellExplanation e) {
        Label change = Parts.label(e.change(), "big-figure");
        Label plusMinus = Parts.label(e.uncertainty().isEmpty() ? "%" : "%\u00a0" + e.uncertainty(), "unit-word");
        HBox figure = new HBox(8, change, plusMinus);
        figure.setAlignment(javafx.geometry.Pos.BASELINE_LEFT);
        above.getChildren()
                .add(new VBox(
                        4,
                        Parts.text(e.place(), "section"),
                        Parts.text(e.standing(), "muted"),
                        figure,
                        Parts.text(e.beforeAfter(), "strong")));
        e.decision()
                .ifPresent(d -> above.getChildren()
                        .add(Parts.label(Words.of(d == Decision.Kind.HELD ? "explain.held" : "explain.set"), "tag")));
        left(e.left());
        if (!e.far().isEmpty()) {
            above.getChildren().add(Parts.callout("check", Words.of("explain.far"), e.far()));
        }
        e.stops().forEach(words -> above.getChildren().add(Parts.text(words, "stop-line")));
        VBox steps = new VBox(Parts.label(Words.of("explain.steps"), "section"));
        e.steps().forEach(s -> steps.getChildren().add(Parts.fact(Parts.capital(s.words()), s.change())));
        below.getChildren().addAll(steps, strip(), readings(e));
        e.cautions().forEach(c -> below.getChildren().add(callout(c)));
    }

    /** What stays lean stands right below the figure that leaves it so, in the look of its caution. */
    private void left(LeftWords left) {
        if (left.level().isPresent()) {
            Caution.Level level = left.level().get();
            above.getChildren()
                    .add(Parts.callout(
                            level.name().toLowerCase(Locale.ROOT),
                            level.words() + " · " + Words.of("explain.left.title"),
                            left.words()));
        } else if (!left.words().isEmpty()) {
            above.getChildren().add(Parts.text(left.words(), "strong"));
        }
    }

    private void block(BlockExplanation b) {
        above.getChildren()
                .add(new VBox(
                        4,
                        Parts.text(b.title(), "section"),
                        Parts.text(b.place(), "muted"),
                        Parts.text(b.changes(), "strong"),
                        Parts.text(b.standings(), "muted")));
        if (!b.decisions().isEmpty()) {
            above.getChildren().add(Parts.label(b.decisions(), "tag"));
        }
        left(b.left());
        b.cautions().forEach(c -> below.getChildren().add(callout(c)));
    }

    private VBox strip() {
        VBox part = new VBox(4);
        CellReadings r = model.nearProperty().get();
        if (r != null) {
            ReadingStrip strip = new ReadingStrip(Math.max(STRIP_WIDTH, pane.getWidth() - STRIP_BESIDE));
            strip.show(
                    model.session().themeProperty().get(),
                    r.shortfallsPercent(),
                    r.fittedPercent(),
                    r.uncertaintyPercent());
            part.getChildren().addAll(Parts.label(Words.of("strip.title"), "section"), strip);
            part.getChildren().add(Parts.text(model.outWords(r), "muted", "small"));
            r.rebasedWords(model.session().job())
                    .ifPresent(words -> part.getChildren().add(Parts.text(words, "strong", "small")));
        }
        Parts.show(part, !part.getChildren().isEmpty());
        return part;
    }

    private VBox readings(CellExplanation e) {
        VBox part = new VBox(4);
        if (!e.readings().isEmpty()) {
            part.getChildren().add(Parts.text(e.readings(), "muted"));
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

    private VBox decisions() {
        typed.setPromptText(Words.of("proposal.set.prompt"));
        typed.setAccessibleText(Words.of("proposal.set.prompt"));
        typed.setPrefColumnCount(6);
        typed.setId("decide-figure");
        typed.setOnAction(a -> take());
        typed.setOnKeyPressed(e -> {
            if (e.getCode() == KeyCode.ESCAPE) {
                typed.clear();
                back.run();
                e.consume();
            }
        });
        HBox.setHgrow(typed, Priority.ALWAYS);
        Button hold = button("proposal.hold", ProposalModel::hold);
        hold.setId("decide-hold");
        release.setId("decide-release");
        FlowPane buttons = new FlowPane(
                8,
                8,
                hold,
                button("proposal.soften", ProposalModel::soften),
                button("proposal.fitted", ProposalModel::takeFitted),
                release);
        Label message = Parts.text("", "field-message");
        message.textProperty().bind(model.messageProperty());
        message.managedProperty().bind(message.textProperty().isNotEmpty());
        Button undo = Parts.button("proposal.far.undo", () -> {
            model.session().undo();
            back.run();
        });
        undo.setId("undo-typed");
        undo.visibleProperty().bind(model.slipProperty());
        undo.managedProperty().bind(model.slipProperty());
        return new VBox(
                8,
                Parts.label(Words.of("explain.decide"), "section"),
                buttons,
                message,
                Parts.row(8, typed, Parts.button("proposal.set", this::take)),
                Parts.text(Words.of("proposal.set.hint"), "muted", "small"),
                undo);
    }

    /** Decides, and goes on with the map. */
    private Button button(String key, Consumer<ProposalModel> decision) {
        return Parts.button(key, () -> {
            decision.accept(model);
            back.run();
        });
    }

    /** Sets what is typed; what can't be set stays to be mended. */
    private void take() {
        if (model.set(typed.getText())) {
            typed.clear();
            back.run();
        } else {
            typed.requestFocus();
        }
    }
}
