package fuelwright.estimate;

/**
 * First-order lag applied to what a reading depends on: sparse shares of cells and a handful of numbers, all by the same exact update
 * for input that moves on straight lines between samples (first-order hold): s ← αs + c₀·x₀ + c₁·x₁ with α = exp(−dt/τ),
 * c₁ = 1 − (1 − α)τ/dt, c₀ = (1 − α)τ/dt − α. Step response 1 − exp(−t/τ). Lagging the regressors instead of un-lagging the reading
 * keeps the noise from being amplified. Mutable, not thread-safe.
 */
final class LagFilter {

    private static final double NEGLIGIBLE = 2e-4;

    private final int[] slotOfCell;
    private int[] cells = new int[64];
    private double[] shares = new double[64];
    private int count;
    private double before;
    private double now;
    private double carry;

    LagFilter(int cellCount) {
        slotOfCell = new int[cellCount];
        java.util.Arrays.fill(slotOfCell, -1);
    }

    /** Works out the weights of the next update; {@code lagS} 0 makes the output follow at once. */
    void prepare(double dtS, double lagS) {
        if (lagS <= 1e-6) {
            carry = 0;
            before = 0;
            now = 1;
        } else if (dtS <= 0) {
            carry = 1;
            before = 0;
            now = 0;
        } else {
            carry = Math.exp(-dtS / lagS);
            double mean = (1 - carry) * lagS / dtS;
            now = 1 - mean;
            before = mean - carry;
        }
    }

    /** One update of a number by the prepared weights. */
    double next(double state, double x0, double x1) {
        return carry * state + before * x0 + now * x1;
    }

    /** One update of the shares: four cells before, four now. */
    void nextShares(int[] cells0, double[] shares0, int[] cells1, double[] shares1) {
        for (int i = 0; i < count; i++) {
            shares[i] *= carry;
        }
        if (!addInPlace(cells0, shares0, cells1, shares1)) {
            addAll(cells0, shares0, before);
            addAll(cells1, shares1, now);
        }
        prune();
    }

    /** Where the four cells are the same before and now, and all have a share already: the usual case by far. */
    private boolean addInPlace(int[] cells0, double[] shares0, int[] cells1, double[] shares1) {
        int a = slotOfCell[cells1[0]];
        int b = slotOfCell[cells1[1]];
        int c = slotOfCell[cells1[2]];
        int d = slotOfCell[cells1[3]];
        boolean same =
                cells0[0] == cells1[0] && cells0[1] == cells1[1] && cells0[2] == cells1[2] && cells0[3] == cells1[3];
        if (!same || (a | b | c | d) < 0) {
            return false;
        }
        shares[a] = shares[a] + before * shares0[0] + now * shares1[0];
        shares[b] = shares[b] + before * shares0[1] + now * shares1[1];
        shares[c] = shares[c] + before * shares0[2] + now * shares1[2];
        shares[d] = shares[d] + before * shares0[3] + now * shares1[3];
        return true;
    }

    /** Forgets the past: the output is the input now. */
    void restart(int[] cells1, double[] shares1) {
        for (int i = 0; i < count; i++) {
            slotOfCell[cells[i]] = -1;
        }
        count = 0;
        addAll(cells1, shares1, 1);
        prune();
    }

    private void addAll(int[] more, double[] weights, double factor) {
        if (factor == 0) {
            return;
        }
        for (int k = 0; k < more.length; k++) {
            double weight = factor * weights[k];
            if (weight == 0) {
                continue;
            }
            int slot = slotOfCell[more[k]];
            if (slot < 0) {
                slot = count++;
                if (slot == cells.length) {
                    cells = java.util.Arrays.copyOf(cells, 2 * slot);
                    shares = java.util.Arrays.copyOf(shares, 2 * slot);
                }
                cells[slot] = more[k];
                shares[slot] = 0;
                slotOfCell[more[k]] = slot;
            }
            shares[slot] += weight;
        }
    }

    private void prune() {
        for (int i = count - 1; i >= 0; i--) {
            if (Math.abs(shares[i]) < NEGLIGIBLE) {
                slotOfCell[cells[i]] = -1;
                count--;
                if (i != count) {
                    cells[i] = cells[count];
                    shares[i] = shares[count];
                    slotOfCell[cells[i]] = i;
                }
            }
        }
    }

    int count() {
        return count;
    }

    /** The cells with a share, the first {@link #count()}; not to be modified. */
    int[] cells() {
        return cells;
    }

    /** Their shares; not to be modified. */
    double[] shares() {
        return shares;
    }
}
