package fuelwright.ui.rides;

import fuelwright.screen.ScreenSettings;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Measures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Words;
import fuelwright.unit.Unit;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.control.Slider;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.controlsfx.control.RangeSlider;

/** A threshold of a screen on a slider: shown live while it is dragged, taken when it is let go. */
final class Threshold {

    /** With a look of its own: the library's style sheet needs colours that our base theme hasn't got. */
    private static final class TwoThumbs extends RangeSlider {
        TwoThumbs(double least, double most, double low, double high) {
            super(least, most, low, high);
        }

        @Override
        public String getUserAgentStylesheet() {
            return Threshold.class
                    .getResource("/fuelwright/ui/range-slider.css")
                    .toExternalForm();
        }
    }

    private Threshold() {}

    /** @param key its name; with {@code .unit} behind, what stands behind its figure */
    static Node of(
            ScreensModel model,
            Session session,
            String key,
            double least,
            double most,
            int decimals,
            ToDoubleFunction<ScreenSettings> get,
            BiFunction<ScreenSettings, Double, ScreenSettings> with) {
        Slider slider =
                new Slider(least, most, get.applyAsDouble(model.shownProperty().get()));
        double step = Math.pow(10, -decimals);
        slider.setBlockIncrement(Math.max(step, (most - least) / 90));
        slider.setId(key.replace('.', '-'));
        slider.setAccessibleText(Words.of(key));
        Label figure = Parts.label("", "figure");
        boolean[] following = new boolean[1];
        Runnable follow = () -> {
            double value = get.applyAsDouble(model.shownProperty().get());
            figure.setText(figure(session.measuresProperty().get(), Words.of(key + ".unit"), value, decimals));
            if (!slider.isValueChanging()) {
                following[0] = true;
                slider.setValue(value);
                following[0] = false;
            }
        };
        slider.valueProperty().addListener((p, old, now) -> {
            if (!following[0]) {
                double rounded = Math.round(now.doubleValue() / step) * step;
                model.preview(with.apply(model.shownProperty().get(), rounded));
                if (!slider.isValueChanging()) {
                    model.take();
                }
            }
        });
        slider.valueChangingProperty().addListener((p, was, is) -> {
            if (!is) {
                model.take();
            }
        });
        model.shownProperty().addListener((p, old, now) -> follow.run());
        session.measuresProperty().addListener((p, old, now) -> follow.run());
        follow.run();
        return laid(key, slider, figure);
    }

    private static String figure(Measures measures, String unit, double value, int decimals) {
        return Unit.parse(unit)
                .map(u -> measures.figure(u, value, decimals))
                .orElseGet(() -> Figures.plain(value, decimals) + " " + unit);
    }

    /** The span of mixture that the sensor is trusted in, on a slider with two thumbs. */
    static Node range(ScreensModel model, Session session, String key, double least, double most) {
        ScreenSettings now = model.shownProperty().get();
        RangeSlider slider = new TwoThumbs(least, most, now.lambdaFrom(), now.lambdaTo());
        slider.setBlockIncrement(0.01);
        slider.setId(key.replace('.', '-'));
        slider.setAccessibleText(Words.of(key));
        Label figure = Parts.label("", "figure");
        boolean[] following = new boolean[1];
        Runnable follow = () -> {
            ScreenSettings shown = model.shownProperty().get();
            Mixture notation = session.mixture();
            figure.setText(Words.of(
                    "rides.set.span",
                    notation.figure(shown.lambdaFrom()),
                    notation.figure(shown.lambdaTo()),
                    notation.afr() ? "AFR" : "λ"));
            if (!slider.isLowValueChanging() && !slider.isHighValueChanging()) {
                following[0] = true;
                slider.setHighValue(Math.max(slider.getHighValue(), shown.lambdaTo()));
                slider.setLowValue(shown.lambdaFrom());
                slider.setHighValue(shown.lambdaTo());
                following[0] = false;
            }
        };
        Function<Double, Double> rounded = value -> Math.round(value * 100) / 100.0;
        Runnable moved = () -> {
            double from = rounded.apply(slider.getLowValue());
            double to = rounded.apply(slider.getHighValue());
            if (!following[0] && from < to) {
                model.preview(model.shownProperty().get().withLambda(from, to));
                if (!slider.isLowValueChanging() && !slider.isHighValueChanging()) {
                    model.take();
                }
            }
        };
        slider.lowValueProperty().addListener((p, old, value) -> moved.run());
        slider.highValueProperty().addListener((p, old, value) -> moved.run());
        slider.lowValueChangingProperty().addListener((p, was, is) -> moved.run());
        slider.highValueChangingProperty().addListener((p, was, is) -> moved.run());
        model.shownProperty().addListener((p, old, shown) -> follow.run());
        session.afrProperty().addListener((p, old, afr) -> follow.run());
        follow.run();
        return laid(key, slider, figure);
    }

    private static Node laid(String key, Region slider, Label figure) {
        Label name = Parts.label(Words.of(key), "small");
        name.setMinWidth(Region.USE_PREF_SIZE);
        figure.setMinWidth(Region.USE_PREF_SIZE);
        HBox top = Parts.row(8, name, Parts.gap(), figure);
        slider.setMaxWidth(Double.MAX_VALUE);
        VBox box = new VBox(top, slider);
        HBox.setHgrow(box, Priority.ALWAYS);
        GridPane.setHgrow(box, Priority.ALWAYS);
        return box;
    }
}
