package fuelwright.ui.plot;

import java.util.List;

/**
 * A grid as it is drawn.
 *
 * @param speeds breakpoints of engine speed as text, ascending
 * @param loads breakpoints of load as text, ascending
 * @param speedTitle name and unit of that axis
 * @param loadTitle name and unit of that axis
 * @param cells in the table's order
 */
public record HeatMap(
        List<String> speeds, List<String> loads, String speedTitle, String loadTitle, List<HeatCell> cells) {

    public HeatMap {
        speeds = List.copyOf(speeds);
        loads = List.copyOf(loads);
        cells = List.copyOf(cells);
        if (cells.size() != speeds.size() * loads.size()) {
            throw new IllegalArgumentException("cells: " + cells.size() + ", needed " + speeds.size() * loads.size());
        }
    }
}
