package fuelwright.ui.rides;

import fuelwright.ride.Channel;
import fuelwright.ride.Role;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Unit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** What the user can say about a log: what a column means and in which unit it is, and what an AFR display is set to. */
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

    private static final StringConverter<Unit> UNITS = new StringConverter<>() {
        @Override
        public String toString(Unit unit) {
            return unit == null ? "" : unit == Unit.ONE ? Words.of("rides.unit.none") : unit.symbol();
        }

        @Override
        public Unit fromString(String text) {
            return Unit.parse(text).orElse(Unit.ONE);
        }
    };

    private ReadingPane() {}

    /** A column: what it means and in which unit, to be changed; how it looks, how often it comes, and why it was taken so. */
    static VBox channel(RidesModel model, Channel channel, Optional<RidePicture.Spark> spark) {
        ComboBox<Role> roles = new ComboBox<>();
        roles.getItems().setAll(model.rolesFor(channel));
        roles.setValue(channel.role());
        roles.setConverter(WORDS);
        roles.getStyleClass().addAll("compact", "role-choice");
        roles.setMaxWidth(Double.MAX_VALUE);
        roles.setAccessibleText(Words.of("rides.role.words", channel.heading(), WORDS.toString(channel.role())));
        Parts.takeWhenClosed(roles, channel.role(), role -> model.role(channel, role));
        HBox.setHgrow(roles, Priority.ALWAYS);
        Label sure = Parts.label(
                Words.of("rides.confidence." + channel.confidence().name().toLowerCase(Locale.ROOT)), "small");
        sure.getStyleClass().add(channel.confidence() == Channel.Confidence.LOOK ? "strong" : "muted");
        sure.setMinWidth(Region.USE_PREF_SIZE);
        VBox box = new VBox(2, Parts.row(8, roles, sure));
        Label heading = Parts.text("“" + channel.heading() + "”", "muted", "small");
        HBox.setHgrow(heading, Priority.ALWAYS);
        heading.setMaxWidth(Double.MAX_VALUE);
        HBox named = Parts.row(8, heading);
        spark.ifPresent(s -> named.getChildren()
                .add(Spark.of(
                        s,
                        model.session().themeProperty().get().palette(),
                        channel.confidence() != Channel.Confidence.LEFT_OUT && channel.role() != Role.OTHER)));
        box.getChildren().add(named);
        HBox facts = Parts.row(8, unit(model, channel));
        spark.filter(s -> s.rateHz() > 0)
                .ifPresent(s -> facts.getChildren()
                        .add(Parts.label(
                                Words.of("rides.rate", Figures.plain(s.rateHz(), s.rateHz() < 10 ? 1 : 0)),
                                "muted",
                                "small")));
        box.getChildren().add(facts);
        if (!channel.remark().isEmpty()) {
            box.getChildren().add(Parts.text(Parts.sentence(channel.remark()), "small"));
        }
        box.getStyleClass().add("fact");
        return box;
    }

    private static Region unit(RidesModel model, Channel channel) {
        List<Unit> units = model.unitsFor(channel);
        if (units.size() < 2) {
            return Parts.label(UNITS.toString(channel.unit()), "muted", "small");
        }
        ComboBox<Unit> choice = new ComboBox<>();
        choice.getItems().setAll(units);
        choice.setValue(channel.unit());
        choice.setConverter(UNITS);
        choice.getStyleClass().addAll("compact", "role-choice", "unit-choice");
        choice.setAccessibleText(Words.of("rides.unit.words", channel.heading(), UNITS.toString(channel.unit())));
        choice.setOnAction(e -> model.unit(channel, choice.getValue()));
        return choice;
    }

    /** Asks what a log's display is set to, and says what is taken now. */
    static VBox displayRatio(DisplayRatio ratio) {
        TextField field = new TextField(Figures.shortest(ratio.value()));
        field.setAccessibleText(Words.of("rides.ratio"));
        field.setMaxWidth(72);
        field.setId(ratio.id());
        Label message = Parts.text("", "field-message");
        message.managedProperty().bind(message.textProperty().isNotEmpty());
        Runnable take = () -> message.setText(
                ratio.take(field.getText())
                        ? ""
                        : Words.of("rides.ratio.wrong", DisplayRatio.LEAST, DisplayRatio.MOST));
        field.setOnAction(e -> take.run());
        String asked = Words.of(
                ratio.remembered() ? "rides.ratio.remembered" : ratio.said() ? "rides.ratio.said" : "rides.ratio.ask",
                Figures.shortest(ratio.value()));
        VBox box = Parts.callout(
                ratio.said() ? "note" : "check",
                ratio.name().map(name -> name + ": " + asked).orElse(asked),
                Words.of("rides.ratio.why"));
        box.getChildren().addAll(Parts.row(8, field, Parts.button("rides.ratio.take", take, "compact")), message);
        return box;
    }

    /** Which cylinder the fuel table feeds, by the sensors of the ride. */
    static VBox cylinder(RidesModel model) {
        List<Channel> sensors = model.sensorsToChooseFrom();
        ComboBox<Integer> choice = new ComboBox<>();
        choice.getItems().add(0);
        for (int i = 1; i <= Math.max(sensors.size(), model.cylinder()); i++) {
            choice.getItems().add(i);
        }
        choice.setValue(model.cylinder());
        choice.setConverter(new StringConverter<>() {
            @Override
            public String toString(Integer number) {
                return number == null || number == 0
                        ? Words.of("rides.cylinder.all")
                        : number > sensors.size()
                                ? Words.of("rides.cylinder.number", number)
                                : Words.of(
                                        "rides.cylinder.one",
                                        number,
                                        sensors.get(number - 1).heading());
            }

            @Override
            public Integer fromString(String text) {
                throw new UnsupportedOperationException("not typed");
            }
        });
        choice.getStyleClass().add("compact");
        choice.setId("cylinder");
        choice.setMaxWidth(Double.MAX_VALUE);
        choice.setAccessibleText(Words.of("rides.cylinder"));
        choice.setOnAction(e -> model.cylinder(choice.getValue()));
        VBox box = Parts.callout("note", Words.of("rides.cylinder"), Words.of("rides.cylinder.why"));
        box.getChildren().add(choice);
        return box;
    }
}
