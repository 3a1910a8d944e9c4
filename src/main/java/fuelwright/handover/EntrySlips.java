package fuelwright.handover;

import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;

/** Finds out what a typing slip looks like: whole lines first, then pairs of neighbours, then the figure by itself. */
final class EntrySlips {

    /** A slip in words. */
    record Named(Slip slip, String detail) {}

    /** So many cells of a line must differ before the line is blamed and not the cells. */
    private static final int LEAST_OF_A_LINE = 3;

    private static final int[] POWERS = {1, -1, 2, -2, 3, -3};

    private final Table meant;
    private final Table typed;
    private final double step;
    private final Optional<Table> old;
    private final Optional<Named> whole;
    private final Named[] byLine;

    /** @param old what the hardware held before, on the same axes in the same quantity, where it is known */
    EntrySlips(Table meant, Table typed, double step, Optional<Table> old) {
        this.old = old;
        this.meant = meant;
        this.typed = typed;
        this.step = step;
        this.byLine = new Named[meant.cells()];
        this.whole = whole();
        for (int load = 0; load < meant.load().size(); load++) {
            blame(new Line(true, load));
        }
        for (int speed = 0; speed < meant.speed().size(); speed++) {
            blame(new Line(false, speed));
        }
    }

    /** The name of the slip at a cell that differs. */
    Named at(int cell) {
        if (whole.isPresent()) {
            return whole.get();
        }
        if (byLine[cell] != null) {
            return byLine[cell];
        }
        int other = swappedWith(cell);
        if (other >= 0) {
            return new Named(Slip.SWAPPED, "swapped with " + place(other));
        }
        if (old.isPresent() && is(typed.at(cell), old.get().at(cell))) {
            return new Named(Slip.OLD_FIGURE, Slip.OLD_FIGURE.words());
        }
        Slip slip = figure(meant.at(cell), typed.at(cell));
        if (slip != Slip.OTHER && slip != Slip.ONE_DIGIT) {
            return new Named(slip, slip.words());
        }
        for (int neighbour : neighbours(cell)) {
            if (is(typed.at(cell), meant.at(neighbour))) {
                return new Named(Slip.NEIGHBOUR, "holds the figure of " + place(neighbour));
            }
        }
        return new Named(slip, slip.words());
    }

    /** A whole table typed that isn't the one that was meant, or typed the wrong way round. */
    private Optional<Named> whole() {
        int differing = 0;
        for (int c = 0; c < meant.cells(); c++) {
            differing += differs(c) ? 1 : 0;
        }
        if (differing < LEAST_OF_A_LINE) {
            return Optional.empty();
        }
        if (old.isPresent() && isAll(c -> old.get().at(c))) {
            return Optional.of(new Named(Slip.OLD_TABLE, "the whole of the old table is still there"));
        }
        int speeds = meant.speed().size();
        int loads = meant.load().size();
        if (isAll(c -> meant.at(meant.cell(meant.loadIndex(c), speeds - 1 - meant.speedIndex(c))))) {
            return Optional.of(new Named(Slip.MIRRORED, "the table runs the wrong way along engine speed"));
        }
        if (isAll(c -> meant.at(meant.cell(loads - 1 - meant.loadIndex(c), meant.speedIndex(c))))) {
            return Optional.of(new Named(Slip.MIRRORED, "the table runs the wrong way along load"));
        }
        if (isAll(c -> meant.at(meant.cells() - 1 - c))) {
            return Optional.of(new Named(Slip.MIRRORED, "the table runs the wrong way along both axes"));
        }
        if (speeds == loads && isAll(c -> meant.at(meant.cell(meant.speedIndex(c), meant.loadIndex(c))))) {
            return Optional.of(new Named(Slip.MIRRORED, "rows and columns of the table are exchanged"));
        }
        return Optional.empty();
    }

    private boolean isAll(IntToDoubleFunction figure) {
        for (int c = 0; c < meant.cells(); c++) {
            if (!is(typed.at(c), figure.applyAsDouble(c))) {
                return false;
            }
        }
        return true;
    }

    /** All cells of one load (along engine speed), or of one engine speed (along load). */
    private final class Line {
        final boolean alongSpeed;
        final int index;

        Line(boolean alongSpeed, int index) {
            this.alongSpeed = alongSpeed;
            this.index = index;
        }

        int size() {
            return alongSpeed ? meant.speed().size() : meant.load().size();
        }

        int lines() {
            return alongSpeed ? meant.load().size() : meant.speed().size();
        }

        int cell(int at) {
            return alongSpeed ? meant.cell(index, at) : meant.cell(at, index);
        }

        String words() {
            Axis axis = alongSpeed ? meant.load() : meant.speed();
            return figure(axis, index);
        }
    }

    private void blame(Line line) {
        int differing = 0;
        for (int i = 0; i < line.size(); i++) {
            differing += differs(line.cell(i)) ? 1 : 0;
        }
        if (differing < LEAST_OF_A_LINE) {
            return;
        }
        Named named = otherLine(line);
        if (named == null) {
            named = shifted(line, 1, "on");
        }
        if (named == null) {
            named = shifted(line, -1, "back");
        }
        if (named == null) {
            return;
        }
        for (int i = 0; i < line.size(); i++) {
            int cell = line.cell(i);
            if (differs(cell) && byLine[cell] == null) {
                byLine[cell] = named;
            }
        }
    }

    private Named otherLine(Line line) {
        for (int distance = 1; distance < line.lines(); distance++) {
            for (int k : new int[] {line.index - distance, line.index + distance}) {
                if (k < 0 || k >= line.lines()) {
                    continue;
                }
                Line other = new Line(line.alongSpeed, k);
                if (holds(line, other)) {
                    boolean both = holds(other, line);
                    return new Named(
                            both ? Slip.LINE_SWAPPED : Slip.WRONG_LINE,
                            both
                                    ? "the lines of " + line.words() + " and " + other.words() + " are swapped"
                                    : "the line of " + line.words() + " holds the figures of " + other.words());
                }
            }
        }
        return null;
    }

    /** Whether {@code line} as typed is {@code other} as meant. */
    private boolean holds(Line line, Line other) {
        for (int i = 0; i < line.size(); i++) {
            if (!is(typed.at(line.cell(i)), meant.at(other.cell(i)))) {
                return false;
            }
        }
        return true;
    }

    /** Every differing cell but those at the line's ends holds the figure of the one before it ({@code by} 1) or after it (−1). */
    private Named shifted(Line line, int by, String where) {
        int explained = 0;
        for (int i = 0; i < line.size(); i++) {
            int cell = line.cell(i);
            if (!differs(cell)) {
                continue;
            }
            int from = i - by;
            if (from >= 0 && from < line.size() && is(typed.at(cell), meant.at(line.cell(from)))) {
                explained++;
            } else if (!startsRun(line, i, by)) {
                return null;
            }
        }
        return explained < LEAST_OF_A_LINE - 1
                ? null
                : new Named(Slip.LINE_SHIFTED, "figures of the line of " + line.words() + " are shifted one " + where);
    }

    /** Whether the shift begins at {@code i}: there any figure may stand, as nothing was before it. */
    private boolean startsRun(Line line, int i, int by) {
        int before = i - by;
        return before < 0 || before >= line.size() || !differs(line.cell(before));
    }

    private int swappedWith(int cell) {
        for (int other : neighbours(cell)) {
            if (is(typed.at(cell), meant.at(other)) && is(typed.at(other), meant.at(cell))) {
                return other;
            }
        }
        return -1;
    }

    private int[] neighbours(int cell) {
        int speed = meant.speedIndex(cell);
        int load = meant.loadIndex(cell);
        java.util.stream.IntStream.Builder all = java.util.stream.IntStream.builder();
        if (speed > 0) {
            all.add(meant.cell(load, speed - 1));
        }
        if (speed + 1 < meant.speed().size()) {
            all.add(meant.cell(load, speed + 1));
        }
        if (load > 0) {
            all.add(meant.cell(load - 1, speed));
        }
        if (load + 1 < meant.load().size()) {
            all.add(meant.cell(load + 1, speed));
        }
        return all.build().toArray();
    }

    private Slip figure(double wanted, double got) {
        if (is(got, -wanted)) {
            return Slip.SIGN;
        }
        boolean untouched = meant.quantity() == Quantity.MULTIPLIER && got == 1;
        if (got == 0 || untouched) {
            return Slip.NOT_TYPED;
        }
        for (int power : POWERS) {
            if (is(got, wanted * Math.pow(10, power))) {
                return Slip.DECIMAL_POINT;
            }
        }
        return digits(digitsOf(wanted), digitsOf(got));
    }

    private static Slip digits(String wanted, String got) {
        if (wanted.length() == got.length()) {
            int off = 0;
            for (int i = 0; i < wanted.length(); i++) {
                off += wanted.charAt(i) != got.charAt(i) ? 1 : 0;
            }
            if (off == 1) {
                return Slip.ONE_DIGIT;
            }
            for (int i = 0; i + 1 < wanted.length(); i++) {
                String swapped =
                        wanted.substring(0, i) + wanted.charAt(i + 1) + wanted.charAt(i) + wanted.substring(i + 2);
                if (swapped.equals(got)) {
                    return Slip.DIGITS_SWAPPED;
                }
            }
        }
        if (oneLess(wanted, got)) {
            return Slip.DIGIT_MISSING;
        }
        return oneLess(got, wanted) ? Slip.DIGIT_TOO_MANY : Slip.OTHER;
    }

    private static boolean oneLess(String longer, String shorter) {
        if (longer.length() != shorter.length() + 1) {
            return false;
        }
        for (int i = 0; i < longer.length(); i++) {
            if ((longer.substring(0, i) + longer.substring(i + 1)).equals(shorter)) {
                return true;
            }
        }
        return false;
    }

    /** Digits with the decimals of the hardware's step, so that 40 and 4.5 line up as 40.0 and 04.5 don't. */
    private String digitsOf(double value) {
        int decimals = step > 0
                ? Math.max(0, BigDecimal.valueOf(step).stripTrailingZeros().scale())
                : 0;
        BigDecimal figure = BigDecimal.valueOf(value).stripTrailingZeros();
        if (figure.scale() < decimals) {
            figure = figure.setScale(decimals);
        }
        return (figure.scale() < 0 ? figure.setScale(0) : figure).toPlainString();
    }

    private boolean differs(int cell) {
        return !EntryCheck.same(meant.at(cell), typed.at(cell), step);
    }

    private boolean is(double got, double figure) {
        return EntryCheck.same(figure, got, step);
    }

    private String place(int cell) {
        return figure(meant.speed(), meant.speedIndex(cell)) + ", " + figure(meant.load(), meant.loadIndex(cell));
    }

    private static String figure(Axis axis, int index) {
        return Figures.trimmed(axis.at(index), 3) + " " + axis.kind().unit().symbol();
    }
}
