package fuelwright.ui.session;

import fuelwright.issue.Issue;
import fuelwright.job.Job;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import fuelwright.ui.plot.HeatCell;
import fuelwright.ui.plot.HeatMap;
import fuelwright.ui.theme.Figures;
import fuelwright.ui.theme.Words;
import fuelwright.work.AnotherTable;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/** Tables as they are shown: axes, breakpoints and cells in words, and maps over them. */
public final class TableWords {

    private TableWords() {}

    /** Where a cell is: "4500 rpm × 50 % throttle". */
    public static String cell(Table table, int cell) {
        return place(table, table.speedAt(cell), table.loadAt(cell));
    }

    /** Any place of a table. */
    public static String place(Table table, double speedRpm, double load) {
        Axis.Kind kind = table.load().kind();
        return Words.of(
                "cell.name",
                Figures.plain(speedRpm, 0),
                Figures.plain(load, Math.abs(load - Math.rint(load)) < 0.05 ? 0 : 1) + " "
                        + kind.unit().symbol(),
                kind.words());
    }

    public static String axisTitle(Axis axis) {
        return axis.kind().words() + ", " + axis.kind().unit().symbol();
    }

    public static List<String> breakpoints(Axis axis) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < axis.size(); i++) {
            all.add(Figures.shortest(axis.at(i)));
        }
        return all;
    }

    /**
     * A map over a table's axes.
     *
     * @param cell what a cell of the table is drawn as
     */
    public static HeatMap map(Table axes, IntFunction<HeatCell> cell) {
        return new HeatMap(
                breakpoints(axes.speed()),
                breakpoints(axes.load()),
                axisTitle(axes.speed()),
                axisTitle(axes.load()),
                IntStream.range(0, axes.cells()).mapToObj(cell).toList());
    }

    /** Decimals that a table's figures need: as many as its cells have, 1 to 3. */
    public static int decimals(Table table) {
        int most = 0;
        for (int cell = 0; cell < table.cells(); cell++) {
            most = Math.max(most, Figures.decimals(table.at(cell)));
        }
        return Math.max(1, most);
    }

    /** A figure of the table with its unit. */
    public static String figure(Table table, double value) {
        String unit = table.quantity().unit();
        return Figures.plain(value, decimals(table)) + (unit.equals("1") ? "" : " " + unit);
    }

    /** What has to be said where another fuel table took the place of a job's. */
    static List<Issue> replaced(Job before, AnotherTable another) {
        List<Issue> said = new ArrayList<>();
        Table now = another.job().fuelTable().orElseThrow();
        Table old = before.fuelTable().orElse(now);
        if (another.keeping() > 0) {
            said.add(warning("open.kept", another.keeping()));
        } else if (!before.rides().isEmpty() && !old.cylinder().equals(now.cylinder())) {
            said.add(warning("open.cylinder", before.rides().size()));
        }
        if (another.keeping() > 0 && !another.canServe()) {
            said.add(Issue.warning("", 0, 0, Words.of("open.kind", kind(old), kind(now)), Words.of("open.kind.todo")));
        }
        if (another.givenUp() > 0) {
            said.add(warning("open.givenup", another.givenUp()));
        }
        if (another.entered() > 0) {
            said.add(Issue.warning("", 0, 0, Words.of("open.entered", another.entered()), ""));
        }
        return said;
    }

    private static Issue warning(String key, int count) {
        return Issue.warning("", 0, 0, Words.of(key, count), Words.of(key + ".todo"));
    }

    private static String kind(Table table) {
        return Words.of(
                "open.kind.of", table.quantity().words(), table.load().kind().words());
    }
}
