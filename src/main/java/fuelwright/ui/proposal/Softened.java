package fuelwright.ui.proposal;

import fuelwright.estimate.Proposal;
import fuelwright.table.Table;

/** A change evened out with its neighbours' changes. */
final class Softened {

    private static final double OWN_WEIGHT = 2;

    private Softened() {}

    /** The factor: the mean of the logs of the cell's own, twice, and of the up to four cells beside it. */
    static double factor(Proposal proposal, int cell) {
        Table table = proposal.before();
        double sum = OWN_WEIGHT * Math.log(proposal.cell(cell).factor());
        double weight = OWN_WEIGHT;
        int load = table.loadIndex(cell);
        int speed = table.speedIndex(cell);
        int[][] beside = {{load - 1, speed}, {load + 1, speed}, {load, speed - 1}, {load, speed + 1}};
        for (int[] at : beside) {
            if (at[0] >= 0
                    && at[0] < table.load().size()
                    && at[1] >= 0
                    && at[1] < table.speed().size()) {
                sum += Math.log(proposal.cell(table.cell(at[0], at[1])).factor());
                weight++;
            }
        }
        return Math.exp(sum / weight);
    }
}
