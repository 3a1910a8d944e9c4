package fuelwright.ui.session;

import fuelwright.job.Job;
import fuelwright.safety.Caution;
import fuelwright.ui.theme.Words;
import fuelwright.work.Analysis;

/** How a stage stands: told by shape, word and colour on the rail. */
public enum StageState {
    /** Nothing there yet, and nothing to be done yet. */
    EMPTY("empty"),
    /** What belongs here is being read or worked out. */
    WORKING("working"),
    /** Something is missing, or should be looked at. */
    NEEDS_YOU("needs-you"),
    DONE("done"),
    /** A Stop caution stands. */
    STOP("stop");

    private final String style;

    StageState(String style) {
        this.style = style;
    }

    /** The style class, also the key of its word. */
    public String style() {
        return style;
    }

    public String words() {
        return Words.of("state." + style);
    }

    /**
     * The state of a stage.
     *
     * @param analysis null where there is none
     * @param working whether something is being read or worked out
     * @param handedOver whether this very job was exported
     */
    public static StageState of(Stage stage, Job job, Analysis analysis, boolean working, boolean handedOver) {
        StageState state = of(stage, job, analysis, handedOver);
        return working && analysis == null && state != DONE ? WORKING : state;
    }

    private static StageState of(Stage stage, Job job, Analysis analysis, boolean handedOver) {
        switch (stage) {
            case MACHINE:
                return job.machine().hasBodyChange() ? DONE : NEEDS_YOU;
            case TABLES:
                return job.fuelTable().isPresent()
                                && job.targetTable().isPresent()
                                && !job.asksForTargetRatio()
                                && !job.asksForDeadTime()
                        ? DONE
                        : NEEDS_YOU;
            case RIDES:
                return !job.rides().isEmpty() ? DONE : job.fuelTable().isPresent() ? NEEDS_YOU : EMPTY;
            case CAUTIONS:
                return cautions(analysis);
            case HANDOVER:
                return analysis == null ? EMPTY : handedOver ? DONE : NEEDS_YOU;
            default:
                return analysis == null ? EMPTY : DONE;
        }
    }

    private static StageState cautions(Analysis analysis) {
        if (analysis == null) {
            return EMPTY;
        }
        if (!analysis.stops().isEmpty()) {
            return STOP;
        }
        boolean check = analysis.cautions().stream().anyMatch(c -> c.level() == Caution.Level.CHECK);
        return check ? NEEDS_YOU : DONE;
    }
}
