package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.TextSize;
import java.util.Collections;
import java.util.List;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.scene.Scene;
import javafx.scene.paint.Color;
import javafx.stage.Stage;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.testfx.framework.junit5.ApplicationExtension;
import org.testfx.framework.junit5.Start;
import org.testfx.util.WaitForAsyncUtils;

/** A map in a place that is too small for its figures. */
@ExtendWith(ApplicationExtension.class)
class GridScrollTest {

    private static final HeatCell CELL = new HeatCell(
            "+12.5", "±1.4", Color.WHITE, HeatCell.Weight.STRONG, false, false, HeatCell.Mark.NONE, false, "a cell");

    private final ObjectProperty<TextSize> textSize = new SimpleObjectProperty<>(TextSize.NORMAL);
    private HeatGrid grid;

    @Start
    void start(Stage stage) {
        grid = new HeatGrid();
        List<String> speeds = Collections.nCopies(15, "1000");
        List<String> loads = Collections.nCopies(13, "10");
        grid.mapProperty().set(new HeatMap(speeds, loads, "rpm", "%", Collections.nCopies(15 * 13, CELL)));
        stage.setScene(new Scene(new GridScroll(grid, textSize), 740, 500));
        stage.show();
    }

    @AfterEach
    void normal() {
        Fonts.use(TextSize.NORMAL);
    }

    private double figure() {
        WaitForAsyncUtils.waitForFxEvents();
        return GridPainter.figureSize(
                CELL, grid.boundsOf(0).getWidth(), grid.boundsOf(0).getHeight());
    }

    private static void onWindow(Runnable action) {
        WaitForAsyncUtils.waitForAsyncFx(20_000, action);
        WaitForAsyncUtils.waitForFxEvents();
    }

    @Test
    void largerTextNeverMakesAFigureSmallerNorDropsTheOneBelow() {
        double normal = figure();
        for (TextSize size : List.of(TextSize.LARGE, TextSize.LARGEST)) {
            onWindow(() -> {
                Fonts.use(size);
                textSize.set(size);
                // As the window does it: words around the map grow, and leave it less.
                grid.getScene().getWindow().setWidth(640 - 100 * size.ordinal());
                grid.getScene().getWindow().setHeight(420 - 60 * size.ordinal());
            });
            assertTrue(figure() >= normal, size + ": " + figure() + " < " + normal);
            assertTrue(GridPainter.hasRoomBelow(CELL, grid.boundsOf(0).getHeight()));
        }
    }

    @Test
    void theMarkOfAStopLeavesTheFigureFree() {
        for (double width = 30; width < 70; width += 4) {
            for (double height = 19; height < 60; height += 5) {
                double size = GridPainter.figureSize(CELL, width, height);
                double text = Fonts.width(CELL.figure(), Fonts.fitted(size, true));
                double free = (width - text) / 2;
                // The triangle's slope reaches the figure's last digit only below this height.
                double reach = GridPainter.cornerSize(width, height) - Math.max(0, free - 1);
                // Digits are three quarters of their font's size high.
                double middle = height / 2 - (GridPainter.hasRoomBelow(CELL, height) ? 0.36 * height * 0.62 : 0);
                double above = middle - 0.375 * size;
                assertTrue(reach <= above, width + " × " + height + ": " + reach + " > " + above);
            }
        }
    }

    @Test
    void theSelectedCellIsBroughtIntoSight() {
        onWindow(() -> {
            Fonts.use(TextSize.LARGEST);
            textSize.set(TextSize.LARGEST);
        });
        assertTrue(grid.seenProperty().get().getWidth() < grid.getWidth());
        for (int cell : new int[] {14, 0, 15 * 13 - 1, 15 * 12}) {
            onWindow(() -> grid.selectedProperty().set(cell));
            assertTrue(grid.seenProperty().get().contains(grid.boundsOf(cell)), "cell " + cell);
        }
        assertEquals(0, grid.seenProperty().get().getMinX());
    }
}
