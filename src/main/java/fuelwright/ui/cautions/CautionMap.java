package fuelwright.ui.cautions;

import fuelwright.safety.Caution;
import fuelwright.table.Table;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.session.TableWords;
import fuelwright.ui.theme.Palette;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;
import java.util.Locale;
import javafx.scene.paint.Color;

/** Where a caution is: the table with the caution's cells standing out. Pure. */
final class CautionMap {

    private CautionMap() {}

    static HeatMap of(Analysis analysis, Caution caution, Palette palette) {
        Table table = analysis.proposal().before();
        Color there = palette.role(caution.level().name().toLowerCase(Locale.ROOT) + "-soft");
        Color edge = palette.role(caution.level().name().toLowerCase(Locale.ROOT));
        Color strong = fuelwright.ui.theme.Colours.mix(there, edge, 0.55);
        return TableWords.map(table, cell -> {
            boolean concerned = caution.cells().contains(cell);
            return new HeatCell(
                    "",
                    "",
                    concerned ? strong : palette.role("surface"),
                    HeatCell.Weight.NORMAL,
                    false,
                    concerned && caution.isStop(),
                    HeatCell.Mark.NONE,
                    analysis.proposal().cell(cell).highLoad(),
                    Words.of(concerned ? "cautions.cell.here" : "cautions.cell.other", TableWords.cell(table, cell)));
        });
    }
}
