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
        stage.setScene(new Scene(new GridScroll(grid, textSize)));
        // A window that other tests left larger would stay so.
        stage.setWidth(740);
        stage.setHeight(500);
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
    void theMarkOfAStopLeavesTheFiguresFree() {
        for (double width = 30; width < 70; width += 4) {
            for (double height = 19; height < 60; height += 5) {
                double corner = GridPainter.cornerSize(width, height);
                boolean both = GridPainter.hasRoomBelow(CELL, height);
                double size = GridPainter.figureSize(CELL, width, height);
                // Digits are three quarters of their font's size high.
                double figureEnds = height / 2 - (both ? Math.min(0.36 * height * 0.62, height / 5) : 0) + 0.375 * size;
                free(corner, width, height, figureEnds, Fonts.width(CELL.figure(), Fonts.fitted(size, true)));
                if (both) {
                    double small = GridPainter.belowSize(width, height);
                    free(
                            corner,
                            width,
                            height,
                            height - 3 - 0.125 * small,
                            Fonts.width(CELL.below(), Fonts.fitted(small, false)));
                }
            }
        }
    }

    /** How far the slope of the mark reaches in where a text ends. */
    private static void free(double corner, double width, double height, double ends, double text) {
        double reach = corner - (height - ends);
        assertTrue(reach <= (width - text) / 2 + 0.5, width + " × " + height + ": " + reach + ", text " + text);
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
