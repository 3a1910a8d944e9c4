package fuelwright.ui.handover;

import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.HeatMap;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The table as it lies in the hardware, for one step of the handover: never so low that its figures can't be read. */
final class TypingGrid {

    private TypingGrid() {}

    static HeatGrid of(HandoverModel model, ReadOnlyObjectProperty<HeatMap> map, String id) {
        HeatGrid grid = new HeatGrid();
        grid.setId(id);
        grid.mapProperty().bind(map);
        grid.viewProperty().bind(model.viewProperty());
        grid.themeProperty().bind(model.session().themeProperty());
        grid.selectedProperty().bindBidirectional(model.cellProperty());
        grid.dimmedProperty().bind(model.session().staleProperty());
        Runnable size = () -> grid.setMinHeight(grid.readableSize().getHeight());
        grid.mapProperty().addListener((p, old, now) -> size.run());
        grid.viewProperty().addListener((p, old, now) -> size.run());
        size.run();
        VBox.setVgrow(grid, Priority.ALWAYS);
        return grid;
    }
}
