package fuelwright.ui.handover;

import fuelwright.handover.EntryDifference;
import fuelwright.handover.ToType;
import fuelwright.table.Table;
import fuelwright.ui.plot.GridShape;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Colours;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;

/** The grids of the stage: figures as they are typed, in the hardware's cells. */
final class TypingMap {

    private static final double CHANGED_TINT = 0.55;

    private TypingMap() {}

    /** Which way the hardware's grid lies. */
    static GridShape.View view(Table table) {
        return table.orientation() == Table.Orientation.SPEED_DOWN
                ? GridShape.View.SPEED_DOWN
                : GridShape.View.LOAD_DOWN;
    }

    /**
     * The figures to be typed; those that change are tinted.
     *
     * @param unridden cells that rest on cells that nobody rode
     */
    static HeatMap toType(ToType sheet, IntPredicate unridden, Palette palette) {
        return TableWords.map(sheet.after(), cell -> {
            String after = now(sheet, cell);
            boolean changed = sheet.changes(cell);
            boolean bounded = sheet.bounded().containsKey(cell);
            return new HeatCell(
                    after,
                    sheet.boundWord(cell),
                    bounded
                            ? palette.role("check-soft")
                            : changed
                                    ? Colours.mix(palette.card(), palette.role("accent-soft"), CHANGED_TINT)
                                    : palette.card(),
                    changed ? HeatCell.Weight.STRONG : HeatCell.Weight.NORMAL,
                    unridden.test(cell),
                    sheet.stopped().contains(cell),
                    HeatCell.Mark.NONE,
                    false,
                    Words.of(
                            "handover.cell.words",
                            TableWords.cell(sheet.after(), cell),
                            figure(sheet, sheet.before().at(cell)),
                            bounded ? after + ", " + sheet.boundWord(cell) : after));
        });
    }

    /** What was typed; where that isn't what was meant, the cell is tinted, and what was meant stands below. */
    static HeatMap checked(ToType sheet, List<EntryDifference> differences, Palette palette) {
        Map<Integer, EntryDifference> wrong = new HashMap<>();
        differences.forEach(d -> wrong.put(d.cell(), d));
        return TableWords.map(sheet.after(), cell -> {
            EntryDifference d = wrong.get(cell);
            String place = TableWords.cell(sheet.after(), cell);
            if (d == null) {
                return HeatCell.plain(
                        now(sheet, cell), palette.card(), Words.of("check.cell.right", place, now(sheet, cell)));
            }
            String typed = typed(sheet, d.typed());
            return new HeatCell(
                    typed,
                    Words.of("check.meant", now(sheet, cell)),
                    palette.role(d.isStop() ? "stop-soft" : "check-soft"),
                    HeatCell.Weight.STRONG,
                    false,
                    d.isStop(),
                    HeatCell.Mark.NONE,
                    false,
                    Words.of("check.cell.wrong", place, typed, now(sheet, cell), d.detail()));
        });
    }

    static String now(ToType sheet, int cell) {
        return figure(sheet, sheet.after().at(cell));
    }

    /** A figure as it is typed; of a change it is always to be seen whether it is more or less. */
    static String figure(ToType sheet, double value) {
        return sheet.isSigned() ? Figures.signed(value, sheet.decimals()) : Figures.plain(value, sheet.decimals());
    }

    /** A figure as it was typed. */
    static String typed(ToType sheet, double value) {
        return (sheet.isSigned() && value > 0 ? "+" : "") + Figures.shortest(value);
    }
}
