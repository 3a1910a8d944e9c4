package fuelwright.ui.tables;

import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import fuelwright.ui.session.Session;
import fuelwright.ui.theme.Exhibit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** The grid that tables are edited in, in every state. */
public final class TableExhibits {

    private static final double WIDE = 520;
    private static final double TALL = 300;
    private static final double PANEL = 320;

    private TableExhibits() {}

    /** @param sessions gives a session with an empty job each time */
    public static List<Exhibit> all(Supplier<Session> sessions) {
        List<Exhibit> all = new ArrayList<>();
        add(all, sessions, "a cell selected", 12, m -> m.cellProperty().set(30));
        add(all, sessions, "a block selected", 12, m -> {
            m.cellProperty().set(30);
            m.blockProperty().set(Set.of(30, 31, 42, 43));
        });
        add(all, sessions, "64 × 64, scrolled", 64, m -> m.cellProperty().set(0));
        TablesModel model = new TablesModel(sessions.get());
        all.add(new Exhibit("TargetPane", "empty job", new TargetPane(new TargetModel(model)), PANEL, 0));
        all.add(new Exhibit("TargetRatioPane", "nothing told", new TargetRatioPane(model), PANEL, 0));
        all.add(new Exhibit("DeadTimePane", "not told", new DeadTimePane(model), PANEL, 0));
        return all;
    }

    private static void add(
            List<Exhibit> all,
            Supplier<Session> sessions,
            String state,
            int breakpoints,
            Consumer<TablesModel> change) {
        Session session = sessions.get();
        session.edit(job -> job.withFuelTable(table(breakpoints)));
        TablesModel model = new TablesModel(session);
        EditableGrid grid = new EditableGrid(model);
        change.accept(model);
        all.add(new Exhibit("EditableGrid", state, grid, WIDE, TALL));
    }

    private static Table table(int breakpoints) {
        double[] speeds = IntStream.range(0, breakpoints)
                .mapToDouble(i -> 800 + 120.0 * i)
                .toArray();
        double[] loads = IntStream.range(0, breakpoints)
                .mapToDouble(j -> 100.0 * j / (breakpoints - 1))
                .toArray();
        double[] values = IntStream.range(0, breakpoints * breakpoints)
                .mapToDouble(c -> 20 + 60.0 * c / (breakpoints * breakpoints))
                .toArray();
        return Table.of(
                Quantity.VOLUMETRIC_EFFICIENCY,
                new Axis(Axis.Kind.ENGINE_SPEED, speeds),
                new Axis(Axis.Kind.THROTTLE, loads),
                values);
    }
}
