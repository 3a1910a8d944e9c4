package fuelwright.screen;

import java.util.Arrays;
import java.util.function.IntPredicate;
import org.apache.commons.math3.util.ResizableDoubleArray;

/**
 * Up to which load and engine speed a closed loop was seen at work: the largest rectangle, from nothing on, that holds many moments on target and few that are off. Beyond it the unit runs by
 * its table, and readings count.
 *
 * @param loadAtMost in the unit of the table's load; infinite where nothing off target was seen above
 * @param speedAtMostRpm the same, rpm
 */
record LoopRegion(double loadAtMost, double speedAtMostRpm) {

    private static final double MOMENT_S = 1;
    private static final double ON_TARGET_LOG = 0.0075;
    /** A moment off target inside costs so many on target. */
    private static final double OFF_COSTS = 1.5;

    private static final int EDGES = 24;

    /** O(rows + moments · 48). */
    static LoopRegion of(double[] timeS, double[] speedRpm, double[] load, double[] off, IntPredicate counts) {
        ResizableDoubleArray speeds = new ResizableDoubleArray();
        ResizableDoubleArray loads = new ResizableDoubleArray();
        ResizableDoubleArray worth = new ResizableDoubleArray();
        int i = 0;
        while (i < off.length) {
            int rows = 0;
            int last = i;
            double sum = 0;
            double speed = 0;
            double loadSum = 0;
            int j = i;
            while (j < off.length && timeS[j] >= timeS[i] && timeS[j] - timeS[i] < MOMENT_S) {
                if (counts.test(j) && !Double.isNaN(off[j]) && !Double.isNaN(load[j])) {
                    if (!Pinned.follows(timeS[last], timeS[j])) {
                        break;
                    }
                    sum += off[j];
                    speed += speedRpm[j];
                    loadSum += load[j];
                    rows++;
                    last = j;
                }
                j++;
            }
            if (rows > 0 && timeS[last] - timeS[i] >= MOMENT_S / 2) {
                speeds.addElement(speed / rows);
                loads.addElement(loadSum / rows);
                worth.addElement(Math.abs(sum / rows) <= ON_TARGET_LOG ? 1 : -OFF_COSTS);
            }
            i = Math.max(j, i + 1);
        }
        return best(speeds.getElements(), loads.getElements(), worth.getElements());
    }

    private static LoopRegion best(double[] speeds, double[] loads, double[] worth) {
        LoopRegion best = new LoopRegion(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);
        double most = Double.NEGATIVE_INFINITY;
        double[] loadEdges = edges(loads);
        double[] speedEdges = edges(speeds);
        double[][] sums = sums(speeds, loads, worth, speedEdges, loadEdges);
        for (int l = 0; l < loadEdges.length; l++) {
            for (int s = 0; s < speedEdges.length; s++) {
                if (sums[l][s] > most) {
                    most = sums[l][s];
                    best = new LoopRegion(loadEdges[l], speedEdges[s]);
                }
            }
        }
        return best;
    }

    /** What the moments inside each rectangle are worth together. Worths are multiples of a half, so their order doesn't matter. */
    private static double[][] sums(
            double[] speeds, double[] loads, double[] worth, double[] speedEdges, double[] loadEdges) {
        double[][] sums = new double[loadEdges.length][speedEdges.length];
        for (int k = 0; k < speeds.length; k++) {
            sums[innermost(loadEdges, loads[k])][innermost(speedEdges, speeds[k])] += worth[k];
        }
        for (int l = sums.length - 1; l >= 0; l--) {
            for (int s = speedEdges.length - 1; s >= 0; s--) {
                boolean below = l + 1 < sums.length;
                boolean left = s + 1 < speedEdges.length;
                sums[l][s] += (below ? sums[l + 1][s] : 0)
                        + (left ? sums[l][s + 1] : 0)
                        - (below && left ? sums[l + 1][s + 1] : 0);
            }
        }
        return sums;
    }

    /** The last of these falling edges that holds a value. */
    private static int innermost(double[] edges, double value) {
        int at = 0;
        while (at + 1 < edges.length && value <= edges[at + 1]) {
            at++;
        }
        return at;
    }

    /** No edge, then from above: quantiles, and even steps for where the moments are few. Of equals the larger rectangle is taken. */
    private static double[] edges(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double[] edges = new double[2 * EDGES];
        Arrays.fill(edges, Double.POSITIVE_INFINITY);
        for (int e = 1; e < EDGES && sorted.length > 0; e++) {
            double last = sorted[sorted.length - 1];
            edges[e] = sorted[(sorted.length - 1) * e / EDGES];
            edges[EDGES + e] = sorted[0] + (last - sorted[0]) * e / EDGES;
        }
        Arrays.sort(edges);
        for (int e = 0; e < EDGES; e++) {
            double swap = edges[e];
            edges[e] = edges[2 * EDGES - 1 - e];
            edges[2 * EDGES - 1 - e] = swap;
        }
        return edges;
    }

    boolean holds(double speedRpm, double load) {
        return !(speedRpm > speedAtMostRpm) && !(load > loadAtMost);
    }
}
