package fuelwright.ui.rides;

import fuelwright.table.Table;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatGrid;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.plot.ScaleBar;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Parts;
import fuelwright.ui.theme.Theme;
import fuelwright.ui.theme.Words;
import java.util.List;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Label;
import javafx.scene.layout.Priority;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;

/** Where a ride was in the table: seconds in each cell, stronger in colour on a logarithmic scale, with the path drawn over it. */
final class DensityPane {

    private static final double PATH_OPACITY = 0.18;

    private final RidesModel model;
    private final HeatGrid grid = new HeatGrid();
    private final Canvas path = new Canvas();
    private final Label words = Parts.text("", "muted", "small");
    private final StackPane stack = new StackPane(grid, path);
    private final ScaleBar bar = new ScaleBar(240);
    private final VBox box = new VBox(8, stack, bar, words);

    DensityPane(RidesModel model) {
        this.model = model;
        grid.setId("density");
        grid.themeProperty().bind(model.session().themeProperty());
        path.setMouseTransparent(true);
        path.setManaged(false);
        grid.layoutBoundsProperty().addListener((p, old, now) -> drawPath());
        model.pictureProperty().addListener((p, old, now) -> fill());
        model.session().themeProperty().addListener((p, old, now) -> fill());
        VBox.setVgrow(stack, Priority.ALWAYS);
        box.visibleProperty().addListener((p, was, is) -> drawPath());
        fill();
    }

    Node node() {
        return box;
    }

    private RideDensity density() {
        RidePicture picture = model.pictureProperty().get();
        return picture == null ? null : picture.density().orElse(null);
    }

    private void fill() {
        RideDensity density = density();
        Parts.show(stack, density != null);
        Parts.show(bar, density != null);
        if (density == null) {
            grid.mapProperty().set(null);
            words.setText(Words.of("rides.density.none"));
            return;
        }
        Theme theme = model.session().themeProperty().get();
        grid.mapProperty().set(map(density, theme.palette()));
        double most = density.mostSeconds();
        bar.show(
                theme,
                t -> theme.palette().sequential().at(t),
                List.of("0 s", Figures.span(seconds(0.5, most)), Figures.span(most)));
        words.setText(Words.of(
                        "rides.density",
                        density.riddenCells(),
                        density.table().cells(),
                        Figures.span(density.mostSeconds()))
                + (density.outsideS() > 0.05
                        ? " " + Words.of("rides.density.outside", Figures.span(density.outsideS()))
                        : ""));
        drawPath();
    }

    private static HeatMap map(RideDensity density, Palette palette) {
        Table table = density.table();
        return TableWords.map(table, cell -> {
            double s = density.secondsIn(cell);
            String place = Words.of(
                    "rides.density.place",
                    Figures.plain(table.speedAt(cell), 0),
                    Figures.shortest(table.loadAt(cell)),
                    table.load().kind().unit().symbol());
            return s > 0
                    ? HeatCell.plain(
                            Figures.plain(s, s < 9.95 ? 1 : 0),
                            palette.sequential().at(share(s, density.mostSeconds())),
                            place + ": " + Figures.span(s))
                    : HeatCell.plain("", palette.surface(), place + ": " + Words.of("rides.density.never"));
        });
    }

    /** How far up the colours a time stands: they go by its logarithm. */
    private static double share(double seconds, double most) {
        return Math.log1p(10 * seconds) / Math.log1p(10 * most);
    }

    /** The time that stands so far up the colours, s. */
    private static double seconds(double share, double most) {
        return Math.expm1(share * Math.log1p(10 * most)) / 10;
    }

    private void drawPath() {
        RideDensity density = density();
        path.setWidth(grid.getWidth());
        path.setHeight(grid.getHeight());
        GraphicsContext g = path.getGraphicsContext2D();
        g.clearRect(0, 0, path.getWidth(), path.getHeight());
        if (density == null || !box.isVisible() || grid.getWidth() < 100) {
            return;
        }
        Table table = density.table();
        Point2D origin = grid.middleOf(table.cell(0, 0));
        Point2D right = grid.middleOf(table.cell(0, 1));
        Point2D up = grid.middleOf(table.cell(1, 0));
        Color ink = model.session().themeProperty().get().palette().ink();
        g.setStroke(ink.deriveColor(0, 1, 1, PATH_OPACITY));
        g.setLineWidth(1);
        g.beginPath();
        for (int i = 0; i < density.points(); i++) {
            double x = origin.getX() + density.x(i) * (right.getX() - origin.getX());
            double y = origin.getY() + density.y(i) * (up.getY() - origin.getY());
            if (i == 0) {
                g.moveTo(x, y);
            } else {
                g.lineTo(x, y);
            }
        }
        g.stroke();
    }
}
