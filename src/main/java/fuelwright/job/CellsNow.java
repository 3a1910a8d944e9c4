package fuelwright.job;

import fuelwright.job.HardwareProfile.Holds;
import fuelwright.table.Axis;
import fuelwright.table.Quantity;
import fuelwright.table.Table;
import java.math.BigDecimal;
import java.util.Objects;
import java.util.Optional;

/**
 * What the cells of hardware that holds a change or a multiplier hold now, and the table that the control unit holds beneath them. What is typed
 * takes the place of what they hold: it must be the whole change against the table beneath, not what comes on top of the last one.
 *
 * @param figures in the hardware's cells and its unit
 * @param beneath fuel of the table beneath them, as delivered, over the fuel table's breakpoints
 * @param known how that is known
 */
public record CellsNow(Table figures, Table beneath, Known known) {

    /** So much of a step less is the same step: tables are written with few digits. Else a figure is the next step up, as it was typed at high load. */
    private static final double NEARLY = 0.02;

    /** How it is known what the cells hold. */
    public enum Known {
        /** It was said, or the table that was handed over has gone into them. */
        SAID,
        /** Nobody said it; taken for what stands between the fuel table and the oldest table of the job. */
        WORKED_OUT,
        /** Nobody said it and there is no older table: taken for no change at all. */
        TAKEN
    }

    public CellsNow {
        Objects.requireNonNull(figures, "figures");
        Objects.requireNonNull(beneath, "beneath");
        Objects.requireNonNull(known, "known");
    }

    /** Empty where the hardware holds the table's own figures. */
    public static Optional<CellsNow> of(Job job) {
        return job.hardware().holds() == Holds.VALUE || job.fuelTable().isEmpty()
                ? Optional.empty()
                : Optional.of(of(job, job.fuelTable().get()));
    }

    private static CellsNow of(Job job, Table fuel) {
        HardwareProfile hardware = job.hardware();
        double deadTimeMs = job.proposal().deadTimeMs();
        Table delivered = fuel.delivered(deadTimeMs);
        Optional<Table> said = hardware.cells().filter(c -> fits(c, none(hardware, fuel)));
        if (said.isPresent()) {
            double[] beneath = delivered.toArray();
            for (int cell = 0; cell < beneath.length; cell++) {
                beneath[cell] /= factor(hardware.holds(), said.get().value(fuel.speedAt(cell), fuel.loadAt(cell)));
            }
            return new CellsNow(said.get(), delivered.withValues(beneath), Known.SAID);
        }
        return oldest(job, fuel)
                .map(old -> workedOut(job, fuel, old))
                .orElseGet(() -> new CellsNow(none(hardware, fuel), delivered, Known.TAKEN));
    }

    /** The oldest table of the job that the fuel table can be compared with. */
    private static Optional<Table> oldest(Job job, Table fuel) {
        return job.past().stream()
                .map(PastTable::table)
                .filter(t -> t.quantity() == fuel.quantity()
                        && t.load().kind() == fuel.load().kind())
                .findFirst();
    }

    private static CellsNow workedOut(Job job, Table fuel, Table old) {
        HardwareProfile hardware = job.hardware();
        double deadTimeMs = job.proposal().deadTimeMs();
        Table now = fuel.delivered(deadTimeMs);
        Table base = old.delivered(deadTimeMs).sampledAt(fuel.speed(), fuel.load());
        Table like = none(hardware, fuel);
        double step = job.proposal().step() > 0
                ? job.proposal().step()
                : like.quantity().finestStep();
        double[] figures = like.toArray();
        for (int cell = 0; cell < figures.length; cell++) {
            double speed = like.speedAt(cell);
            double load = like.loadAt(cell);
            double factor = now.value(speed, load) / base.value(speed, load);
            double figure = hardware.holds() == Holds.MULTIPLIER ? factor : 100 * (factor - 1);
            figures[cell] = BigDecimal.valueOf(Math.ceil(figure / step - NEARLY))
                    .multiply(BigDecimal.valueOf(step))
                    .doubleValue();
        }
        return new CellsNow(like.withValues(figures), base, Known.WORKED_OUT);
    }

    /** Cells of that hardware that change nothing. */
    public static Table none(HardwareProfile hardware, Table fuel) {
        boolean multiplier = hardware.holds() == Holds.MULTIPLIER;
        Axis speed = hardware.speed().orElse(fuel.speed());
        Axis load = hardware.load().orElse(fuel.load());
        double[] cells = new double[speed.size() * load.size()];
        java.util.Arrays.fill(cells, multiplier ? 1 : 0);
        return Table.of(multiplier ? Quantity.MULTIPLIER : Quantity.CHANGE, speed, load, cells)
                .withOrientation(hardware.orientation().orElse(fuel.orientation()));
    }

    /** Whether a table can be what such cells hold: the same quantity and breakpoints, and nowhere no fuel at all. */
    public static boolean fits(Table cells, Table like) {
        if (cells.quantity() != like.quantity() || !cells.sameAxes(like)) {
            return false;
        }
        Holds holds = like.quantity() == Quantity.MULTIPLIER ? Holds.MULTIPLIER : Holds.PERCENT_CHANGE;
        for (int cell = 0; cell < cells.cells(); cell++) {
            if (!(factor(holds, cells.at(cell)) > 0)) {
                return false;
            }
        }
        return true;
    }

    /** What a figure of a cell multiplies the fuel by. */
    public static double factor(Holds holds, double figure) {
        return holds == Holds.MULTIPLIER ? figure : 1 + figure / 100;
    }

    /** Whether no cell changes anything. */
    public boolean isNone() {
        double none = figures.quantity() == Quantity.MULTIPLIER ? 1 : 0;
        for (int cell = 0; cell < figures.cells(); cell++) {
            if (figures.at(cell) != none) {
                return false;
            }
        }
        return true;
    }

    /** The figure of a cell that changes the fuel most, either way. */
    public double greatest() {
        double none = figures.quantity() == Quantity.MULTIPLIER ? 1 : 0;
        double most = none;
        for (int cell = 0; cell < figures.cells(); cell++) {
            most = Math.abs(figures.at(cell) - none) > Math.abs(most - none) ? figures.at(cell) : most;
        }
        return most;
    }
}
