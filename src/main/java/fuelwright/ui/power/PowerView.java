package fuelwright.ui.power;

import fuelwright.airflow.PowerCorrection;
import fuelwright.power.AirOfTheDay;
import fuelwright.power.PowerCurve;
import fuelwright.power.PowerCurve.Point;
import fuelwright.power.PullComparison;
import fuelwright.ui.power.PowerModel.Field;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.OverPage;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Unit;
import fuelwright.work.PowerPulls;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.geometry.Insets;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The page of power pulls. Lies over the work area until Escape is pressed. */
public final class PowerView extends OverPage {

    private final PowerModel model;
    private final PowerPlot plot = new PowerPlot();
    private final VBox facts = new VBox(2);
    private final VBox why = new VBox(8);
    private final ComboBox<String> standards = new ComboBox<>();
    private final Map<Field, TextField> fields = new EnumMap<>(Field.class);
    private final Map<Field, Label> names = new EnumMap<>(Field.class);
    private final Map<Field, Label> problems = new EnumMap<>(Field.class);
    private boolean filling;

    public PowerView(PowerModel model) {
        super("power-page", "power.title", "power.below");
        this.model = model;
        VBox right = new VBox(12, why, plot);
        VBox.setVgrow(plot, Priority.ALWAYS);
        HBox.setHgrow(right, Priority.ALWAYS);
        VBox left = new VBox(12, facts, form());
        left.setStyle("-fx-padding: 0 16 0 0;");
        javafx.scene.Node scrolled = Parts.scroll(left);
        if (scrolled instanceof javafx.scene.layout.Region region) {
            region.setMinWidth(300);
            region.setPrefWidth(300);
            region.setMaxWidth(300);
        }
        fill(new HBox(16, scrolled, right));
        model.shownProperty().addListener((p, old, now) -> show());
        model.session().themeProperty().addListener((p, old, now) -> show());
        model.session().whenShownOtherwise(() -> {
            fill();
            show();
        });
        model.session().jobProperty().addListener((p, old, now) -> {
            if (isVisible()) {
                model.workOut();
            }
        });
        model.session().stageProperty().addListener((p, old, now) -> leave());
    }

    /** Opens the page and works the curves out. */
    @Override
    public void open() {
        super.open();
        standards.requestFocus();
        model.workOut();
        show();
    }

    private VBox form() {
        VBox form = new VBox(6);
        List<PowerCorrection> all = List.of(
                PowerCorrection.SAE_J1349_2004,
                PowerCorrection.ISO_1585,
                PowerCorrection.DIN_70020,
                PowerCorrection.SAE_J1349_1990,
                PowerCorrection.SAE_J607);
        standards.getItems().add(Words.of("power.uncorrected"));
        all.forEach(s -> standards.getItems().add(AirOfTheDay.name(s)));
        standards.getSelectionModel().select(0);
        standards.setMaxWidth(Double.MAX_VALUE);
        standards.setAccessibleText(Words.of("power.standard"));
        standards.getSelectionModel().selectedIndexProperty().addListener((p, old, now) -> {
            model.choose(now.intValue() <= 0 ? Optional.empty() : Optional.of(all.get(now.intValue() - 1)));
            show();
        });
        form.getChildren().addAll(Parts.label(Words.of("power.standard"), "section"), standards);
        for (Field field : List.of(Field.TEMPERATURE, Field.PRESSURE, Field.HUMIDITY)) {
            form.getChildren().add(field(field));
        }
        Label road = Parts.text(Words.of("power.road"), "section");
        VBox.setMargin(road, new Insets(12, 0, 0, 0));
        form.getChildren().add(road);
        for (Field field : List.of(Field.MASS, Field.DRAG, Field.ROLLING)) {
            form.getChildren().add(field(field));
        }
        fill();
        return form;
    }

    private VBox field(Field field) {
        TextField text = new TextField();
        text.setPrefColumnCount(6);
        text.setMaxWidth(USE_PREF_SIZE);
        text.setMinWidth(USE_PREF_SIZE);
        text.setPromptText(Words.of("power.field.unknown"));
        fields.put(field, text);
        text.textProperty().addListener((p, old, now) -> {
            if (!filling) {
                model.type(field, now);
                show();
            }
        });
        names.put(field, Parts.text("", "field-name"));
        Label problem = Parts.text("", "field-message");
        problems.put(field, problem);
        return new VBox(2, Parts.row(8, names.get(field), Parts.gap(), text), problem);
    }

    /** What the fields are called and hold, in the units that are shown. */
    private void fill() {
        filling = true;
        fields.forEach((field, text) -> {
            names.get(field).setText(model.name(field));
            text.setAccessibleText(model.name(field));
            text.setText(model.text(field));
        });
        filling = false;
    }

    private void show() {
        fields.forEach((field, text) -> text.setDisable(!model.counts(field)));
        for (Map.Entry<Field, Label> each : problems.entrySet()) {
            Optional<String> problem = model.problem(each.getKey());
            each.getValue().setText(problem.orElse(""));
            Parts.show(each.getValue(), problem.isPresent());
        }
        PowerModel.Shown shown = model.shownProperty().get();
        Optional<PowerPulls.Outcome> outcome = shown.outcome();
        List<PowerCurve> curves = outcome.map(
                        o -> o.curves().stream().map(c -> c.get(0)).toList())
                .orElse(List.of());
        Optional<PullComparison> comparison =
                outcome.flatMap(o -> o.comparisons().stream().findFirst());
        why.getChildren().clear();
        if (curves.isEmpty()) {
            PowerModel.WhyNot none = model.whyNot();
            why.getChildren()
                    .add(Parts.callout("note", none.title(), none.sentences().toArray(String[]::new)));
        }
        Parts.show(plot, !curves.isEmpty());
        plot.show(curves, comparison, model.session().themeProperty().get(), measures());
        facts.getChildren().clear();
        curves.forEach(this::facts);
        comparison.ifPresent(this::facts);
        if (curves.stream().anyMatch(this::isNoiseFree)) {
            facts.getChildren().add(Parts.text(Words.of("power.noise.free"), "muted", "small"));
        }
        plot.setAccessibleText(
                String.join(". ", curves.stream().map(this::words).toList()));
    }

    private void facts(PowerCurve curve) {
        Point power = curve.peakPower();
        Point torque = curve.peakTorque();
        facts.getChildren()
                .addAll(
                        Parts.label(curve.pull().ride().name(), "section"),
                        Parts.fact(Words.of("power.most", Figures.plain(power.rpm(), 0)), power(power)),
                        Parts.fact(Words.of("power.mosttorque", Figures.plain(torque.rpm(), 0)), torque(torque)));
        if (curve.risesToTheEnd()) {
            facts.getChildren().add(Parts.text(Words.of("power.rises"), "muted", "small"));
        }
        curve.remarks()
                .forEach(r -> facts.getChildren()
                        .add(Parts.text(Parts.sentence(r.in(model.session().shownIn())), "muted", "small")));
    }

    private void facts(PullComparison c) {
        facts.getChildren().add(Parts.label(Words.of("power.difference"), "section"));
        c.pays().forEach(b -> facts.getChildren().add(band("power.pays", b)));
        c.costs().forEach(b -> facts.getChildren().add(band("power.costs", b)));
        if (c.pays().isEmpty() && c.costs().isEmpty()) {
            facts.getChildren().add(Parts.text(Words.of("power.same"), "muted", "small"));
        }
    }

    private static HBox band(String key, PullComparison.Band band) {
        return Parts.fact(
                Words.of(key, Figures.plain(band.fromRpm(), 0), Figures.plain(band.toRpm(), 0)),
                Figures.signed(band.meanPercent(), 1) + " %");
    }

    private Measures measures() {
        return model.session().measuresProperty().get();
    }

    private String power(Point p) {
        return figure(Unit.KILOWATT, p.powerKw(), p.errorKw());
    }

    private String torque(Point p) {
        return figure(Unit.NEWTON_METRE, p.torqueNm(), p.torqueErrorNm());
    }

    private String figure(Unit canonical, double value, double error) {
        return (measures().figure(canonical, value, 1) + " "
                        + PowerModel.plusMinus(measures().of(canonical).fromCanonical(error)))
                .strip();
    }

    /** Whether a figure of the curve goes without its ±. */
    private boolean isNoiseFree(PowerCurve curve) {
        double power =
                measures().of(Unit.KILOWATT).fromCanonical(curve.peakPower().errorKw());
        double torque = measures()
                .of(Unit.NEWTON_METRE)
                .fromCanonical(curve.peakTorque().torqueErrorNm());
        return PowerModel.plusMinus(power).isEmpty()
                || PowerModel.plusMinus(torque).isEmpty();
    }

    private String words(PowerCurve curve) {
        return curve.pull().ride().name() + ": " + power(curve.peakPower()) + ", " + torque(curve.peakTorque());
    }
}
