package fuelwright.estimate;

import java.util.Map;
import java.util.TreeMap;

/**
 * Rules from estimate to proposal.
 *
 * @param maxAddPercent most that one pass adds, %
 * @param maxCutPercent most that one pass takes away, %
 * @param step smallest step of a cell that the hardware takes, in the table's own unit; 0: none
 * @param deadTimeMs injector dead time contained in a pulse table, ms; 0 where it isn't
 * @param richSideZ how many standard errors are added at high load
 * @param leanNoCell whether no cell is leaned, whatever the estimate or a typed figure says: a choice of one handover, while a Stop stands
 * @param decisions cells fixed by hand, by cell number
 */
public record ProposalSettings(
        double maxAddPercent,
        double maxCutPercent,
        double step,
        double deadTimeMs,
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
        if (!(deadTimeMs >= 0)) {
            throw new IllegalArgumentException("deadTimeMs " + deadTimeMs + " must be at least 0");
        }
        decisions = java.util.Collections.unmodifiableMap(new TreeMap<>(decisions));
    }

    public static ProposalSettings defaults() {
        return new ProposalSettings(40, 5, 0, 0, 1.65, false, Map.of());
    }

    public ProposalSettings withCaps(double addPercent, double cutPercent) {
        return new ProposalSettings(addPercent, cutPercent, step, deadTimeMs, richSideZ, leanNoCell, decisions);
    }

    public ProposalSettings withStep(double other) {
        return new ProposalSettings(maxAddPercent, maxCutPercent, other, deadTimeMs, richSideZ, leanNoCell, decisions);
    }

    public ProposalSettings withDeadTimeMs(double other) {
        return new ProposalSettings(maxAddPercent, maxCutPercent, step, other, richSideZ, leanNoCell, decisions);
    }

    public ProposalSettings withDecisions(Map<Integer, Decision> other) {
        return new ProposalSettings(maxAddPercent, maxCutPercent, step, deadTimeMs, richSideZ, leanNoCell, other);
    }

    public ProposalSettings withLeanNoCell(boolean other) {
        return new ProposalSettings(maxAddPercent, maxCutPercent, step, deadTimeMs, richSideZ, other, decisions);
    }
}
