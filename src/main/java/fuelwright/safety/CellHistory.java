package fuelwright.safety;

/** When and at which engine speed each cell read lean at high load, and when fine. */
final class CellHistory {

    /** Lean readings of a cell came so much later in the stretch than its fine ones: fuel fades. */
    private static final double FADE_S = 1.5;
    /** Lean readings of a cell came so much later in the ride than its fine ones: fuel fades. */
    private static final double FADE_IN_RIDE_S = 60;
    /** Mean speeds nearer than this, relative, are the same place of a cell. */
    private static final double SAME_SPEED = 0.04;

    private static final int LEAST_READINGS = 3;

    private final int[] lean;
    private final int[] fine;
    private final double[] leanAge;
    private final double[] fineAge;
    private final double[] leanTime;
    private final double[] fineTime;
    private final double[] leanSpeed;
    private final double[] fineSpeed;
    /** Fine readings of each cell with the engine warm, and those of them that came after it had been lean. */
    private final int[] fineWarm;

    private final int[] fineAgain;

    CellHistory(int cells) {
        lean = new int[cells];
        fine = new int[cells];
        leanAge = new double[cells];
        fineAge = new double[cells];
        leanTime = new double[cells];
        fineTime = new double[cells];
        leanSpeed = new double[cells];
        fineSpeed = new double[cells];
        fineWarm = new int[cells];
        fineAgain = new int[cells];
    }

    /** @param ageS how long much fuel has been drawn */
    void lean(int cell, double timeS, double ageS, double speedRpm) {
        lean[cell]++;
        leanAge[cell] += ageS;
        leanTime[cell] += timeS;
        leanSpeed[cell] += speedRpm;
    }

    void fine(int cell, double timeS, double ageS, double speedRpm, boolean cold) {
        fine[cell]++;
        if (!cold) {
            fineSpeed[cell] += speedRpm;
            fineAge[cell] += ageS;
            fineWarm[cell]++;
            fineTime[cell] += timeS;
            fineAgain[cell] += lean[cell] > 0 ? 1 : 0;
        }
    }

    int leanReadings(int cell) {
        return lean[cell];
    }

    int fineReadings(int cell) {
        return fine[cell];
    }

    /** Lean readings later in a stretch of load than the fine ones, at the same speed: on a sweep a cell's far side comes later by itself. */
    boolean fadesInStretch(int cell) {
        double later = leanAge[cell] / lean[cell] - fineAge[cell] / fineWarm[cell];
        double speeds = leanSpeed[cell] / lean[cell] / (fineSpeed[cell] / fineWarm[cell]);
        return later >= FADE_S && Math.abs(speeds - 1) < SAME_SPEED;
    }

    /** Lean readings later in the ride, and the cell seldom fine again: what comes and goes isn't fading, nor is what warm-up hid. */
    boolean fadesInRide(int cell) {
        return fineWarm[cell] >= LEAST_READINGS
                && leanTime[cell] / lean[cell] - fineTime[cell] / fineWarm[cell] >= FADE_IN_RIDE_S
                && fineAgain[cell] < lean[cell];
    }
}
