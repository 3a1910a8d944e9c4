package fuelwright.ui.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fuelwright.ui.theme.Fonts;
import fuelwright.ui.theme.TextSize;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.geometry.Point2D;
import javafx.geometry.Rectangle2D;
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
    void frameAndMarkOfAStopLeaveTheFiguresFree() {
        for (String figure : List.of("+12.5", "93.28", "+1046.5", "10")) {
            for (String below : List.of("±1.4", "±13.8", "not 93.28")) {
                HeatCell stop = new HeatCell(
                        figure, below, Color.WHITE, HeatCell.Weight.STRONG, false, true, HeatCell.Mark.NONE, false, "");
                for (double width = 36; width < 100; width += 8) {
                    for (double height = 21; height < 60; height += 3) {
                        free(
                                GridPainter.figure(stop, width, height),
                                GridPainter.figureY(stop, width, height),
                                width,
                                height);
                        if (GridPainter.hasRoomBelow(stop, height)) {
                            free(
                                    GridPainter.below(stop, width, height),
                                    GridPainter.belowY(stop, width, height),
                                    width,
                                    height);
                        }
                    }
                }
            }
        }
    }

    /** Digits are three quarters of their font's size high. */
    private static void free(CellText text, double middleY, double width, double height) {
        double reach = GridPainter.cornerSize(width, height) - (height - middleY - 0.37 * text.size());
        String where = width + " × " + height + ": " + text;
        assertTrue(text.middle() - text.width() / 2 >= CellText.EDGE - 0.01, where);
        assertTrue(text.middle() + text.width() / 2 <= width - Math.max(CellText.EDGE, reach) + 0.01, where);
    }

    @Test
    void figuresGrowWithTheirCells() {
        assertEquals(0.36 * 57, GridPainter.figureSize(CELL, 88, 57), 0.1);
        assertEquals(0.7 * 0.36 * 57, GridPainter.belowSize(CELL, 88, 57), 0.1);
        assertEquals(22, GridPainter.figureSize(CELL, 200, 60), 0.5);
    }

    @Test
    void stopsOutOfSightAreTold() {
        List<HeatCell> cells = new ArrayList<>(Collections.nCopies(15 * 13, CELL));
        for (int stop : new int[] {14, 29, 44}) {
            cells.set(
                    stop,
                    new HeatCell(
                            "1", "", Color.WHITE, HeatCell.Weight.STRONG, false, true, HeatCell.Mark.NONE, false, ""));
        }
        HeatMap map = new HeatMap(Collections.nCopies(15, "1000"), Collections.nCopies(13, "10"), "rpm", "%", cells);
        GridShape shape = new GridShape(15, 13, GridShape.View.CHART);
        Function<Integer, Point2D> middle = c -> new Point2D(40 * shape.column(c) + 20, 30 * shape.row(c) + 15);
        assertEquals("", StopsBeyond.words(map, middle, new Rectangle2D(0, 0, 600, 390)));
        assertEquals("3 Stops further right →", StopsBeyond.words(map, middle, new Rectangle2D(0, 0, 560, 390)));
        assertEquals("↓ 1 Stop further down", StopsBeyond.words(map, middle, new Rectangle2D(0, 0, 600, 360)));
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
