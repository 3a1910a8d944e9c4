package fuelwright.estimate;

import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Rules from estimate to proposal.
 *
 * @param maxAddPercent most that one pass adds, %
 * @param maxCutPercent most that one pass takes away, %
 * @param step smallest step of a cell that the hardware takes, in the table's own unit; 0: none
 * @param deadTimeToldMs injector dead time contained in the pulses of a pulse table, ms, 0 where none is; empty until it is told
 * @param richSideZ how many standard errors are added at high load
 * @param leanNoCell whether no cell is leaned, whatever the estimate or a typed figure says: a choice of one handover, while a Stop stands
 * @param decisions cells fixed by hand, by cell number
 */
public record ProposalSettings(
        double maxAddPercent,
        double maxCutPercent,
        double step,
        OptionalDouble deadTimeToldMs,
        double richSideZ,
        boolean leanNoCell,
        Map<Integer, Decision> decisions) {

    public ProposalSettings {
        if (!(maxAddPercent >= 0)) {
            throw new IllegalArgumentException("maxAddPercent " + maxAddPercent + " must be at least 0");
        }
        if (!(maxCutPercent >= 0 && maxCutPercent < 100)) {
            throw new IllegalArgumentException("maxCutPercent " + maxCutPercent + " must be from 0 to 100");
        }
        if (!(step >= 0)) {
            throw new IllegalArgumentException("step " + step + " must be at least 0");
        }
        if (!(deadTimeToldMs.orElse(0) >= 0)) {
            throw new IllegalArgumentException("deadTimeToldMs " + deadTimeToldMs + " must be at least 0");
        }
        decisions = java.util.Collections.unmodifiableMap(new TreeMap<>(decisions));
    }

    public static ProposalSettings defaults() {
        return new ProposalSettings(40, 5, 0, OptionalDouble.empty(), 1.65, false, Map.of());
    }

    public ProposalSettings withCaps(double addPercent, double cutPercent) {
        return new ProposalSettings(addPercent, cutPercent, step, deadTimeToldMs, richSideZ, leanNoCell, decisions);
    }

    public ProposalSettings withStep(double other) {
        return new ProposalSettings(
                maxAddPercent, maxCutPercent, other, deadTimeToldMs, richSideZ, leanNoCell, decisions);
    }

    /** What pulses are reckoned to contain, ms: what was told; until then nothing, by which no addition comes out too small. */
    public double deadTimeMs() {
        return deadTimeToldMs.orElse(0);
    }

    public ProposalSettings withDeadTimeMs(double other) {
        return withDeadTimeMs(OptionalDouble.of(other));
    }

    /** @param other empty: not told */
    public ProposalSettings withDeadTimeMs(OptionalDouble other) {
        return new ProposalSettings(maxAddPercent, maxCutPercent, step, other, richSideZ, leanNoCell, decisions);
    }

    public ProposalSettings withDecisions(Map<Integer, Decision> other) {
        return new ProposalSettings(maxAddPercent, maxCutPercent, step, deadTimeToldMs, richSideZ, leanNoCell, other);
    }

    public ProposalSettings withLeanNoCell(boolean other) {
        return new ProposalSettings(maxAddPercent, maxCutPercent, step, deadTimeToldMs, richSideZ, other, decisions);
    }
}
