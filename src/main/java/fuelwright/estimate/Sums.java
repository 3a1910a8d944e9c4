package fuelwright.estimate;

import java.util.Arrays;
import java.util.List;

/**
 * Evidence as sums that add up over rides, blocks and cores: the normal equations of weighted residuals r with derivatives J by the
 * cells (band) and by the nuisances (border), around one point. Mutable, not thread-safe.
 */
final class Sums {

    /** Share of a reading that may be laid to a cell nearer by. */
    private static final double MOST_MOVED = 0.1;

    final int cells;
    /** Σ w·Jc·Jcᵀ, cells × cells. */
    final SymmetricBand cellCell;
    /** Σ w·Jc·Jnᵀ, cells × nuisances. */
    final double[][] cellNuisance;
    /** Σ w·Jn·Jnᵀ. */
    final double[][] nuisanceNuisance = new double[Nuisance.COUNT][Nuisance.COUNT];
    /** Σ w·Jc·r. */
    final double[] cellResidual;
    /** Σ w·Jn·r. */
    final double[] nuisanceResidual = new double[Nuisance.COUNT];
    /** Independent readings of each cell. */
    final double[] independentReadings;
    /** Σ of the residuals near each cell, as many times as they are independent readings of it: no reading counts less for what it reads. */
    final double[] plainResidual;
    /** Σ w·r². */
    double residualResidual;
    /** Σ w. */
    double weight;
    /** Number of readings. */
    int readings;

    Sums(int cells, int halfBandwidth) {
        this.cells = cells;
        this.cellCell = new SymmetricBand(cells, halfBandwidth);
        this.cellNuisance = new double[cells][Nuisance.COUNT];
        this.cellResidual = new double[cells];
        this.independentReadings = new double[cells];
        this.plainResidual = new double[cells];
    }

    /** Adds {@code factor} times another evidence around the same point. */
    void add(Sums other, double factor) {
        cellCell.add(other.cellCell, factor);
        for (int c = 0; c < cells; c++) {
            cellResidual[c] += factor * other.cellResidual[c];
            independentReadings[c] += factor * other.independentReadings[c];
            plainResidual[c] += factor * other.plainResidual[c];
            for (int p = 0; p < Nuisance.COUNT; p++) {
                cellNuisance[c][p] += factor * other.cellNuisance[c][p];
            }
        }
        for (int p = 0; p < Nuisance.COUNT; p++) {
            nuisanceResidual[p] += factor * other.nuisanceResidual[p];
            for (int q = 0; q < Nuisance.COUNT; q++) {
                nuisanceNuisance[p][q] += factor * other.nuisanceNuisance[p][q];
            }
        }
        residualResidual += factor * other.residualResidual;
        weight += factor * other.weight;
        readings += (int) Math.round(factor * other.readings);
    }

    /** The same evidence with some nuisances held where they are: nothing depends on them. Changes this one. */
    Sums without(List<Nuisance> held) {
        for (Nuisance nuisance : held) {
            int q = nuisance.ordinal();
            for (double[] cell : cellNuisance) {
                cell[q] = 0;
            }
            for (double[] other : nuisanceNuisance) {
                other[q] = 0;
            }
            Arrays.fill(nuisanceNuisance[q], 0);
            nuisanceResidual[q] = 0;
        }
        return this;
    }

    /**
     * Adds one reading, unless much of it depends on cells further apart than the band is wide: then the engine moved too fast to tell them
     * apart. In tables of up to 1024 cells the band holds them all.
     *
     * @param nodes cells that it depends on, the first {@code count}
     * @param shares derivatives by them
     * @param byNuisance derivatives by the nuisances
     * @param residual reading less prediction
     * @param weight 1/variance, robust and independence factors included
     * @param independence how much of an independent reading it is, from 0 to 1
     */
    void add(
            int[] nodes,
            double[] shares,
            int count,
            double[] byNuisance,
            double residual,
            double weight,
            double independence) {
        if (cellCell.halfBandwidth() < cells - 1 && isTooWide(nodes, count)) {
            addNarrowed(nodes, shares, count, byNuisance, residual, weight, independence);
            return;
        }
        cellCell.addOuter(nodes, shares, count, weight);
        for (int a = 0; a < count; a++) {
            int na = nodes[a];
            double wa = weight * shares[a];
            cellResidual[na] += wa * residual;
            independentReadings[na] += independence * shares[a];
            plainResidual[na] += independence * shares[a] * residual;
            double[] row = cellNuisance[na];
            for (int p = 0; p < Nuisance.COUNT; p++) {
                row[p] += wa * byNuisance[p];
            }
        }
        for (int p = 0; p < Nuisance.COUNT; p++) {
            double wp = weight * byNuisance[p];
            double[] row = nuisanceNuisance[p];
            nuisanceResidual[p] += wp * residual;
            for (int q = 0; q < Nuisance.COUNT; q++) {
                row[q] += wp * byNuisance[q];
            }
        }
        residualResidual += weight * residual * residual;
        this.weight += weight;
        readings++;
    }

    /** Gives a little that lies too far away to the furthest cell that the band can hold; much can't be given away. */
    private void addNarrowed(
            int[] nodes,
            double[] shares,
            int count,
            double[] byNuisance,
            double residual,
            double weight,
            double independence) {
        int middle = 0;
        for (int a = 1; a < count; a++) {
            middle = shares[a] > shares[middle] ? a : middle;
        }
        int reach = cellCell.halfBandwidth() / 2;
        int[] near = new int[count];
        double[] kept = new double[count];
        int left = 0;
        double far = 0;
        int furthest = 0;
        for (int a = 0; a < count; a++) {
            int distance = Math.abs(nodes[a] - nodes[middle]);
            if (distance <= reach) {
                furthest = left == 0 || distance > Math.abs(near[furthest] - nodes[middle]) ? left : furthest;
                near[left] = nodes[a];
                kept[left++] = shares[a];
            } else {
                far += shares[a];
            }
        }
        if (Math.abs(far) <= MOST_MOVED) {
            kept[furthest] += far;
            add(near, kept, left, byNuisance, residual, weight, independence);
        }
    }

    private boolean isTooWide(int[] nodes, int count) {
        int least = Integer.MAX_VALUE;
        int most = 0;
        for (int a = 0; a < count; a++) {
            least = Math.min(least, nodes[a]);
            most = Math.max(most, nodes[a]);
        }
        return most - least > cellCell.halfBandwidth();
    }

    /** Σ w·Jc·(r − Jc·c − Jn·n): what is left of the cells' residuals after a step away from the point. */
    double[] cellResidualAfter(double[] c, double[] n) {
        double[] left = cellResidual.clone();
        double[] moved = cellCell.times(c);
        for (int i = 0; i < cells; i++) {
            left[i] -= moved[i];
            for (int p = 0; p < Nuisance.COUNT; p++) {
                left[i] -= cellNuisance[i][p] * n[p];
            }
        }
        return left;
    }

    /**
     * Σ w·(r − Jc·c − Jn·n)²: what is left of the residuals after a step away from the point.
     *
     * @param c step of the cells
     * @param n step of the nuisances
     */
    double residualAfter(double[] c, double[] n) {
        double sum = residualResidual;
        double[] hc = cellCell.times(c);
        for (int i = 0; i < cells; i++) {
            double cross = 0;
            for (int p = 0; p < Nuisance.COUNT; p++) {
                cross += cellNuisance[i][p] * n[p];
            }
            sum += c[i] * (hc[i] + 2 * cross - 2 * cellResidual[i]);
        }
        for (int p = 0; p < Nuisance.COUNT; p++) {
            double row = 0;
            for (int q = 0; q < Nuisance.COUNT; q++) {
                row += nuisanceNuisance[p][q] * n[q];
            }
            sum += n[p] * (row - 2 * nuisanceResidual[p]);
        }
        return Math.max(0, sum);
    }
}
