package fuelwright.ui.plot;

import fuelwright.ui.theme.Exhibit;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.TextSize;
import fuelwright.ui.theme.Theme;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import javafx.beans.property.SimpleObjectProperty;
import javafx.css.PseudoClass;

/** Maps and plots in every state, on made-up figures. */
public final class PlotExhibits {

    private static final double WIDE = 520;
    private static final double TALL = 300;
    private static final int ROWS = 4000;
    private static final double HZ = 20;

    private final Theme theme;
    private final Palette palette;
    private final Random random = new Random(7);
    private final List<Exhibit> all = new ArrayList<>();

    private PlotExhibits(Theme theme) {
        this.theme = theme;
        this.palette = theme.palette();
    }

    /** Every control of this package. */
    public static List<Exhibit> all(Theme theme) {
        PlotExhibits plots = new PlotExhibits(theme);
        plots.grids();
        plots.timelines();
        plots.curves();
        plots.slices();
        plots.surfaces();
        plots.small();
        return plots.all;
    }

    private void grid(String state, HeatMap map, Consumer<HeatGrid> change) {
        HeatGrid grid = new HeatGrid();
        grid.setMinSize(0, 0);
        grid.themeProperty().set(theme);
        grid.mapProperty().set(map);
        change.accept(grid);
        all.add(new Exhibit("HeatGrid", state, grid, WIDE, TALL));
    }

    private void grids() {
        HeatMap usual = map(10, 7, c -> c);
        grid("no map", null, g -> {});
        grid("figures alone", map(10, 7, c -> HeatCell.plain(c.figure(), c.fill(), c.words())), g -> {});
        grid("figures of every weight, high load lined off, hatched, Stop, held, set", usual, g -> {});
        grid("engine speed down", usual, g -> g.viewProperty().set(GridShape.View.SPEED_DOWN));
        grid("load down", usual, g -> g.viewProperty().set(GridShape.View.LOAD_DOWN));
        grid("a cell selected", usual, g -> g.selectedProperty().set(23));
        grid("a Stop cell selected, focused", usual, g -> {
            g.selectedProperty().set(55);
            g.pseudoClassStateChanged(PseudoClass.getPseudoClass("focused"), true);
        });
        grid("a block selected", usual, g -> {
            g.selectedProperty().set(23);
            g.blockProperty().set(Set.of(23, 24, 33, 34));
        });
        grid("out of date", usual, g -> g.dimmedProperty().set(true));
        grid("two by two", map(2, 2, c -> c), g -> {});
        grid("64 × 64: too small for figures", map(64, 64, c -> c), g -> {});
        HeatGrid large = new HeatGrid();
        large.themeProperty().set(theme);
        large.mapProperty().set(map(64, 64, c -> c));
        all.add(new Exhibit(
                "GridScroll",
                "64 × 64, scrolled",
                new GridScroll(large, new SimpleObjectProperty<>(TextSize.NORMAL)),
                WIDE,
                TALL));
        grid("every colour of the scale", map(21, 3, c -> c, (i, j) -> 4.0 * (i - 10)), g -> {});
    }

    private interface Figure {
        double at(int speed, int load);
    }

    private HeatMap map(int speeds, int loads, UnaryOperator<HeatCell> change) {
        return map(speeds, loads, change, (i, j) -> 14 * Math.sin(0.7 * i + j) + 3 * random.nextGaussian());
    }

    private HeatMap map(int speeds, int loads, UnaryOperator<HeatCell> change, Figure figure) {
        List<HeatCell> cells = new ArrayList<>();
        for (int c = 0; c < speeds * loads; c++) {
            double value = figure.at(c % speeds, c / speeds);
            boolean high = c / speeds >= 2 * loads / 3;
            cells.add(change.apply(new HeatCell(
                    Figures.signed(value, 1),
                    Figures.plusMinus(0.4 + c % 5, 1),
                    palette.diverging().at(Math.max(-1, Math.min(1, value / 40))),
                    HeatCell.Weight.values()[c % 3],
                    c % 7 == 3,
                    c == 5 * speeds + speeds / 2,
                    HeatCell.Mark.values()[c % 11 == 4 ? 1 : c % 13 == 6 ? 2 : c % 17 == 9 ? 3 : 0],
                    high,
                    "cell " + c)));
        }
        return new HeatMap(
                IntStream.range(0, speeds).mapToObj(i -> "" + (1000 + 500 * i)).toList(),
                IntStream.range(0, loads)
                        .mapToObj(j -> "" + 100 * (j + 1) / loads)
                        .toList(),
                "engine speed, rpm",
                "throttle, %",
                cells);
    }

    private void timelines() {
        RideClock clock = new RideClock(ROWS, row -> row / HZ, List.of(0));
        Lane speed = lane("Engine", "rpm", "lane-0", row -> 4000 + 2500 * Math.sin(row / 90.0), 9000, 0);
        Lane mixture = lane("Mixture", "λ", "lane-2", row -> 0.95 + 0.1 * Math.sin(row / 37.0), 1.4, 2);
        Lane full = Lane.fitted(
                        "Mixture",
                        "λ",
                        "lane-2",
                        ROWS,
                        row -> 0.95 + 0.1 * Math.sin(row / 37.0),
                        Optional.of(row -> 0.93),
                        0.65,
                        1.45,
                        2,
                        1)
                .limited(row -> row % 900 < 300 ? 1.0 : Double.NaN)
                .expecting(row -> 0.94 + 0.02 * Math.sin(row / 37.0));
        timeline("no ride", null, t -> {});
        Trace plain = new Trace(
                clock, List.of(speed, mixture), Shading.none(ROWS), List.of(OutKind.DATA), row -> "", List.of());
        timeline("two lanes", plain, t -> {});
        Trace marked = new Trace(
                clock,
                List.of(speed, full),
                new Shading(
                        ROWS,
                        OutKind.values().length,
                        row -> row / 400 % 2 == 0 ? -1 : row / 800 % OutKind.values().length),
                List.of(OutKind.values()),
                row -> "fuel cut",
                List.of(new Trace.Mark(40, 45, true, "Stop: lean"), new Trace.Mark(120, 121, false, "Check: spike")));
        timeline("every reason, target, limit, expected mixture, marks", marked, t -> {});
        timeline("zoomed to a moment", marked, t -> t.mark(40, 45, 8));
    }

    private static Lane lane(
            String name,
            String unit,
            String colour,
            java.util.function.IntToDoubleFunction values,
            double most,
            int decimals) {
        return Lane.fitted(name, unit, colour, ROWS, values, Optional.empty(), 0, most, decimals, 1);
    }

    private void timeline(String state, Trace trace, Consumer<Timeline> change) {
        Timeline timeline = new Timeline();
        timeline.themeProperty().set(theme);
        timeline.traceProperty().set(trace);
        change.accept(timeline);
        all.add(new Exhibit("Timeline", state, timeline, WIDE, TALL));
    }

    private void curves() {
        List<Double> xs = List.of(1000.0, 2000.0, 4000.0, 8000.0);
        Curves.Line quiet = new Curves.Line("", List.of(1.0, 3.0, 2.0, 2.0), Curves.Weight.QUIET);
        Curves.Line chosen = new Curves.Line("40 %", List.of(2.0, 4.0, 4.5, 3.0), Curves.Weight.CHOSEN);
        Curves.Line bold = new Curves.Line("44 mm", List.of(3.0, 5.0, 6.0, 4.0), Curves.Weight.BOLD);
        curve("one line", new Curves(xs, List.of(bold), "engine speed, rpm", "fuel, ms", List.of()), -1);
        curve(
                "quiet, chosen and bold",
                new Curves(xs, List.of(quiet, chosen, bold), "engine speed, rpm", "fuel, ms", List.of(0, 1, 2, 3)),
                -1);
        curve(
                "a point selected",
                new Curves(xs, List.of(quiet, bold), "engine speed, rpm", "fuel, ms", List.of(0, 1, 2, 3)),
                2);
        curve(
                "flat",
                new Curves(
                        xs,
                        List.of(new Curves.Line("", List.of(1.0, 1.0, 1.0, 1.0), Curves.Weight.BOLD)),
                        "engine speed, rpm",
                        "fuel, ms",
                        List.of()),
                -1);
    }

    private void curve(String state, Curves curves, int cell) {
        CurvesPlot plot = new CurvesPlot(c -> {});
        plot.show(curves, cell, theme, state);
        all.add(new Exhibit("CurvesPlot", state, plot, WIDE, TALL));
    }

    private void slices() {
        List<String> marks = List.of("0", "10", "25", "50", "100");
        List<Slice.Point> points = List.of(
                new Slice.Point(2, 1, 2, false),
                new Slice.Point(6, 0.6, 6, false),
                new Slice.Point(12, 0.8, 12, false),
                new Slice.Point(8, 2, 5, false),
                new Slice.Point(5, 6, 0, true));
        List<Slice.Dot> dots = random.doubles(300, 0, 3)
                .mapToObj(x -> new Slice.Dot(x, 4 * x + 2 * random.nextGaussian()))
                .toList();
        List<Integer> cells = List.of(0, 1, 2, 3, 4);
        slice("without readings", new Slice("at 4000 rpm", "throttle, %", marks, points, List.of(), cells), -1);
        slice("with readings", new Slice("at 4000 rpm", "throttle, %", marks, points, dots, cells), -1);
        slice("a cell selected", new Slice("at 4000 rpm", "throttle, %", marks, points, dots, cells), 2);
    }

    private void slice(String state, Slice slice, int cell) {
        SlicePlot plot = new SlicePlot(c -> {});
        plot.show(slice, cell, theme);
        all.add(new Exhibit("SlicePlot", state, plot, WIDE, TALL));
    }

    private void surfaces() {
        List<Double> speeds =
                IntStream.range(0, 12).mapToObj(i -> 1000.0 + 600 * i).toList();
        List<Double> loads = IntStream.range(0, 9).mapToObj(j -> 12.5 * j).toList();
        List<Double> heights = IntStream.range(0, 108)
                .mapToObj(c -> Math.sin(c % 12 / 3.0) * c / 12 / 9.0)
                .toList();
        var fills = heights.stream().map(h -> palette.diverging().at(h)).toList();
        for (boolean chosen : new boolean[] {false, true}) {
            SurfacePlot plot = new SurfacePlot(c -> {});
            Set<Integer> cells = chosen ? Set.of(54, 55, 66, 67) : Set.of();
            plot.show(
                    new Surface(
                            speeds,
                            loads,
                            heights,
                            fills,
                            cells,
                            "engine speed, rpm",
                            "throttle, %",
                            "change, %",
                            "−20",
                            "+20"),
                    chosen ? 54 : -1,
                    theme,
                    "surface");
            all.add(new Exhibit("SurfacePlot", chosen ? "cells chosen" : "as it is", plot, WIDE, TALL));
        }
    }

    private void small() {
        ScaleBar bar = new ScaleBar(260);
        bar.show(theme, t -> palette.diverging().at(2 * t - 1), List.of("−20 %", "rich", "0", "lean", "+20 %"));
        all.add(new Exhibit("ScaleBar", "two directions", bar, 0, 0));
        ScaleBar amounts = new ScaleBar(260);
        amounts.show(theme, t -> palette.sequential().at(t), List.of("0", "400", "800"));
        all.add(new Exhibit("ScaleBar", "amounts", amounts, 0, 0));
        for (int n : new int[] {0, 1, 400}) {
            List<Double> values = random.doubles(n)
                    .mapToObj(x -> 4 + 3 * random.nextGaussian())
                    .toList();
            ReadingStrip strip = new ReadingStrip(300);
            strip.show(theme, values, 4, 0.5);
            all.add(new Exhibit("ReadingStrip", n + " readings", strip, 0, 0));
            ReadingScatter scatter = new ReadingScatter(300);
            scatter.show(
                    theme,
                    IntStream.range(0, n)
                            .mapToObj(i -> new ReadingScatter.Dot(i, values.get(i), i % 3))
                            .toList(),
                    4,
                    0.5,
                    "time",
                    x -> Figures.clock(x, 1));
            all.add(new Exhibit("ReadingScatter", n + " readings", scatter, 0, 0));
        }
    }
}
