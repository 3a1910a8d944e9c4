package fuelwright.ui.rides;

import fuelwright.ride.Channel;
import fuelwright.ride.Role;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.Locale;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** What the user can say about a log: what a column means, and what an AFR display is set to. */
final class ReadingPane {

    private static final StringConverter<Role> WORDS = new StringConverter<>() {
        @Override
        public String toString(Role role) {
            return role == null ? "" : role == Role.OTHER ? Words.of("rides.role.other") : Parts.capital(role.words());
        }

        @Override
        public Role fromString(String text) {
            return Role.parse(text).orElse(Role.OTHER);
        }
    };

    private ReadingPane() {}

    /** A column: what it means, to be changed, and why. */
    static VBox channel(RidesModel model, Channel channel) {
        ComboBox<Role> roles = new ComboBox<>();
        roles.getItems().setAll(model.rolesFor(channel));
        roles.setValue(channel.role());
        roles.setConverter(WORDS);
        roles.getStyleClass().addAll("compact", "role-choice");
        roles.setMaxWidth(Double.MAX_VALUE);
        roles.setAccessibleText(Words.of("rides.role.words", channel.heading(), WORDS.toString(channel.role())));
        roles.setOnAction(e -> model.role(channel, roles.getValue()));
        HBox.setHgrow(roles, Priority.ALWAYS);
        Label sure = Parts.label(
                Words.of("rides.confidence." + channel.confidence().name().toLowerCase(Locale.ROOT)), "small");
        sure.getStyleClass().add(channel.confidence() == Channel.Confidence.LOOK ? "tag" : "muted");
        sure.setMinWidth(javafx.scene.layout.Region.USE_PREF_SIZE);
        String symbol = channel.unit().symbol();
        String unit = symbol.equals("1") || channel.heading().contains("[") ? "" : " [" + symbol + "]";
        String remark = channel.remark().isEmpty() ? "" : ": " + channel.remark();
        VBox box = new VBox(
                2,
                Parts.row(8, roles, sure),
                Parts.text("“" + channel.heading() + "”" + unit + remark, "muted", "small"));
        box.getStyleClass().add("fact");
        return box;
    }

    /** Asks what the display is set to, and says what is taken now. */
    static VBox displayRatio(RidesModel model) {
        TextField field = new TextField(Figures.shortest(model.displayRatio()));
        field.setAccessibleText(Words.of("rides.ratio"));
        field.setMaxWidth(72);
        field.setId("display-ratio");
        Label message = Parts.text("", "field-message");
        message.managedProperty().bind(message.textProperty().isNotEmpty());
        Runnable take = () -> message.setText(
                model.displayRatio(field.getText())
                        ? ""
                        : Words.of("rides.ratio.wrong", RidesModel.LEAST_RATIO, RidesModel.MOST_RATIO));
        field.setOnAction(e -> take.run());
        VBox box = Parts.callout(
                model.ratioSaid() ? "note" : "check",
                Words.of(
                        model.ratioSaid() ? "rides.ratio.said" : "rides.ratio.ask",
                        Figures.shortest(model.displayRatio())),
                Words.of("rides.ratio.why"));
        box.getChildren().addAll(Parts.row(8, field, Parts.button("rides.ratio.take", take, "compact")), message);
        return box;
    }
}
