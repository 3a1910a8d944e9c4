package fuelwright.ui.rides;

import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ui.session.RefusedLogs;
import fuelwright.ui.session.RefusedLogs.Refused;
import fuelwright.ui.session.Stage;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import javafx.collections.ListChangeListener;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
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
        ComboBox<String> time = columns(log, "rides.refused.time", Role.TIME);
        ComboBox<String> speed = columns(log, "rides.refused.speed", Role.ENGINE_SPEED);
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
            RideOptions said = said(log.options(), time.getValue(), Role.TIME);
            said = said(said, speed.getValue(), Role.ENGINE_SPEED);
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
        FlowPane fields = new FlowPane(
                12,
                6,
                field("rides.refused.time", time),
                field("rides.file.rate", rate),
                field("rides.refused.speed", speed));
        form.getChildren()
                .addAll(
                        fields,
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

    /** The columns of a log; the first choice leaves it to the reader. */
    private static ComboBox<String> columns(Refused log, String key, Role role) {
        ComboBox<String> box = new ComboBox<>();
        List<String> choices = new ArrayList<>();
        choices.add(Words.of("rides.refused.found"));
        choices.addAll(log.headings());
        box.getItems().setAll(choices);
        Optional<String> said = log.options().roles().entrySet().stream()
                .filter(e -> e.getValue() == role && choices.contains(e.getKey()))
                .map(java.util.Map.Entry::getKey)
                .findFirst();
        box.setValue(said.orElse(choices.get(0)));
        box.getStyleClass().add("compact");
        box.setMaxWidth(220);
        box.setId("refused-" + role.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
        box.setAccessibleText(Words.of(key));
        return box;
    }

    private static RideOptions said(RideOptions options, String heading, Role role) {
        return heading == null || heading.equals(Words.of("rides.refused.found"))
                ? options
                : options.withRole(heading, role);
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
