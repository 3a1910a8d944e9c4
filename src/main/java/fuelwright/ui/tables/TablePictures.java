package fuelwright.ui.tables;

import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.ui.plot.Curves;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.plot.Surface;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Figures;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;

/** A table as curves and as a landscape. Pure. */
final class TablePictures {

    private TablePictures() {}

    /**
     * Every row (or column) of the table as a curve; those of the selection named, the selected cell's bold.
     *
     * @param alongLoad whether the curves go over load instead of engine speed
     * @param cell the selected cell; −1: the middle line is bold
     * @param block the cells selected together
     * @param shown from the table's figure to what is shown
     * @param title name and unit of the figures
     */
    static Curves curves(
            Table table, boolean alongLoad, int cell, Set<Integer> block, DoubleUnaryOperator shown, String title) {
        Axis along = alongLoad ? table.load() : table.speed();
        Axis across = alongLoad ? table.speed() : table.load();
        int bold = cell < 0 ? across.size() / 2 : line(table, alongLoad, cell);
        Set<Integer> chosen = new TreeSet<>();
        block.forEach(c -> chosen.add(line(table, alongLoad, c)));
        List<Curves.Line> lines = new ArrayList<>();
        for (int line = 0; line < across.size(); line++) {
            List<Double> ys = new ArrayList<>();
            for (int at = 0; at < along.size(); at++) {
                ys.add(shown.applyAsDouble(table.at(cell(table, alongLoad, line, at))));
            }
            Curves.Weight weight = line == bold
                    ? Curves.Weight.BOLD
                    : chosen.contains(line) ? Curves.Weight.CHOSEN : Curves.Weight.QUIET;
            lines.add(new Curves.Line(
                    Figures.shortest(across.at(line)) + " "
                            + across.kind().unit().symbol(),
                    ys,
                    weight));
        }
        List<Integer> cells = new ArrayList<>();
        List<Double> xs = new ArrayList<>();
        for (int at = 0; at < along.size(); at++) {
            xs.add(along.at(at));
            cells.add(cell(table, alongLoad, bold, at));
        }
        return new Curves(xs, lines, TableWords.axisTitle(along), title, cells);
    }

    private static int line(Table table, boolean alongLoad, int cell) {
        return alongLoad ? table.speedIndex(cell) : table.loadIndex(cell);
    }

    private static int cell(Table table, boolean alongLoad, int line, int at) {
        return alongLoad ? table.cell(at, line) : table.cell(line, at);
    }

    /** The table as a landscape in the colours of its map. */
    static Surface surface(
            Table table, HeatMap map, Set<Integer> chosen, DoubleUnaryOperator shown, int decimals, String title) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double value : table.toArray()) {
            low = Math.min(low, shown.applyAsDouble(value));
            high = Math.max(high, shown.applyAsDouble(value));
        }
        List<Double> heights = new ArrayList<>();
        for (double value : table.toArray()) {
            heights.add(high > low ? 2 * (shown.applyAsDouble(value) - low) / (high - low) - 1 : 0);
        }
        return new Surface(
                boxed(table.speed()),
                boxed(table.load()),
                heights,
                map.cells().stream().map(c -> c.fill()).toList(),
                chosen,
                TableWords.axisTitle(table.speed()),
                TableWords.axisTitle(table.load()),
                title,
                Figures.plain(low, decimals),
                Figures.plain(high, decimals));
    }

    private static List<Double> boxed(Axis axis) {
        List<Double> all = new ArrayList<>();
        for (int i = 0; i < axis.size(); i++) {
            all.add(axis.at(i));
        }
        return all;
    }
}
