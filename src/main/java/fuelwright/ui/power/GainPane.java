package fuelwright.ui.power;

import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.ScaleBar;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.scene.control.Label;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** A map of what a part gave, its scale, and the chosen cell in words. */
public final class GainPane extends VBox {

    private final HeatGrid grid = new HeatGrid();
    private final ScaleBar bar = new ScaleBar(360);
    private final Label words = Parts.text("", "muted");
    private final ReadOnlyObjectProperty<Theme> theme;

    public GainPane(ReadOnlyObjectProperty<Theme> theme) {
        super(8);
        this.theme = theme;
        grid.themeProperty().bind(theme);
        grid.setMinHeight(300);
        VBox.setVgrow(grid, Priority.ALWAYS);
        grid.selectedProperty().addListener((p, old, now) -> say());
        words.setMinHeight(USE_PREF_SIZE);
        getChildren().addAll(grid, Parts.row(16, bar, words));
    }

    /** Shows a map. */
    public void show(GainMap shown) {
        if (grid.selectedProperty().get() >= shown.map().cells().size()) {
            grid.selectedProperty().set(-1);
        }
        grid.mapProperty().set(shown.map());
        Theme now = theme.get();
        if (shown.range() > 0) {
            bar.show(
                    now,
                    t -> now.palette().diverging().at(2 * t - 1),
                    List.of(
                            "−" + shown.range() + " %",
                            Words.of("gain.less"),
                            "0",
                            Words.of("gain.more"),
                            "+" + shown.range() + " %"));
        } else {
            bar.show(
                    now,
                    t -> now.palette().sequential().at(t),
                    List.of("0", Figures.plain(shown.most() / 2, 0), Figures.plain(shown.most(), 0)));
        }
        say();
    }

    private void say() {
        int cell = grid.selectedProperty().get();
        words.setText(
                cell < 0 || grid.mapProperty().get() == null
                        ? Words.of("gain.choose")
                        : grid.mapProperty().get().cells().get(cell).words());
    }
}
