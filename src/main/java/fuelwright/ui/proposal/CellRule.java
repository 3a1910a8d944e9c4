package fuelwright.ui.proposal;

import fuelwright.estimate.CellProposal;
import fuelwright.estimate.Standing;
import fuelwright.handover.CellLook;
import fuelwright.table.Table;
import fuelwright.work.Analysis;
import java.util.EnumSet;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Which cells are meant, told by what they are instead of by pointing. Immutable.
 *
 * @param standings those that fit
 * @param direction which way their figure goes
 * @param loadFrom least load, in the table's unit
 * @param loadTo greatest load
 * @param speedFrom least engine speed, rpm
 * @param speedTo greatest engine speed, rpm
 * @param highLoadOnly whether only cells at high load fit
 * @param stopOnly whether only cells that a Stop caution names fit
 */
record CellRule(
        Set<Standing> standings,
        Direction direction,
        double loadFrom,
        double loadTo,
        double speedFrom,
        double speedTo,
        boolean highLoadOnly,
        boolean stopOnly) {

    /** Which way a proposed change goes. */
    enum Direction {
        ANY,
        MORE_FUEL,
        LESS_FUEL
    }

    CellRule {
        standings = Set.copyOf(standings);
    }

    /** Every cell. */
    static CellRule all() {
        return new CellRule(
                EnumSet.allOf(Standing.class),
                Direction.ANY,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                false,
                false);
    }

    /** The cells that fit. */
    SortedSet<Integer> cells(Analysis analysis) {
        Table table = analysis.proposal().before();
        Set<Integer> stops = ProposalMap.stopCells(analysis);
        SortedSet<Integer> found = new TreeSet<>();
        for (CellProposal c : analysis.proposal().cells()) {
            double load = table.load().at(table.loadIndex(c.cell()));
            double speed = table.speed().at(table.speedIndex(c.cell()));
            if (standings.contains(c.standing())
                    && goes(c.changePercent())
                    && load >= loadFrom
                    && load <= loadTo
                    && speed >= speedFrom
                    && speed <= speedTo
                    && (!highLoadOnly || c.highLoad())
                    && (!stopOnly || stops.contains(c.cell()))) {
                found.add(c.cell());
            }
        }
        return found;
    }

    private boolean goes(double changePercent) {
        switch (direction) {
            case MORE_FUEL:
                return changePercent > CellLook.NO_CHANGE_PERCENT;
            case LESS_FUEL:
                return changePercent < -CellLook.NO_CHANGE_PERCENT;
            default:
                return true;
        }
    }
}
