package fuelwright.handover;

import fuelwright.job.HardwareProfile;
import fuelwright.safety.UsualCautions;
import fuelwright.table.Axis;
import fuelwright.table.Table;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The sheet to type from: the corrected table in the order of typing, old figure and new, a box to tick for each figure that changes. Sums of
 * the typed figures and of the whole table as it should then stand, by row, by column and running down the rows, are exact sums of the
 * figures as printed: who adds up what was typed finds the row and the column of a slip.
 */
final class EntrySheet {

    private static final String TEMPLATE = "entry-sheet.ftlh";

    /** Width within the margins of the narrower of A4 and Letter, on its side. */
    private static final double PAGE_MM = 258;
    /** Width of a row's head. */
    private static final double HEAD_MM = 24;

    private static final double CELL_EDGES_MM = 2.2;
    private static final double SUM_SIZE = 7.5;
    private static final double MOST_SIZE = 12;
    private static final double LEAST_SIZE = 5;
    /** How wide a bold digit is, of its size. */
    private static final double CHARACTER = 0.63;

    private final Handed handed;
    private final ToType sheet;
    private final Table after;
    private final boolean speedDown;
    private final boolean comma;
    private final int decimals;

    private EntrySheet(Handed handed) {
        this.handed = handed;
        this.sheet = ToType.of(handed.proposal(), handed.hardware(), handed.cautions());
        this.after = sheet.after();
        this.speedDown = after.orientation() == Table.Orientation.SPEED_DOWN;
        this.comma = handed.job().hardware().decimalComma();
        this.decimals = sheet.decimals();
    }

    /** The sheet as well-formed HTML that needs no network. */
    static String write(Handed handed) {
        return Template.write(TEMPLATE, new EntrySheet(handed).content(false));
    }

    /** The sheet as the PDF is made from: without what only a screen can do. */
    static String forPaper(Handed handed) {
        return Template.write(TEMPLATE, new EntrySheet(handed).content(true));
    }

    private Map<String, Object> content(boolean paper) {
        Axis down = speedDown ? after.speed() : after.load();
        Axis across = speedDown ? after.load() : after.speed();
        BigDecimal[] columnTyped = zeros(across.size());
        BigDecimal[] columnWhole = zeros(across.size());
        BigDecimal running = BigDecimal.ZERO;
        BigDecimal all = BigDecimal.ZERO;
        int changes = 0;
        List<Map<String, Object>> rows = new ArrayList<>();
        for (int d = 0; d < down.size(); d++) {
            BigDecimal typed = BigDecimal.ZERO;
            BigDecimal whole = BigDecimal.ZERO;
            List<Map<String, Object>> cells = new ArrayList<>();
            int inRow = 0;
            for (int a = 0; a < across.size(); a++) {
                int cell = speedDown ? after.cell(a, d) : after.cell(d, a);
                BigDecimal old = sheet.old(cell);
                BigDecimal now = sheet.now(cell);
                boolean typedHere = sheet.changes(cell);
                whole = whole.add(now);
                columnWhole[a] = columnWhole[a].add(now);
                if (typedHere) {
                    typed = typed.add(now);
                    columnTyped[a] = columnTyped[a].add(now);
                    inRow++;
                }
                cells.add(cell(cell, old, now, typedHere));
            }
            changes += inRow;
            running = running.add(typed);
            all = all.add(whole);
            Map<String, Object> row = new LinkedHashMap<>();
            row.put("at", text(Figures.trimmed(down.at(d), 2)));
            row.put("cells", cells);
            row.put("changes", inRow);
            row.put("typed", text(typed));
            row.put("running", text(running));
            row.put("whole", text(whole));
            rows.add(row);
        }
        Map<String, Object> map = new TreeMap<>();
        map.put("name", handed.job().title());
        map.put("paper", paper);
        map.put(
                "stops",
                handed.stops().stream()
                        .map(c -> Map.of("title", c.title(), "text", StopNotes.text(c)))
                        .toList());
        map.put("words", after.quantity().words());
        map.put(
                "unit",
                after.quantity().unit().equals("1") ? "" : after.quantity().unit());
        map.put("down", words(down));
        map.put("across", words(across));
        map.put(
                "columns",
                Arrays.stream(across.toArray())
                        .mapToObj(b -> text(Figures.trimmed(b, 2)))
                        .toList());
        map.put("rows", rows);
        map.put("columnTyped", Arrays.stream(columnTyped).map(this::text).toList());
        map.put("columnWhole", Arrays.stream(columnWhole).map(this::text).toList());
        map.put("typed", text(running));
        map.put("whole", text(all));
        map.put("changes", changes);
        map.put("cells", after.cells());
        map.put("ownCells", ownCells());
        map.put("bounded", !sheet.bounded().isEmpty());
        map.put("file", handed.hardware().isPresent() ? Exports.HARDWARE : Exports.CORRECTED);
        map.put("size", Figures.plain(size(across.size(), text(all).length()), 1));
        map.put("smallSize", Figures.plain(0.62 * size(across.size(), text(all).length()), 1));
        map.put("usual", UsualCautions.sentences());
        return map;
    }

    private Map<String, Object> cell(int cell, BigDecimal old, BigDecimal now, boolean changes) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("old", text(old));
        map.put("now", text(now));
        map.put("changes", changes);
        map.put("stop", sheet.stopped().contains(cell));
        map.put("bound", sheet.boundWord(cell));
        return map;
    }

    /** Size of the new figures on paper, pt, at which a row fits across the page. */
    private double size(int columns, int sumLength) {
        int length = 1;
        for (int cell = 0; cell < after.cells(); cell++) {
            length = Math.max(
                    length,
                    Math.max(
                            text(sheet.old(cell)).length(),
                            text(sheet.now(cell)).length()));
        }
        double ptMm = 25.4 / 72;
        double sumsMm = 3 * (sumLength * CHARACTER * SUM_SIZE * ptMm + CELL_EDGES_MM);
        double cellMm = (PAGE_MM - HEAD_MM - sumsMm) / columns - CELL_EDGES_MM;
        return Math.max(LEAST_SIZE, Math.min(MOST_SIZE, cellMm / (length * CHARACTER * ptMm)));
    }

    /** What the hardware's own cells are, where they aren't those of the fuel table; empty where they are. */
    private String ownCells() {
        HardwareProfile hardware = handed.job().hardware();
        if (hardware.keepsCells()) {
            return "";
        }
        return switch (hardware.holds()) {
            case VALUE ->
                "These are the cells of your hardware. It has other breakpoints than the fuel table: the old figures are"
                        + " the fuel table's, read off there.";
            case PERCENT_CHANGE ->
                "These are the cells of your hardware: percent on top of the fuel table. The sheet takes it that"
                        + " every cell held 0 before.";
            case MULTIPLIER ->
                "These are the cells of your hardware: what the fuel table is multiplied by. The sheet takes it that"
                        + " every cell held 1 before.";
        };
    }

    private static String words(Axis axis) {
        return axis.kind().words() + ", " + axis.kind().unit().symbol();
    }

    private String text(BigDecimal sum) {
        BigDecimal figure = sum.setScale(decimals, RoundingMode.UNNECESSARY);
        return text((figure.signum() < 0 ? "−" : "") + figure.abs().toPlainString());
    }

    private String text(String figure) {
        return comma ? figure.replace('.', ',') : figure;
    }

    private static BigDecimal[] zeros(int size) {
        BigDecimal[] zeros = new BigDecimal[size];
        Arrays.fill(zeros, BigDecimal.ZERO);
        return zeros;
    }
}
