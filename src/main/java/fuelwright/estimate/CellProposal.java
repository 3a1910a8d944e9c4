package fuelwright.estimate;

import java.util.List;
import java.util.Optional;

/**
 * One cell's proposal and everything that made it.
 *
 * @param cell cell number in the table's order
 * @param before the figure in the table now, in its own unit
 * @param after the figure proposed
 * @param factor factor on the delivered fuel from before to after
 * @param neededFactor factor that the estimate asks for, before any rule
 * @param standing what the figure rests on
 * @param highLoad whether the cell is at high load
 * @param decision present where the cell is held or set by hand
 * @param steps how the factor came about, in order; the last one's factor is {@code factor}
 */
public record CellProposal(
        int cell,
        double before,
        double after,
        double factor,
        double neededFactor,
        Standing standing,
        boolean highLoad,
        Optional<Decision> decision,
        List<Step> steps) {

    public CellProposal {
        steps = List.copyOf(steps);
    }

    /** Proposed change of delivered fuel, %. */
    public double changePercent() {
        return 100 * (factor - 1);
    }

    /** How much leaner than needed the cell stays with the proposal, %: positive where fuel is missing. */
    public double leftLeanPercent() {
        return 100 * (neededFactor / factor - 1);
    }

    /**
     * One step on the way from the readings to the figure.
     *
     * @param kind which step
     * @param factor the factor on delivered fuel after it
     */
    public record Step(Kind kind, double factor) {
        /** Change of delivered fuel after this step, %. */
        public double changePercent() {
            return 100 * (factor - 1);
        }
    }

    /** The steps, in the order in which they are taken. Only those that apply to a cell are listed. */
    public enum Kind {
        OBSERVED("plain mean of the readings"),
        BURNT("the same readings where and when they were burnt: delay and lag undone"),
        FITTED("fitted together with the cells around and what was expected of the change"),
        OWN_READINGS("its own readings ask for more than its neighbours"),
        RICH_SIDE("rich-side rule: uncertainty adds fuel at high load"),
        NOT_LEANED("leaned less: not measured well enough"),
        LEANED_LESS("leaned no further than the plain mean of its readings"),
        COMMANDED_RICHER("leaned no further than what the control unit asked for: richer than the target"),
        DEAD_TIME_UNTOLD("not leaned: nobody has said whether the pulses contain the dead time"),
        CAP_ON_ADDING("capped: most added in one pass"),
        CAP_ON_TAKING("capped: most taken in one pass"),
        HELD("held by hand"),
        SET("set by hand"),
        ROUNDED("rounded to the step of the figures"),
        NO_CELL_LEANED("not leaned: chosen for this handover");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }
}
