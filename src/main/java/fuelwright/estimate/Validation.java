package fuelwright.estimate;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How the fit does on parts of the rides that it hadn't seen: blocks are left out in turn. Immutable.
 *
 * @param blocks how many blocks were left out in turn
 * @param readings readings judged
 * @param errorBeforePercent root-mean-square mixture error with the table as ridden, %
 * @param errorAfterPercent the same readings with the table fitted without them, %
 * @param cells in order, those with enough readings in a block
 */
public record Validation(
        int blocks, int readings, double errorBeforePercent, double errorAfterPercent, Map<Integer, Cell> cells) {

    /** Independent readings that a block must have in a cell for its mean there to say anything. */
    static final double LEAST_READINGS = 2;

    /**
     * One cell. Errors are those of the mean mixture of a block's readings there, root mean square over the blocks: the scatter of
     * single readings is mostly averaged out of it.
     *
     * @param blocks blocks with enough readings here
     * @param independentReadings in them
     * @param errorBeforePercent with the table as ridden, %
     * @param errorAfterPercent with the table fitted without the block in question, %
     */
    public record Cell(int blocks, double independentReadings, double errorBeforePercent, double errorAfterPercent) {

        /** Whether the fit did worse here than the table as ridden. */
        public boolean isWorse() {
            return errorAfterPercent > errorBeforePercent;
        }
    }

    public Validation {
        cells = Collections.unmodifiableSortedMap(new TreeMap<>(cells));
    }

    /** Empty where too few readings were unseen there. */
    public Optional<Cell> at(int cell) {
        return Optional.ofNullable(cells.get(cell));
    }

    /** Cells in which the fit did worse on unseen readings than the table as ridden. */
    public long worse() {
        return cells.values().stream().filter(Cell::isWorse).count();
    }
}
