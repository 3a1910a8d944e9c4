package fuelwright.table;

import fuelwright.unit.Unit;
import java.util.Optional;

/**
 * Makes the two axes of a grid: which is which, in which unit, from the corner cell or, without one, from the figures. The axis whose
 * values pass {@value #SPEED_PASSES} is engine speed.
 */
final class AxisReader {

    static final double SPEED_PASSES = 400;

    /** No manifold is ever below this: whoever has two breakpoints under it means throttle, %. */
    private static final double LEAST_PRESSURE_KPA = 10;

    private static final double MOST_PRESSURE_KPA = 1000;
    private static final double MOST_THROTTLE_PERCENT = 120;

    private AxisReader() {}

    /** The axes as the file lays them out. */
    record Axes(Axis rows, Axis columns) {}

    /**
     * @param rows breakpoints down the first column, ascending
     * @param columns breakpoints along the first line, ascending
     * @return empty after an error was added
     */
    static Optional<Axes> read(
            String corner, int line, double[] rows, double[] columns, TableOptions options, Problems problems) {
        Optional<AxisLabel.Pair> both = AxisLabel.pair(corner);
        AxisLabel unnamed = new AxisLabel("", "");
        AxisLabel rowLabel = both.map(AxisLabel.Pair::rows).orElse(unnamed);
        AxisLabel columnLabel = both.map(AxisLabel.Pair::columns).orElse(unnamed);
        Optional<Axis.Kind> rowKind = rowLabel.kind();
        Optional<Axis.Kind> columnKind = columnLabel.kind();
        if (rowKind.isPresent() && rowKind.equals(columnKind)) {
            problems.error(line, 1, "Both axes are named " + rowKind.get().words(), todo());
            return Optional.empty();
        }
        Optional<Boolean> speedDown = speedDown(rowKind, columnKind, rows, columns);
        if (speedDown.isEmpty()) {
            problems.error(line, 1, "It isn't clear which axis is engine speed", todo());
            return Optional.empty();
        }
        boolean down = speedDown.get();
        if (rowKind.isEmpty() && columnKind.isEmpty()) {
            problems.note(
                    line,
                    1,
                    "Engine speed is read " + (down ? "down the first column" : "along the first line")
                            + ", the axis that passes " + Numerals.shortest(SPEED_PASSES));
        }
        AxisLabel loadLabel = both.isEmpty() ? AxisLabel.of(corner) : down ? columnLabel : rowLabel;
        AxisLabel speedLabel = down ? rowLabel : columnLabel;
        Optional<Axis.Kind> loadKind =
                loadLabel.kind().filter(k -> k != Axis.Kind.ENGINE_SPEED).or(options::loadKind);
        if (loadKind.isEmpty()) {
            loadKind = loadKindByFigures(down ? columns : rows, loadLabel, line, problems);
        }
        if (loadKind.isEmpty()) {
            problems.error(line, 1, "It isn't clear whether the load axis is throttle or manifold pressure", todo());
            return Optional.empty();
        }
        Optional<Axis> speed = axis(Axis.Kind.ENGINE_SPEED, speedLabel, down ? rows : columns, line, problems);
        Optional<Axis> load = axis(
                loadKind.get(),
                loadLabel.kind().filter(k -> k == Axis.Kind.ENGINE_SPEED).isPresent() ? unnamed : loadLabel,
                down ? columns : rows,
                line,
                problems);
        if (speed.isEmpty() || load.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(down ? new Axes(speed.get(), load.get()) : new Axes(load.get(), speed.get()));
    }

    private static Optional<Boolean> speedDown(
            Optional<Axis.Kind> rowKind, Optional<Axis.Kind> columnKind, double[] rows, double[] columns) {
        if (rowKind.isPresent()) {
            return Optional.of(rowKind.get() == Axis.Kind.ENGINE_SPEED);
        }
        if (columnKind.isPresent()) {
            return Optional.of(columnKind.get() != Axis.Kind.ENGINE_SPEED);
        }
        boolean rowsPass = rows[rows.length - 1] > SPEED_PASSES;
        boolean columnsPass = columns[columns.length - 1] > SPEED_PASSES;
        return rowsPass == columnsPass ? Optional.empty() : Optional.of(rowsPass);
    }

    private static Optional<Axis.Kind> loadKindByFigures(double[] load, AxisLabel label, int line, Problems problems) {
        if (!label.isEmpty() && label.kind().isEmpty()) {
            return Optional.empty();
        }
        if (load[1] < LEAST_PRESSURE_KPA && load[load.length - 1] <= 100 && load[load.length - 1] > 2) {
            problems.note(line, 1, "The load axis is read as throttle, %: no manifold pressure is that low");
            return Optional.of(Axis.Kind.THROTTLE);
        }
        if (load[load.length - 1] > MOST_THROTTLE_PERCENT && load[0] >= LEAST_PRESSURE_KPA) {
            problems.note(line, 1, "The load axis is read as manifold pressure, kPa: no throttle goes that far");
            return Optional.of(Axis.Kind.MANIFOLD_PRESSURE);
        }
        return Optional.empty();
    }

    private static Optional<Axis> axis(
            Axis.Kind kind, AxisLabel label, double[] breakpoints, int line, Problems problems) {
        Optional<Unit> unit = label.unit();
        if (kind == Axis.Kind.MANIFOLD_PRESSURE && label.isGauge()) {
            problems.error(
                    line,
                    1,
                    "The pressures are against the barometer, not absolute",
                    "Add the barometer to each and write manifold pressure [kPa]");
            return Optional.empty();
        }
        if (label.unitIsUnknown()
                || unit.isPresent() && unit.get().dimension() != kind.unit().dimension()) {
            problems.error(line, 1, "The unit [" + label.unitText() + "] doesn't fit " + kind.words(), todo());
            return Optional.empty();
        }
        double[] converted = breakpoints.clone();
        if (unit.isPresent() && unit.get() != kind.unit()) {
            for (int i = 0; i < converted.length; i++) {
                converted[i] = Numerals.tidy(unit.get().toCanonical(converted[i]));
            }
            problems.note(
                    line,
                    1,
                    "The " + kind.words() + " axis was converted from "
                            + unit.get().symbol() + " to " + kind.unit().symbol());
        }
        Optional<String> doubt = doubt(kind, converted[0], converted[converted.length - 1]);
        if (doubt.isPresent()) {
            problems.error(line, 1, doubt.get(), todo());
            return Optional.empty();
        }
        return Optional.of(new Axis(kind, converted));
    }

    private static Optional<String> doubt(Axis.Kind kind, double first, double last) {
        String range = " runs from " + Numerals.shortest(first) + " to " + Numerals.shortest(last) + " "
                + kind.unit().symbol();
        boolean strange;
        switch (kind) {
            case ENGINE_SPEED:
                strange = first < 0 || last <= SPEED_PASSES;
                break;
            case THROTTLE:
                // A last breakpoint of 1 is a fraction of 1 that wants its unit.
                strange = last > MOST_THROTTLE_PERCENT || last <= 1;
                break;
            default:
                strange = first < 0 || last > MOST_PRESSURE_KPA || last < LEAST_PRESSURE_KPA;
        }
        return strange ? Optional.of("The " + kind.words() + " axis" + range + ", which can't be") : Optional.empty();
    }

    private static String todo() {
        return "Write both axes with their units in the corner cell, rows first: engine speed [rpm] \\ throttle [%],"
                + " or engine speed [rpm] \\ manifold pressure [kPa]";
    }
}
