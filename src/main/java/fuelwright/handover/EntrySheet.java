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
    private static final double HEAD_MM = 19;

    private static final double CELL_EDGES_MM = 2.2;
    /** Height within the margins of A4 on its side. */
    private static final double PAGE_HIGH_MM = 188;
    /** Title, what is to be done, the table's head and its two rows of sums. */
    private static final double AROUND_MM = 46;

    private static final double NOTE_MM = 9;
    private static final double NOTE_LINE_MM = 4.4;
    private static final double NOTE_LINE_LENGTH = 170;
    private static final double TABLE_HEAD_MM = 11;
    private static final double STOP_EDGES_MM = 8;
    private static final double STOP_LINE_MM = 4.8;
    private static final double STOP_LINE_LENGTH = 150;
    /** A row's height by the size of its figures, pt, and what its edges add, pt. */
    private static final double ROW_BY_SIZE = 2.05;

    private static final double ROW_EDGES_PT = 5.1;
    /** Rows may be so much lower where then all fit on one page. */
    private static final double MOST_SHRUNK = 0.9;
    /** Rows that go over to the last page together, with the sums. */
    private static final int LEAST_TOGETHER = 3;

    private static final double PT_MM = 25.4 / 72;
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
        this.comma = handed.job().decimalComma();
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
        double size = size(across.size(), down.size());
        int newPage = newPage(down.size(), size);
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
            row.put("newPage", d == newPage);
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
        map.put("inferred", !sheet.inferred().isEmpty());
        map.put("signed", sheet.isSigned());
        map.put("file", handed.hardware().isPresent() ? Exports.HARDWARE : Exports.CORRECTED);
        map.put("size", Figures.plain(size, 1));
        map.put("smallSize", Figures.plain(0.62 * size, 1));
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
        map.put("inferred", sheet.inferred().contains(cell));
        return map;
    }

    /** Size of the new figures on paper, pt, at which a row fits across the page; a little less where then all rows fit on it. */
    private double size(int columns, int rows) {
        int length = 1;
        int sumLength = text(sum()).length();
        for (int cell = 0; cell < after.cells(); cell++) {
            length = Math.max(length, text(sheet.old(cell)).length());
            length = Math.max(length, text(sheet.now(cell)).length());
        }
        double sumsMm = 3 * (sumLength * CHARACTER * SUM_SIZE * PT_MM + CELL_EDGES_MM);
        double cellMm = (PAGE_MM - HEAD_MM - sumsMm) / columns - CELL_EDGES_MM;
        double across = Math.max(LEAST_SIZE, Math.min(MOST_SIZE, cellMm / (length * CHARACTER * PT_MM)));
        double down = (forRowsMm() / rows / PT_MM - ROW_EDGES_PT) / ROW_BY_SIZE;
        return down >= MOST_SHRUNK * across ? Math.min(across, down) : across;
    }

    /** What the first page leaves for rows where the sums are to stand on it too. */
    private double forRowsMm() {
        double stopsMm = handed.stops().stream()
                .mapToDouble(c -> STOP_EDGES_MM
                        + STOP_LINE_MM * Math.ceil(StopNotes.text(c).length() / STOP_LINE_LENGTH))
                .sum();
        double notesMm = sheet.bounded().isEmpty() ? 0 : NOTE_MM;
        if (!ownCells().isEmpty()) {
            notesMm += NOTE_MM + NOTE_LINE_MM * Math.floor(ownCells().length() / NOTE_LINE_LENGTH);
        }
        double keyMm = sheet.inferred().isEmpty() ? 0 : NOTE_LINE_MM;
        return PAGE_HIGH_MM - AROUND_MM - stopsMm - notesMm - keyMm;
    }

    /**
     * The row that begins the last page, so that it isn't left alone with the sums; −1 where all stand on one. What fits is reckoned rather too
     * low than too high: a break that comes of itself before this one would leave a row alone.
     */
    private int newPage(int rows, double size) {
        double rowMm = (ROW_BY_SIZE * size + ROW_EDGES_PT) * PT_MM;
        int left = rows - (int) (forRowsMm() / rowMm + 1e-6);
        int onOthers = (int) ((PAGE_HIGH_MM - 2 * TABLE_HEAD_MM) / rowMm);
        while (left > onOthers) {
            left -= onOthers;
        }
        return left > 0 ? Math.max(0, rows - Math.max(left, LEAST_TOGETHER)) : -1;
    }

    private BigDecimal sum() {
        BigDecimal sum = BigDecimal.ZERO;
        for (int cell = 0; cell < after.cells(); cell++) {
            sum = sum.add(sheet.now(cell));
        }
        return sum;
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
            case PERCENT_CHANGE, MULTIPLIER ->
                "These are the cells of your hardware. "
                        + handed.hardware().map(HardwareTable::standsOn).orElse("");
        };
    }

    private static String words(Axis axis) {
        return axis.kind().words() + ", " + axis.kind().unit().symbol();
    }

    private String text(BigDecimal sum) {
        BigDecimal figure = sum.setScale(decimals, RoundingMode.UNNECESSARY);
        String sign = figure.signum() < 0 ? "−" : figure.signum() > 0 && sheet.isSigned() ? "+" : "";
        return text(sign + figure.abs().toPlainString());
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
