package fuelwright.ui.theme;

import fuelwright.mixture.Fuel;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.value.ObservableBooleanValue;
import javafx.css.PseudoClass;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.VBox;

/** Buttons, fields and panels in every state. */
public final class PartExhibits {

    private static final double PANEL = 320;
    private static final String LONG =
            "Words that are longer than the room that anybody thought of when this was drawn, so that it shows what then becomes of them";

    private final List<Exhibit> all = new ArrayList<>();

    private PartExhibits() {}

    /** @param working whether something is being worked on: always, never */
    public static List<Exhibit> all(ObservableBooleanValue working, ObservableBooleanValue idle) {
        PartExhibits parts = new PartExhibits();
        parts.buttons();
        parts.fields();
        parts.texts();
        parts.panels(working, idle);
        return parts.all;
    }

    private void add(String control, String state, Node node) {
        all.add(new Exhibit(control, state, node, 0, 0));
    }

    private void panel(String control, String state, Node node) {
        all.add(new Exhibit(control, state, node, PANEL, 0));
    }

    private static <N extends Node> N in(String pseudo, N node) {
        node.pseudoClassStateChanged(PseudoClass.getPseudoClass(pseudo), true);
        return node;
    }

    private void buttons() {
        for (String style : new String[] {"", "primary", "compact"}) {
            String name = style.isEmpty() ? "Button" : "Button, " + style;
            for (String state : new String[] {"as it is", "hover", "pressed", "focused", "disabled"}) {
                Node button =
                        Parts.button("rides.open", () -> {}, style.isEmpty() ? new String[0] : new String[] {style});
                if (state.equals("disabled")) {
                    button.setDisable(true);
                } else if (!state.equals("as it is")) {
                    in(state.equals("pressed") ? "armed" : state, button);
                }
                add(name, state, button);
            }
        }
        ToggleButton first = new ToggleButton("First");
        first.setSelected(true);
        add(
                "Choice",
                "first of three",
                Parts.choice(new ToggleGroup(), first, new ToggleButton("Second"), new ToggleButton("Third")));
        Node disabled = Parts.choice(new ToggleGroup(), new ToggleButton("First"), new ToggleButton("Second"));
        disabled.setDisable(true);
        add("Choice", "disabled", disabled);
        for (Fuel fuel : Fuel.values()) {
            panel("FuelChoice", fuel.words(), new FuelChoice(new SimpleObjectProperty<>(fuel)));
        }
    }

    private void fields() {
        add("Field", "empty", prompted(""));
        add("Field", "filled", prompted("38"));
        add("Field", "focused", in("focused", prompted("38")));
        TextField bad = prompted("lots");
        bad.getStyleClass().add("bad-field");
        add("Field", "wrong, with its message", new VBox(2, bad, Parts.text("A number, please", "field-message")));
        TextField off = prompted("38");
        off.setDisable(true);
        add("Field", "disabled", off);
    }

    private static TextField prompted(String text) {
        TextField field = new TextField(text);
        field.setPromptText(Words.of("machine.unknown"));
        return field;
    }

    private void texts() {
        panel("Heading", "short", Parts.heading(new Label("Rides"), new Label("One line below")));
        panel("Heading", "long", Parts.heading(new Label("Rides"), new Label(LONG)));
        panel("Fact", "short", Parts.fact("Readings", "8 071"));
        panel("Fact", "muted figure", Parts.fact("Readings", "8 071", "muted"));
        panel("Fact", "long words", Parts.fact(LONG, "+14.0 %"));
        for (String style :
                new String[] {"section", "strong", "muted", "small", "figure", "big-figure", "tag", "field-name"}) {
            add("Text", style, Parts.label("Mixture 0.87", style));
        }
        for (String level : new String[] {"stop", "check", "note"}) {
            add("Level", level, Parts.label(Parts.capital(level), "level", level));
        }
    }

    private void panels(ObservableBooleanValue working, ObservableBooleanValue idle) {
        for (String kind : new String[] {"stop", "check", "note"}) {
            panel("Callout", kind, Parts.callout(kind, "Lean under load", "41 times, 88.2 s in all."));
            panel("Callout", kind + ", long", Parts.callout(kind, LONG, LONG, LONG.toLowerCase(Locale.ROOT)));
        }
        panel(
                "Empty",
                "nothing there",
                Parts.empty("No rides yet", "Drop a log here.", Parts.button("rides.open", () -> {}, "primary")));
        panel("Empty", "nothing there, nothing to do", Parts.empty("Nothing here", LONG));
        panel(
                "Empty",
                "being worked on",
                Parts.empty(
                        "No rides yet",
                        "Drop a log here.",
                        working,
                        new SimpleStringProperty("reading ride-1.csv"),
                        Parts.button("rides.open", () -> {}, "primary")));
        panel(
                "Empty",
                "not being worked on",
                Parts.empty(
                        "No rides yet",
                        "Drop a log here.",
                        idle,
                        new SimpleStringProperty(""),
                        Parts.button("rides.open", () -> {}, "primary")));
    }
}
