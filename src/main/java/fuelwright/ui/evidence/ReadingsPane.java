package fuelwright.ui.evidence;

import fuelwright.ui.plot.ReadingScatter;
import fuelwright.ui.plot.ReadingStrip;
import fuelwright.ui.session.CellReadings;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import javafx.scene.Node;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.VBox;

/** The readings of the selected cell: how they spread, over time, over throttle speed; which rides they are from. */
final class ReadingsPane {

    private static final double WIDTH = 284;

    /** What the readings are drawn against. */
    private enum Against {
        SPREAD,
        TIME,
        THROTTLE
    }

    private final EvidenceModel model;
    private Against against = Against.SPREAD;

    ReadingsPane(EvidenceModel model) {
        this.model = model;
    }

    /** The readings near the selected cell, drawn anew. */
    Node of(CellReadings near) {
        VBox plot = new VBox();
        ToggleButton[] toggles = new ToggleButton[Against.values().length];
        for (Against what : Against.values()) {
            ToggleButton toggle =
                    new ToggleButton(Words.of("evidence.against." + what.name().toLowerCase(Locale.ROOT)));
            toggle.setSelected(what == against);
            toggle.setOnAction(e -> {
                against = what;
                plot.getChildren().setAll(plot(near));
            });
            toggles[what.ordinal()] = toggle;
        }
        plot.getChildren().setAll(plot(near));
        VBox lines = new VBox();
        model.origins(near).forEach(f -> lines.getChildren().add(Parts.fact(f.words(), f.figure())));
        VBox all = new VBox(
                8,
                Parts.label(Words.of("strip.title"), "section"),
                Parts.choice(new ToggleGroup(), toggles),
                plot,
                Parts.text(Words.of("evidence.aslogged"), "muted", "small"));
        near.rebasedWords(model.session().job())
                .ifPresent(words -> all.getChildren().add(Parts.text(words, "strong", "small")));
        all.getChildren().add(lines);
        return all;
    }

    private Node plot(CellReadings near) {
        switch (against) {
            case TIME:
                return scatter(near, r -> r.timeS(), "evidence.time", s -> Figures.clock(s, 1));
            case THROTTLE:
                return scatter(near, r -> r.throttlePerS(), "evidence.throttlespeed", x -> Figures.plain(x, 0));
            default:
                ReadingStrip strip = new ReadingStrip(WIDTH);
                strip.show(
                        model.session().themeProperty().get(),
                        near.shortfallsPercent(),
                        near.fittedPercent(),
                        near.uncertaintyPercent());
                return strip;
        }
    }

    private Node scatter(
            CellReadings near, ToDoubleFunction<CellReadings.Reading> x, String title, DoubleFunction<String> ends) {
        List<ReadingScatter.Dot> dots = near.readings().stream()
                .filter(r -> Double.isFinite(x.applyAsDouble(r)))
                .map(r -> new ReadingScatter.Dot(x.applyAsDouble(r), r.shortfallPercent(), r.ride()))
                .toList();
        ReadingScatter scatter = new ReadingScatter(WIDTH);
        scatter.show(
                model.session().themeProperty().get(),
                dots,
                near.fittedPercent(),
                near.uncertaintyPercent(),
                Words.of(title),
                ends);
        return scatter;
    }
}
