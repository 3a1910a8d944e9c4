package fuelwright.ui.tables;

import fuelwright.handover.CellLook;
import fuelwright.table.Table;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.Mixture;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import fuelwright.work.FirstRide;
import java.util.Arrays;
import javafx.scene.paint.Color;

/** A table as a grid to be drawn, tinted from least to most. Pure. */
final class TableMap {

    /** The tint is quieter than the maps': here the figures are the work. */
    private static final double TINT = 0.6;

    private TableMap() {}

    static HeatMap of(Table table, Mixture notation, Palette palette) {
        double low = Arrays.stream(table.toArray()).min().orElse(0);
        double high = Arrays.stream(table.toArray()).max().orElse(1);
        // Once for the table: it looks at every cell.
        int decimals = TableWords.decimals(table);
        return TableWords.map(table, cell -> {
            double share = high > low ? (table.at(cell) - low) / (high - low) : 0;
            String figure = figure(table, table.at(cell), notation, decimals);
            return HeatCell.plain(
                    figure, tint(palette, share), Words.of("tables.cell.words", TableWords.cell(table, cell), figure));
        });
    }

    /** The tint of a figure, 0 for the table's least to 1 for its greatest. */
    static Color tint(Palette palette, double share) {
        return Colours.mix(palette.surface(), palette.sequential().at(0.8 * share), TINT);
    }

    /** That of a first-ride change, −1 to 1 of the range. */
    static Color firstRideTint(Palette palette, double share) {
        return Colours.mix(palette.surface(), palette.diverging().at(share), 0.65);
    }

    /** The change that the bore forecast asks for, with its uncertainty: nobody has ridden any of it, so all of it is hatched. */
    static HeatMap firstRide(FirstRide.Outcome outcome, Palette palette) {
        Table change = outcome.change();
        int range = firstRideRange(outcome);
        return TableWords.map(change, cell -> {
            // A cell left alone because nothing is known must not look like one that needs no change.
            String figure = Math.abs(change.at(cell)) < CellLook.NO_CHANGE_PERCENT
                    ? CellLook.UNKNOWN
                    : Figures.signed(change.at(cell), 1);
            double uncertainty = outcome.uncertainty().at(cell);
            return new HeatCell(
                    figure,
                    Figures.plusMinus(uncertainty, 1),
                    firstRideTint(palette, change.at(cell) / range),
                    HeatCell.Weight.NORMAL,
                    true,
                    false,
                    HeatCell.Mark.NONE,
                    false,
                    Words.of(
                            "tables.first.cell", TableWords.cell(change, cell), figure, Figures.plain(uncertainty, 1)));
        });
    }

    /** ±% of the colours: the smallest of 10, 20 and 40 that holds everything. */
    static int firstRideRange(FirstRide.Outcome outcome) {
        double most = outcome.mostAddedPercent();
        return most <= 10 ? 10 : most <= 20 ? 20 : 40;
    }

    static String figure(Table table, double value, Mixture notation) {
        return figure(table, value, notation, table.quantity().isMixture() ? 0 : TableWords.decimals(table));
    }

    private static String figure(Table table, double value, Mixture notation, int decimals) {
        if (table.quantity().isMixture()) {
            return notation.figure(notation.lambdaOf(table.quantity(), value));
        }
        return Figures.plain(value, decimals);
    }
}
