package fuelwright.ui.records;

import fuelwright.power.Breathing;
import fuelwright.ui.power.GainMap;
import fuelwright.ui.power.GainPane;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Sentence;
import fuelwright.work.JobFacts;
import fuelwright.work.JobRecord;
import fuelwright.work.JobsCompared;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** One or two jobs: what they are, and a map of what their parts gave. */
final class SideBySide extends VBox {

    private final RecordsModel model;
    private final GridPane facts = new GridPane();
    private final ScrollPane scroll = new ScrollPane(facts);
    private final GainPane pane;
    private final Label without = Parts.text("", "muted");
    private final ToggleButton[] toggles = {new ToggleButton(), new ToggleButton(), new ToggleButton()};
    private final HBox choice = Parts.choice(new ToggleGroup(), toggles);
    private final Label hint = Parts.text("", "muted");

    SideBySide(RecordsModel model) {
        super(12);
        this.model = model;
        pane = new GainPane(model.session().themeProperty());
        pane.setMinHeight(280);
        VBox.setVgrow(pane, Priority.ALWAYS);
        facts.setHgap(16);
        facts.setVgap(4);
        scroll.setFitToWidth(true);
        scroll.getStyleClass().addAll("plain-scroll", "edge-to-edge");
        scroll.setMinHeight(150);
        scroll.setPrefHeight(250);
        toggles[0].setSelected(true);
        for (ToggleButton toggle : toggles) {
            toggle.setOnAction(e -> map());
        }
        choice.setMaxWidth(USE_PREF_SIZE);
        getChildren().addAll(hint, scroll, choice, pane, without);
        model.chosenProperty().addListener((p, old, now) -> show());
        model.session().whenShownOtherwise(this::show);
    }

    void show() {
        List<JobRecord> chosen = model.chosenProperty().get();
        hint.setText(Words.of(
                switch (chosen.size()) {
                    case 0 -> "records.none";
                    case 1 -> "records.one";
                    default -> "records.two";
                }));
        facts.getChildren().clear();
        facts.getColumnConstraints().setAll(column(22), column(39), column(39));
        head(chosen);
        if (chosen.size() == 1) {
            JobFacts.of(chosen.get(0)).forEach(f -> row(f.what(), read(f.figure()), "", false));
            chosen.get(0).trouble().ifPresent(i -> row(Words.of("records.trouble"), i.sentence(), "", false));
        }
        model.compared()
                .ifPresent(c -> c.rows().forEach(r -> row(r.what(), read(r.first()), read(r.second()), !r.same())));
        Parts.show(scroll, !chosen.isEmpty());
        map();
    }

    private String read(Sentence figure) {
        return figure.in(model.session().shownIn());
    }

    private static ColumnConstraints column(double percent) {
        ColumnConstraints column = new ColumnConstraints();
        column.setPercentWidth(percent);
        return column;
    }

    private void head(List<JobRecord> chosen) {
        for (int i = 0; i < chosen.size(); i++) {
            JobRecord job = chosen.get(i);
            facts.add(new VBox(Parts.text(job.name(), "section"), Parts.text(job.place(), "muted", "small")), i + 1, 0);
        }
    }

    /** What differs stands out. */
    private void row(String what, String first, String second, boolean differs) {
        int row = facts.getRowCount();
        facts.addRow(row, Parts.text(what, "muted"), figure(first, differs), figure(second, differs));
    }

    private static Label figure(String text, boolean strong) {
        return strong ? Parts.text(text, "strong") : Parts.text(text);
    }

    private void map() {
        List<JobRecord> chosen = model.chosenProperty().get();
        Optional<JobsCompared> compared = model.compared();
        boolean two = compared.isPresent();
        Parts.show(choice, two);
        if (two) {
            toggles[0].setText(Words.of("records.map.first"));
            toggles[1].setText(Words.of("records.map.second"));
            toggles[2].setText(Words.of("records.map.difference"));
        }
        Palette palette = model.session().themeProperty().get().palette();
        int which = two ? List.of(toggles).indexOf(selected()) : 0;
        Optional<GainMap> map = which == 2
                ? compared.flatMap(JobsCompared::difference).map(d -> GainMap.of(d, palette))
                : chosen.stream().skip(which).findFirst().flatMap(r -> map(r, palette));
        Parts.show(pane, map.isPresent());
        Parts.show(without, map.isEmpty() && !chosen.isEmpty());
        map.ifPresent(pane::show);
        without.setText(
                which == 2
                        ? Words.of("records.nodifference")
                        : chosen.stream()
                                .skip(which)
                                .findFirst()
                                .map(r -> Words.of("records.nogain", r.whyNoGain()))
                                .orElse(""));
    }

    private ToggleButton selected() {
        for (ToggleButton toggle : toggles) {
            if (toggle.isSelected()) {
                return toggle;
            }
        }
        return toggles[0];
    }

    private Optional<GainMap> map(JobRecord record, Palette palette) {
        Optional<Breathing> gain = record.gain().value();
        return gain.map(g -> GainMap.of(
                g,
                GainMap.Shown.GAIN,
                record.stored().orElseThrow().job().machine().displacementCc(),
                Set.of(),
                palette,
                model.session().shownIn()));
    }
}
