package fuelwright.ui.rides;

import fuelwright.ride.ColumnLooks;
import fuelwright.ride.LogColumn;
import fuelwright.ride.RideOptions;
import fuelwright.ride.Role;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;

/** Asks which column a role is: the best guess is chosen, three of its figures stand beside it. */
final class ColumnField {

    private final Role role;
    private final List<LogColumn> columns;
    private final ComboBox<String> choice = new ComboBox<>();
    private final Label examples = Parts.label("", "muted", "small", "column-examples");
    private final String guess;

    /**
     * @param none what is chosen where no column looks like it
     * @param said what was said before
     */
    ColumnField(Role role, List<LogColumn> columns, String none, Optional<String> said) {
        this.role = role;
        this.columns = columns;
        List<String> choices = new ArrayList<>();
        choices.add(none);
        columns.forEach(c -> choices.add(c.heading()));
        choice.getItems().setAll(choices);
        guess = said.filter(choices::contains)
                .or(() -> ColumnLooks.best(role, columns).map(LogColumn::heading))
                .orElse(none);
        choice.getStyleClass().add("compact");
        choice.setMaxWidth(220);
        choice.setId("refused-" + role.name().toLowerCase(Locale.ROOT).replace('_', '-'));
        choice.setAccessibleText(name());
        choice.valueProperty().addListener((p, old, now) -> examples.setText(examples()));
        choice.setValue(guess);
    }

    private String name() {
        return Words.of(
                "rides.column." + (role.isMixture() ? "mixture" : role.name().toLowerCase(Locale.ROOT)));
    }

    private String examples() {
        return chosen().map(c -> c.examples().stream().map(Figures::shortest).collect(Collectors.joining("  ·  ")))
                .filter(words -> !words.isEmpty())
                .map(words -> Words.of("rides.column.examples", words))
                .orElse("");
    }

    Node node() {
        Label name = Parts.label(name(), "field-name", "small");
        name.setLabelFor(choice);
        name.setMinWidth(Region.USE_PREF_SIZE);
        examples.setMinWidth(Region.USE_PREF_SIZE);
        return Parts.row(6, name, choice, examples);
    }

    Role role() {
        return role;
    }

    /** Whether what is chosen is the program's guess. */
    boolean isGuess() {
        return guess.equals(choice.getValue());
    }

    Optional<LogColumn> chosen() {
        return columns.stream()
                .filter(c -> c.heading().equals(choice.getValue()))
                .findFirst();
    }

    /** The options with what is chosen. */
    RideOptions said(RideOptions options) {
        return chosen().map(c -> options.withRole(c.heading(), ColumnLooks.told(role, c)))
                .orElse(options);
    }
}
