package fuelwright.ui.tables;

import fuelwright.issue.Issue;
import fuelwright.issue.Loaded;
import fuelwright.table.AxisEdit;
import fuelwright.table.Pasted;
import fuelwright.table.Table;
import fuelwright.table.TableEdit;
import fuelwright.ui.plot.GridShape;
import fuelwright.ui.session.ShownTable;
import fuelwright.ui.theme.Words;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.SortedSet;
import java.util.StringJoiner;
import java.util.TreeSet;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;

/**
 * Editing the table that is looked at: each step is one step of undo; what can't be is refused with words and changes nothing. Figures are
 * typed as they are shown.
 */
public final class TableEditor {

    private static final int WHOLE = 2;

    private final TablesModel model;
    private final ReadOnlyStringWrapper said = new ReadOnlyStringWrapper("");
    private final ReadOnlyBooleanWrapper refused = new ReadOnlyBooleanWrapper();

    TableEditor(TablesModel model) {
        this.model = model;
    }

    /** What the last step did, or why it was refused. */
    public ReadOnlyStringProperty saidProperty() {
        return said.getReadOnlyProperty();
    }

    public ReadOnlyBooleanProperty refusedProperty() {
        return refused.getReadOnlyProperty();
    }

    /** Whether there is a table that can be edited by hand. */
    public boolean isEditable() {
        return model.shownProperty().get() != ShownTable.FIRST_RIDE
                && model.previewProperty().get() == null
                && model.table().isPresent();
    }

    private CellFigures figures(Table table) {
        return new CellFigures(table.quantity(), model.notation(table), model.deadTimeMs());
    }

    private GridShape shape(Table table) {
        return new GridShape(
                table.speed().size(), table.load().size(), model.viewProperty().get());
    }

    /** Everything selected: the block, or the one cell. */
    public SortedSet<Integer> cells() {
        SortedSet<Integer> all = new TreeSet<>(model.blockProperty().get());
        int cell = model.cellProperty().get();
        if (all.isEmpty() && cell >= 0) {
            all.add(cell);
        }
        return all;
    }

    /** The selected cell's figure as it is edited; empty where none is. */
    public Optional<String> figure() {
        int cell = model.cellProperty().get();
        return model.table()
                .filter(t -> cell >= 0 && cell < t.cells())
                .map(t -> figures(t).text(t.at(cell)));
    }

    /** Puts a typed figure, or a change such as +4 %, into the selected cell. Whether it was taken. */
    public boolean type(String text) {
        int cell = model.cellProperty().get();
        if (cell < 0) {
            return refuse(Words.of("tables.edit.select"));
        }
        String stripped = text.strip();
        if (stripped.endsWith("%")) {
            if ("+-−".indexOf(stripped.charAt(0)) < 0) {
                return refuse(Words.of("tables.edit.sign", stripped));
            }
            return number(stripped.substring(0, stripped.length() - 1))
                    .map(p -> change(Set.of(cell), t -> v -> figures(t).percent(v, p)))
                    .orElse(false);
        }
        return number(stripped)
                .map(n -> change(Set.of(cell), t -> v -> figures(t).held(n)))
                .orElse(false);
    }

    /** The typed figure in every selected cell. */
    public boolean fill(String text) {
        return number(text)
                .map(n -> change(cells(), t -> v -> figures(t).held(n)))
                .orElse(false);
    }

    /** So much more in every selected cell. */
    public boolean add(String text) {
        return number(text)
                .map(n -> change(cells(), t -> v -> figures(t).more(v, n)))
                .orElse(false);
    }

    /** So many percent more fuel, or leaner, in every selected cell. */
    public boolean addPercent(String text) {
        String bare = text.strip();
        return number(bare.endsWith("%") ? bare.substring(0, bare.length() - 1) : bare)
                .map(n -> change(cells(), t -> v -> figures(t).percent(v, n)))
                .orElse(false);
    }

    /** Every selected cell's fuel, or lambda, times a factor. */
    public boolean times(String text) {
        return number(text)
                .map(n -> change(cells(), t -> v -> figures(t).percent(v, 100 * (n - 1))))
                .orElse(false);
    }

    /** The block drawn anew between its corners. */
    public boolean betweenCorners() {
        return overBlock(t -> TableEdit.betweenCorners(t, cells()));
    }

    /** The inside of the block drawn anew between its edges. */
    public boolean betweenEdges() {
        return overBlock(t -> TableEdit.betweenEdges(t, cells()));
    }

    /** The selected cells halfway to their neighbours. */
    public boolean soften() {
        return cells().isEmpty()
                ? refuse(Words.of("tables.edit.select"))
                : put(t -> TableEdit.soften(t, cells()), cells().size());
    }

    private boolean overBlock(Function<Table, Table> edit) {
        return cells().size() <= WHOLE ? refuse(Words.of("tables.edit.block")) : put(edit, cells().size());
    }

    /** A table has no empty cell. */
    public boolean delete() {
        return refuse(Words.of("tables.edit.delete"));
    }

    private Optional<Double> number(String text) {
        OptionalDouble number = CellFigures.number(text);
        if (number.isEmpty()) {
            refuse(Words.of("tables.edit.nonumber", text.strip()));
            return Optional.empty();
        }
        return Optional.of(number.getAsDouble());
    }

    private boolean change(Set<Integer> cells, Function<Table, DoubleUnaryOperator> how) {
        return cells.isEmpty()
                ? refuse(Words.of("tables.edit.select"))
                : put(t -> TableEdit.each(t, cells, how.apply(t)), cells.size());
    }

    /**
     * The selected block as tab-separated text; with breakpoints where asked. More than one figure is a table: a Stop caution that stands
     * against it goes out above it.
     */
    public String copy(boolean headed) {
        Table table = model.table().orElse(null);
        if (table == null || cells().isEmpty()) {
            return "";
        }
        GridShape shape = shape(table);
        SortedSet<Integer> block = TableEdit.block(table, cells());
        List<Integer> columns =
                block.stream().map(shape::column).distinct().sorted().toList();
        List<Integer> rows = block.stream().map(shape::row).distinct().sorted().toList();
        boolean speedDown = shape.view() == GridShape.View.SPEED_DOWN;
        List<String> stops = block.size() > 1 ? model.stops() : List.of();
        StringBuilder text = new StringBuilder();
        stops.forEach(stop -> text.append("# caution: ").append(stop).append('\n'));
        if (headed) {
            text.append(speedDown ? "rpm" : table.load().kind().unit().symbol());
            for (int column : columns) {
                int cell = shape.cell(column, rows.get(0));
                text.append('\t').append(breakpoint(speedDown ? table.loadAt(cell) : table.speedAt(cell)));
            }
            text.append('\n');
        }
        for (int row : rows) {
            StringJoiner line = new StringJoiner("\t", "", "\n");
            if (headed) {
                int cell = shape.cell(columns.get(0), row);
                line.add(breakpoint(speedDown ? table.speedAt(cell) : table.loadAt(cell)));
            }
            columns.forEach(column -> line.add(figures(table).text(table.at(shape.cell(column, row)))));
            text.append(line);
        }
        say(Words.of(stops.isEmpty() ? "tables.edit.copied" : "tables.edit.copied.stop", block.size()), false);
        return text.toString();
    }

    private static String breakpoint(double value) {
        return fuelwright.table.Numerals.shortest(value);
    }

    /** Puts copied figures in: by their breakpoints, or from the selection's upper left corner. Whether they were taken. */
    public boolean paste(String text) {
        Table table = model.table().orElse(null);
        if (table == null) {
            return refuse(Words.of("tables.edit.notable"));
        }
        Loaded<Pasted> loaded = Pasted.read(text == null ? "" : text);
        if (loaded.value().isEmpty()) {
            return refuse(loaded.issues().stream().map(Issue::what).collect(Collectors.joining("\n")));
        }
        Pasted pasted = loaded.value().get();
        CellFigures figures = figures(table);
        if (pasted.isHeaded()) {
            return put(
                    t -> {
                        Table shown = TableEdit.each(t, all(t), figures::shown);
                        Table taken = pasted.into(shown);
                        double[] values = t.toArray();
                        for (int cell = 0; cell < values.length; cell++) {
                            if (taken.at(cell) != shown.at(cell)) {
                                values[cell] = figures.held(taken.at(cell));
                            }
                        }
                        return t.withValues(values);
                    },
                    pasted.rowCount() * pasted.columnCount());
        }
        if (cells().isEmpty()) {
            return refuse(Words.of("tables.edit.select"));
        }
        if (pasted.rowCount() == 1 && pasted.columnCount() == 1) {
            return change(cells(), t -> v -> figures.held(pasted.at(0, 0)));
        }
        return pasteFrom(table, pasted, figures);
    }

    private boolean pasteFrom(Table table, Pasted pasted, CellFigures figures) {
        GridShape shape = shape(table);
        int left = cells().stream().mapToInt(shape::column).min().orElseThrow();
        int top = cells().stream().mapToInt(shape::row).min().orElseThrow();
        if (left + pasted.columnCount() > shape.columns() || top + pasted.rowCount() > shape.rows()) {
            return refuse(Words.of("tables.edit.nofit", pasted.rowCount(), pasted.columnCount()));
        }
        Set<Integer> touched = new HashSet<>();
        double[] values = table.toArray();
        for (int row = 0; row < pasted.rowCount(); row++) {
            for (int column = 0; column < pasted.columnCount(); column++) {
                int cell = shape.cell(left + column, top + row);
                values[cell] = figures.held(pasted.at(row, column));
                touched.add(cell);
            }
        }
        return put(t -> t.withValues(values), touched.size());
    }

    private static List<Integer> all(Table table) {
        return java.util.stream.IntStream.range(0, table.cells()).boxed().toList();
    }

    /** One more breakpoint. */
    public boolean insert(AxisEdit.Side side, String text) {
        return number(text).map(n -> putAxis(t -> AxisEdit.insert(t, side, n))).orElse(false);
    }

    /** The selected cell's breakpoint elsewhere. */
    public boolean move(AxisEdit.Side side, String text) {
        OptionalDouble index = chosen(side);
        if (index.isEmpty()) {
            return refuse(Words.of("tables.edit.select"));
        }
        return number(text)
                .map(n -> putAxis(t -> AxisEdit.change(t, side, (int) index.getAsDouble(), n)))
                .orElse(false);
    }

    /** The selected cell's breakpoint away. */
    public boolean remove(AxisEdit.Side side) {
        OptionalDouble index = chosen(side);
        return index.isEmpty()
                ? refuse(Words.of("tables.edit.select"))
                : putAxis(t -> AxisEdit.remove(t, side, (int) index.getAsDouble()));
    }

    private OptionalDouble chosen(AxisEdit.Side side) {
        int cell = model.cellProperty().get();
        return model.table()
                .filter(t -> cell >= 0 && cell < t.cells())
                .map(t -> OptionalDouble.of(side == AxisEdit.Side.SPEED ? t.speedIndex(cell) : t.loadIndex(cell)))
                .orElse(OptionalDouble.empty());
    }

    private boolean putAxis(Function<Table, Table> edit) {
        if (!isEditable()) {
            return refuse(Words.of("tables.edit.fixed"));
        }
        try {
            Table changed = edit.apply(model.table().orElseThrow());
            model.cellProperty().set(-1);
            model.put(changed);
            say(Words.of("tables.edit.axis"), false);
            return true;
        } catch (IllegalArgumentException e) {
            return refuse(e.getMessage() + ".");
        }
    }

    private boolean put(Function<Table, Table> edit, int count) {
        if (!isEditable()) {
            return refuse(Words.of("tables.edit.fixed"));
        }
        Table old = model.table().orElseThrow();
        Table changed;
        try {
            changed = edit.apply(old);
        } catch (IllegalArgumentException e) {
            return refuse(e.getMessage() + ".");
        }
        CellFigures figures = figures(old);
        for (int cell = 0; cell < changed.cells(); cell++) {
            if (changed.at(cell) != old.at(cell)) {
                Optional<String> problem = figures.problem(changed.at(cell));
                if (problem.isPresent()) {
                    return refuse(Words.of("tables.edit.cell", model.placeOf(cell), problem.get()));
                }
            }
        }
        model.put(changed);
        say(Words.of("tables.edit.done", count), false);
        return true;
    }

    private boolean refuse(String words) {
        say(words, true);
        return false;
    }

    void forget() {
        say("", false);
    }

    private void say(String words, boolean no) {
        refused.set(no);
        said.set(words);
    }
}
