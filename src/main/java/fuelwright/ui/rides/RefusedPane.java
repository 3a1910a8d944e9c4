package fuelwright.ui.rides;

import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ui.session.RefusedLogs;
import fuelwright.ui.session.RefusedLogs.Refused;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;

/** Refused logs, each with fields for what the reader didn't find: the time or the rows a second, the engine speed. */
final class RefusedPane {

    private static final double MOST_HZ = 2000;

    private final RefusedLogs logs;
    private final VBox box = new VBox(8);

    RefusedPane(RefusedLogs logs) {
        this.logs = logs;
        box.setId("refused-logs");
        logs.all().addListener((ListChangeListener<Refused>) c -> fill());
        fill();
    }

    Node node() {
        return box;
    }

    private void fill() {
        box.getChildren().setAll(logs.all().stream().map(this::form).toList());
        Parts.show(box, !logs.all().isEmpty());
    }

    private VBox form(Refused log) {
        List<ColumnField> fields = asked(log).stream()
                .map(role -> new ColumnField(
                        role, log.columns().columns(), Words.of("rides.refused.found"), said(log, role)))
                .toList();
        TextField rate = new TextField(
                log.options().sampleRateHz().isPresent()
                        ? fuelwright.ui.theme.Figures.shortest(
                                log.options().sampleRateHz().getAsDouble())
                        : "");
        rate.setPrefColumnCount(5);
        rate.setId("refused-rate");
        rate.setAccessibleText(Words.of("rides.file.rate"));
        Label message = Parts.text("", "field-message");
        message.managedProperty().bind(message.textProperty().isNotEmpty());
        Runnable again = () -> {
            OptionalDouble hz = rateOf(rate.getText());
            if (hz.isEmpty() && !rate.getText().isBlank()) {
                message.setText(Words.of("rides.refused.rate.wrong", MOST_HZ));
                return;
            }
            RideOptions said = log.options();
            for (ColumnField field : fields) {
                // A rate that was typed goes before a column that was only guessed.
                boolean told = hz.isEmpty() || field.role() != Role.TIME || !field.isGuess();
                said = told ? field.said(said) : said;
            }
            logs.again(log, hz.isPresent() ? said.withSampleRate(hz.getAsDouble()) : said);
        };
        rate.setOnAction(e -> again.run());
        VBox form = new VBox(4);
        form.getStyleClass().addAll("callout", "file");
        form.getChildren()
                .addAll(
                        Parts.row(
                                8,
                                Parts.fileMark(),
                                Parts.text(Words.of("rides.refused", log.name()), "callout-heading")),
                        Parts.text(
                                Parts.sentence(Words.onStage(Stage.RIDES.number(), Stage.RIDES.words(), log.why()))));
        FlowPane flow = new FlowPane(12, 6);
        fields.forEach(f -> flow.getChildren().add(f.node()));
        flow.getChildren().add(Math.min(1, fields.size()), field("rides.file.rate", rate));
        form.getChildren()
                .addAll(
                        flow,
                        Parts.text(Words.of("rides.refused.how"), "muted", "small"),
                        message,
                        Parts.row(
                                8,
                                Parts.button("rides.refused.again", again, "compact"),
                                Parts.button("rides.refused.leave", () -> logs.leave(log), "compact")));
        return form;
    }

    private static Node field(String key, Node control) {
        Label name = Parts.label(Words.of(key), "field-name", "small");
        name.setLabelFor(control);
        return Parts.row(6, name, control);
    }

    /** All that isn't found, at once; time and engine speed too where they are found wrong. */
    private static List<Role> asked(Refused log) {
        Set<Role> roles = new TreeSet<>(Set.of(Role.TIME, Role.ENGINE_SPEED));
        roles.addAll(log.missing());
        return List.copyOf(roles);
    }

    /** The column that was said to be the role; what is found by itself needs no saying. */
    private static Optional<String> said(Refused log, Role role) {
        return log.options().roles().entrySet().stream()
                .filter(e -> e.getValue() == role)
                .map(java.util.Map.Entry::getKey)
                .findFirst()
                .or(() ->
                        log.missing().contains(role) ? Optional.empty() : Optional.of(Words.of("rides.refused.found")));
    }

    private static OptionalDouble rateOf(String typed) {
        try {
            double hz = Double.parseDouble(typed.strip().replace(',', '.'));
            return hz > 0 && hz <= MOST_HZ ? OptionalDouble.of(hz) : OptionalDouble.empty();
        } catch (NumberFormatException e) {
            return OptionalDouble.empty();
        }
    }
}
